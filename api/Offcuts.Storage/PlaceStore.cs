using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>A place with what lies there.</summary>
/// <param name="Place">What the shop has said of it; the defaults if it has not.</param>
/// <param name="IsSet">Whether the shop has.</param>
/// <param name="Boards">How many boards and sheets lie there, free or held by plans.</param>
/// <param name="CubicMetres">Their volume.</param>
public sealed record PlaceInUse(Place Place, bool IsSet, int Boards, decimal CubicMetres);

/// <summary>The places that the shop has said something of, and those that boards name.</summary>
/// <param name="database">Where they are kept.</param>
public sealed class PlaceStore(Database database)
{
    private const decimal CubicMillimetres = 1_000_000_000m;

    // 320 ticks are a millimetre. The product of three sizes in ticks could be more than 64 bits hold.
    private const string InUse = """
        SELECT named.name, set_places.reach, set_places.limit_cubic_mm AS LimitCubicMm, set_places.note,
               coalesce(sum(boards.quantity), 0) AS Boards,
               coalesce(sum(boards.quantity * (thickness_ticks / 320.0) * (width_ticks / 320.0) * (length_ticks / 320.0)), 0.0) AS HeldCubicMm
        FROM (SELECT name FROM places UNION SELECT place FROM boards WHERE place IS NOT NULL AND status IN ('free', 'reserved')) AS named
        LEFT JOIN places AS set_places ON set_places.name = named.name
        LEFT JOIN boards ON boards.place = named.name AND boards.status IN ('free', 'reserved')
        WHERE @Name IS NULL OR named.name = @Name
        GROUP BY named.name ORDER BY named.name
        """;

    /// <summary>All places, by name.</summary>
    public IReadOnlyList<PlaceInUse> List() => Query(null);

    /// <summary>One place; null if it is neither set nor named by a board that lies there.</summary>
    public PlaceInUse? Find(string name) => Query(name).SingleOrDefault();

    /// <summary>Every name that was ever written for a place: in the book, of boards that are gone too, and in stock-takes.</summary>
    public IReadOnlyList<string> Names()
    {
        using var connection = database.Connect();
        return connection.Query<string>(
            "SELECT name FROM places UNION SELECT place FROM boards WHERE place IS NOT NULL UNION SELECT place FROM stock_takes ORDER BY 1").AsList();
    }

    /// <summary>How hard it is to get at the places that are not easy.</summary>
    public IReadOnlyDictionary<string, Reach> Reaches()
    {
        using var connection = database.Connect();
        return connection.Query<PlaceRow>("SELECT name, reach FROM places WHERE reach <> 'easy'")
            .ToDictionary(row => row.Name, row => Words.Read<Reach>(row.Reach!), StringComparer.Ordinal);
    }

    /// <summary>Says what a place is; true if nothing was said of it before.</summary>
    public bool Replace(Place place)
    {
        using var connection = database.Connect();
        using var transaction = connection.BeginTransaction();
        var replaced = Delete(connection, transaction, place.Name);
        connection.Execute(
            "INSERT INTO places (name, reach, limit_cubic_mm, note) VALUES (@Name, @Reach, @Limit, @Note)",
            new
            {
                place.Name,
                Reach = Words.Of(place.Reach),
                Limit = place.LimitCubicMetres is { } limit ? (long?)decimal.Round(limit * CubicMillimetres) : null,
                place.Note,
            },
            transaction);
        transaction.Commit();
        return !replaced;
    }

    /// <summary>Forgets what was said of a place; boards that lie there stay. False if nothing was.</summary>
    public bool Delete(string name)
    {
        using var connection = database.Connect();
        return Delete(connection, null, name);
    }

    private static bool Delete(SqliteConnection connection, SqliteTransaction? transaction, string name) =>
        connection.Execute("DELETE FROM places WHERE name = @Name", new { Name = name }, transaction) > 0;

    private List<PlaceInUse> Query(string? name)
    {
        using var connection = database.Connect();
        return [.. connection.Query<PlaceRow>(InUse, new { Name = name }).Select(row => new PlaceInUse(
            new Place(row.Name, row.Reach is { } reach ? Words.Read<Reach>(reach) : Reach.Easy, row.LimitCubicMm / CubicMillimetres, row.Note),
            row.Reach is not null, row.Boards, (decimal)row.HeldCubicMm / CubicMillimetres))];
    }
}

/// <summary>A place as far as it is asked for, with what lies there.</summary>
internal sealed class PlaceRow
{
    public string Name { get; init; } = "";

    public string? Reach { get; init; }

    public long? LimitCubicMm { get; init; }

    public string? Note { get; init; }

    public int Boards { get; init; }

    public double HeldCubicMm { get; init; }
}
