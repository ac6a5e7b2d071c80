using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Host.Keeping;
using Offcuts.Host.Offers;
using Offcuts.Host.Places;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>Planning problems between the wire and the domain.</summary>
internal static class ProblemMapping
{
    /// <summary>The whole problem as it goes over the wire and into the store.</summary>
    public static InlineProblem ToRecord(PlanningProblem problem)
    {
        var currency = problem.Shop.Currency;
        return new InlineProblem(
            [.. problem.Stock.Select(ToRecord)],
            [.. problem.Offers.Select(offer => OfferMapping.ToRecord(offer, currency))],
            ShopMapping.ToEntry(problem.Shop),
            DesignMapping.ToEntry(problem.Design, currency),
            new RatesRecord(
                MoneyText.ToDecimal(problem.Rates.Otherwise, currency),
                problem.Rates.PerBoardFoot.ToDictionary(rate => rate.Key, rate => MoneyText.ToDecimal(rate.Value, currency))),
            problem.Today,
            PlaceMapping.ToRecords(problem.Reaches),
            problem.Shop.KeepRule.Entries.Count == 0 ? null : KeepRuleMapping.ToEntry(problem.Shop.KeepRule),
            problem.Terms.Count == 0 ? null : [.. problem.Terms.Select(terms => new SupplierTermsRecord(
                terms.Supplier, MoneyText.ToDecimal(terms.Delivery, currency), MoneyText.ToDecimal(terms.MinimumOrder, currency)))],
            problem.Builds.Count == 0 ? null : problem.Builds);
    }

    /// <summary>The problem that a run was stored with: complete, its species settled.</summary>
    public static PlanningProblem Read(string json, SpeciesCatalogue catalogue)
    {
        var record = JsonSerializer.Deserialize(json, WireJson.Default.InlineProblem)!;
        var faults = new Faults();
        var shop = ToShop(record, catalogue, "#", faults);
        var problem = new PlanningProblem
        {
            Stock = ToStock(record.Stock!, catalogue, default, "#/stock", faults),
            Offers = ToOffers(record.Offers!, catalogue, shop.Currency, "#/offers", faults),
            Design = DesignMapping.ToDesign(record.Design!, catalogue, shop.Currency, "#/design", faults),
            Shop = shop,
            Rates = ToRates(record.Rates!, shop.Currency, "#/rates", faults),
            Today = record.Today!.Value,
            Reaches = PlaceMapping.ToReaches(record.Places ?? [], "#/places", faults),
            Terms = ToTerms(record.Terms, shop.Currency, "#/terms", faults),
            Builds = record.Builds ?? [],
        };
        faults.ThrowIfAny();
        return problem;
    }

    /// <summary>The shop of a problem that names one, with its keep rule.</summary>
    public static Shop ToShop(InlineProblem record, SpeciesCatalogue catalogue, string at, Faults faults)
    {
        var shop = ShopMapping.ToShop(record.Shop!, $"{at}/shop", faults);
        return record.KeepRule is { } rule ? shop with { KeepRule = KeepRuleMapping.ToRule(rule, catalogue, $"{at}/keepRule", faults).Resolved(catalogue) } : shop;
    }

    public static List<Board> ToStock(
        IReadOnlyList<StockBoard> stock, SpeciesCatalogue catalogue, DateTimeOffset now, string at, Faults faults)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var boards = new List<Board>();
        foreach (var (index, record) in faults.Entries(at, stock, Limits.MaxQuantity))
        {
            var here = $"{at}/{index}";
            faults.Text($"{here}/id", record.Id, Limits.MaxName, required: true);
            if (!ids.Add(record.Id))
            {
                faults.Add($"{here}/id", $"'{record.Id}' stands twice: give each board an id of its own, or a quantity to one.");
            }

            var entry = new BoardEntry(
                record.Species, record.ThicknessMm, record.WidthMm, record.LengthMm, record.Kind, record.Quantity, record.Surface,
                record.Appearance, Words.Of(BoardStatus.Free), record.Defects, record.Place,
                Batch: record.Batch, Warp: record.Warp, Ends: record.Ends, Estimated: record.Estimated, Moisture: record.Moisture);
            boards.Add(BoardMapping.ToBoard(entry, record.Id, catalogue, here, faults) with { LoggedAt = record.LoggedAt ?? now });
        }

        return boards;
    }

    public static List<Offer> ToOffers(
        IReadOnlyList<OfferRecord> offers, SpeciesCatalogue catalogue, string currency, string at, Faults faults)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var found = new List<Offer>();
        foreach (var (index, record) in faults.Entries(at, offers, Limits.MaxQuantity))
        {
            if (!ids.Add(record.Id))
            {
                faults.Add($"{at}/{index}/id", $"'{record.Id}' stands twice: give each offer an id of its own.");
            }

            found.Add(OfferMapping.ToOffer(record, catalogue, currency, $"{at}/{index}", faults));
        }

        return found;
    }

    /// <summary>The builds of a joint design: each has parts of its own, and each part is of one.</summary>
    public static IReadOnlyList<string> ToBuilds(IReadOnlyList<string>? builds, Design design, string at, Faults faults)
    {
        List<string> found = [.. faults.Entries(at, builds, JointDesign.MaxBuilds).Select(build => build.Entry)];
        if (found.Count == 0)
        {
            return [];
        }

        if (found.Distinct(StringComparer.Ordinal).Count() < found.Count)
        {
            faults.Add(at, "A build stands twice: give each a name of its own.");
        }

        var names = design.Parts.Select(part => part.Name).Concat(design.Panels.Select(panel => panel.Name)).Concat(design.Groups.Select(group => group.Name)).ToList();
        if (names.Find(name => found.Count(build => JointDesign.IsOf(name, build)) != 1) is { } stray)
        {
            faults.Add(at, $"'{stray}' is of none of the builds, or of several: its name begins with the name of its build, a colon and a space.");
        }

        return found;
    }

    public static List<SupplierTerms> ToTerms(IReadOnlyList<SupplierTermsRecord>? terms, string currency, string at, Faults faults)
    {
        var suppliers = new HashSet<string>(StringComparer.Ordinal);
        var found = new List<SupplierTerms>();
        foreach (var (index, record) in faults.Entries(at, terms, Limits.MaxEntries))
        {
            faults.Text($"{at}/{index}/supplier", record.Supplier, Limits.MaxName, required: true);
            if (!suppliers.Add(Slug.Of(record.Supplier)))
            {
                faults.Add($"{at}/{index}/supplier", $"'{record.Supplier}' stands twice: say all its terms once.");
            }

            found.Add(OfferMapping.ToTerms(record.Supplier, new TermsRecord(record.Delivery, record.MinimumOrder), currency, $"{at}/{index}", faults));
        }

        return found;
    }

    public static WorthRates ToRates(RatesRecord record, string currency, string at, Faults faults) => new(
        faults.Money($"{at}/otherwise", record.Otherwise, currency),
        record.PerBoardFoot.ToDictionary(
            rate => rate.Key, rate => faults.Money($"{at}/perBoardFoot/{rate.Key}", rate.Value, currency), StringComparer.Ordinal));

    /// <summary>A board as plans see it.</summary>
    public static StockBoard ToRecord(Board board)
    {
        var record = BoardMapping.ToRecord(board);
        return new StockBoard(
            record.Id, record.Species, record.ThicknessMm, record.WidthMm, record.LengthMm, record.Kind, record.Quantity,
            record.Surface, record.Appearance, record.Defects, record.Place, record.LoggedAt, record.Batch, record.Warp, record.Ends, record.Estimated, record.Moisture);
    }
}
