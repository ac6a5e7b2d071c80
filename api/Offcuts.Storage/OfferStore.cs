using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>An offer as it is kept.</summary>
/// <param name="Id">Id, unique among all offers.</param>
/// <param name="Species">Species id.</param>
/// <param name="Kind">Solid or sheet.</param>
/// <param name="Thickness">Thickness as sold.</param>
/// <param name="Content">The offer as JSON in the shape of the wire.</param>
public sealed record StoredOffer(string Id, string Species, BoardKind Kind, Length Thickness, string Content);

/// <summary>Which offers to list; what is null does not restrict.</summary>
public sealed record OfferFilter
{
    /// <summary>Supplier.</summary>
    public string? Supplier { get; init; }

    /// <summary>Species id.</summary>
    public string? Species { get; init; }

    /// <summary>Kind.</summary>
    public BoardKind? Kind { get; init; }

    /// <summary>Least thickness.</summary>
    public Length? MinThickness { get; init; }

    /// <summary>Greatest thickness.</summary>
    public Length? MaxThickness { get; init; }
}

/// <summary>A price list in the list of them.</summary>
/// <param name="Supplier">The supplier as paths name it.</param>
/// <param name="UpdatedAt">When it was last replaced.</param>
/// <param name="Offers">How many offers it has.</param>
/// <param name="Name">The supplier's name as the list writes it; null if it does not.</param>
/// <param name="Currency">The currency of its prices; null for a list from before that was kept.</param>
public sealed record StoredPriceList(string Supplier, DateTimeOffset UpdatedAt, int Offers, string? Name, string? Currency);

/// <summary>What suppliers sell.</summary>
/// <param name="database">Where it is kept.</param>
/// <param name="clock">Says when a list is replaced.</param>
public sealed class OfferStore(Database database, TimeProvider clock)
{
    /// <summary>Replaces all offers of a supplier and says when; true if the supplier is new.</summary>
    /// <param name="supplier">The supplier as paths name it.</param>
    /// <param name="offers">The offers in the order of the list.</param>
    /// <param name="currency">The currency of its prices.</param>
    /// <param name="terms">What the supplier asks beyond its prices, as JSON in the shape of the wire; null for nothing.</param>
    /// <exception cref="OffcutsException">Another supplier has an offer with one of these ids.</exception>
    public (DateTimeOffset UpdatedAt, bool IsNew) Replace(string supplier, IReadOnlyList<StoredOffer> offers, string currency, string? terms = null)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var now = clock.GetUtcNow();
        var replaced = connection.Execute("DELETE FROM price_lists WHERE supplier = @Supplier", new { Supplier = supplier }, transaction);
        RefuseTaken(connection, transaction, offers);
        connection.Execute(
            "INSERT INTO price_lists (supplier, updated_at, terms, currency) VALUES (@Supplier, @Now, @Terms, @Currency)",
            new { Supplier = supplier, Now = Stamp.Of(now), Terms = terms, Currency = currency },
            transaction);
        connection.Execute(
            """
            INSERT INTO offers (id, supplier, species, kind, thickness_ticks, content)
            VALUES (@Id, @Supplier, @Species, @Kind, @Thickness, @Content)
            """,
            offers.Select(offer => new
            {
                offer.Id,
                Supplier = supplier,
                offer.Species,
                Kind = Words.Of(offer.Kind),
                Thickness = offer.Thickness.Ticks,
                offer.Content,
            }),
            transaction);
        transaction.Commit();
        return (now, replaced == 0);
    }

    /// <summary>A supplier's offers in the order of its list, and its terms (null for none); null if there is no such supplier.</summary>
    public (DateTimeOffset UpdatedAt, IReadOnlyList<string> Offers, string? Terms)? Find(string supplier)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        var list = connection.QuerySingleOrDefault<PriceListRow>(
            "SELECT supplier, updated_at AS UpdatedAt, terms FROM price_lists WHERE supplier = @Supplier", new { Supplier = supplier }, transaction);
        return list is null ? null : (Stamp.Read(list.UpdatedAt), connection.Query<string>(
            "SELECT content FROM offers WHERE supplier = @Supplier ORDER BY sequence", new { Supplier = supplier }, transaction).AsList(), list.Terms);
    }

    /// <summary>The terms of all suppliers that have any, by supplier.</summary>
    public IReadOnlyList<(string Supplier, string Terms)> ListTerms()
    {
        using var connection = database.Connect();
        return [.. connection.Query<PriceListRow>("SELECT supplier, terms FROM price_lists WHERE terms IS NOT NULL ORDER BY supplier").Select(row => (row.Supplier, row.Terms!))];
    }

    /// <summary>All price lists, by supplier.</summary>
    public IReadOnlyList<StoredPriceList> ListSuppliers()
    {
        using var connection = database.Connect();
        return [.. connection.Query<PriceListRow>(
            """
            SELECT p.supplier, p.updated_at AS UpdatedAt, p.currency, (SELECT count(*) FROM offers o WHERE o.supplier = p.supplier) AS Offers,
                (SELECT json_extract(o.content, '$.supplierName') FROM offers o WHERE o.supplier = p.supplier ORDER BY o.sequence LIMIT 1) AS Name
            FROM price_lists p ORDER BY p.supplier
            """).Select(row => new StoredPriceList(row.Supplier, Stamp.Read(row.UpdatedAt), row.Offers, row.Name, row.Currency))];
    }

    /// <summary>Up to <paramref name="limit"/> offers after a place in the sequence, and the place after which more follow.</summary>
    public (IReadOnlyList<string> Offers, long? Next) List(OfferFilter filter, long after, int limit)
    {
        using var connection = database.Connect();
        var rows = connection.Query<OfferRow>(
            """
            SELECT sequence, content FROM offers
            WHERE sequence > @After
              AND (@Supplier IS NULL OR supplier = @Supplier) AND (@Species IS NULL OR species = @Species)
              AND (@Kind IS NULL OR kind = @Kind)
              AND (@MinThickness IS NULL OR thickness_ticks >= @MinThickness)
              AND (@MaxThickness IS NULL OR thickness_ticks <= @MaxThickness)
            ORDER BY sequence LIMIT @Rows
            """,
            new
            {
                After = after,
                Rows = limit + 1,
                filter.Supplier,
                filter.Species,
                Kind = filter.Kind is { } kind ? Words.Of(kind) : null,
                MinThickness = filter.MinThickness?.Ticks,
                MaxThickness = filter.MaxThickness?.Ticks,
            }).AsList();
        return ([.. rows.Take(limit).Select(row => row.Content)], rows.Count > limit ? rows[limit - 1].Sequence : null);
    }

    /// <summary>Forgets a supplier's offers; false if there is no such supplier.</summary>
    public bool Delete(string supplier)
    {
        using var connection = database.Connect();
        return connection.Execute("DELETE FROM price_lists WHERE supplier = @Supplier", new { Supplier = supplier }) > 0;
    }

    private static void RefuseTaken(SqliteConnection connection, SqliteTransaction transaction, IReadOnlyList<StoredOffer> offers)
    {
        var ids = offers.Select(offer => offer.Id).ToList();
        var taken = connection.QueryFirstOrDefault<OfferRow>(
            "SELECT id, supplier FROM offers WHERE id IN @Ids ORDER BY sequence LIMIT 1", new { Ids = ids }, transaction);
        if (taken is { } other)
        {
            throw new OffcutsException(
                ErrorCode.Conflict,
                $"'{other.Id}' is an offer of {other.Supplier}: give another id.",
                new InputFault($"#/offers/{ids.IndexOf(other.Id)}/id", "Another supplier has an offer with this id."));
        }
    }
}
