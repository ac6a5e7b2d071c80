using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Host.Keeping;
using Offcuts.Host.Places;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>Makes the planning problem of a request: what it gives inline, and the rest from the store as it is now.</summary>
internal sealed class ProblemBuilder(
    Workshop workshop, StoredProblem store, DesignStore designs, TimeProvider clock)
{
    /// <summary>The problem, and the design by which it is listed.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="from">Id of the plan that the new one starts from, and whose place it is to take; null for none.</param>
    /// <returns>The problem; the design by which it is listed; and what it is made with, null for a design that leaves nothing open. Where the
    /// answers to choices are still to be found, the problem's design has them open.</returns>
    public (PlanningProblem Problem, PlanDesign Design, MadeWithRecord? MadeWith) Build(PlanRequest request, string? from)
    {
        var faults = new Faults();
        var (problem, named, catalogue) = Read(request.Design, request.Inline, request.BudgetMs, request.Seed, from, faults, request.Designs);
        problem = problem with { Offers = Without(problem.Offers, request.Without, faults) };
        var settings = DesignSettings.Read(problem.Design, request.With, request.Choose, faults);
        var (settled, madeWith) = settings.Apply(catalogue, faults);
        faults.ThrowIfAny();
        return (problem with { Design = settled.HasAlternatives ? settled : DesignResolver.Resolve(settled, catalogue.All) }, named, madeWith);
    }

    /// <summary>The problem with the design as it is written, its species lists not resolved.</summary>
    /// <param name="reference">Reference or version of a stored design; null for an inline one.</param>
    /// <param name="given">What is given with the request.</param>
    /// <param name="budgetMs">Time allowed, which is checked.</param>
    /// <param name="seed">Seed, which is checked.</param>
    /// <param name="from">Id of a plan whose boards count as free; null for none.</param>
    /// <param name="faults">Told what is wrong; what makes the rest unreadable is thrown.</param>
    /// <param name="references">References of several stored designs to plan together; null for one design.</param>
    /// <param name="mostMs">The most time that may be allowed.</param>
    public (PlanningProblem Problem, PlanDesign Design, SpeciesCatalogue Catalogue) Read(
        string? reference, InlineProblem? given, int budgetMs, int seed, string? from, Faults faults, IReadOnlyList<string>? references = null, int mostMs = 300_000)
    {
        faults.Count("#/budgetMs", budgetMs, 100, mostMs);
        faults.Count("#/seed", seed, 0, int.MaxValue);
        if (new object?[] { reference, given?.Design, references }.Count(each => each is not null) != 1)
        {
            faults.Add("#/design", "Give either the reference of a stored design here, or references in designs, or a design in inline.");
        }

        if (references is { } several)
        {
            faults.Count("#/designs", several.Count, 2, JointDesign.MaxBuilds);
        }

        faults.ThrowIfAny();
        var catalogue = workshop.Catalogue();
        var inline = given ?? new InlineProblem();
        var shop = inline.Shop is null ? workshop.Shop(catalogue) : ProblemMapping.ToShop(inline, catalogue, "#/inline", faults);
        if (inline is { Shop: null, KeepRule: { } rule })
        {
            shop = shop with { KeepRule = KeepRuleMapping.ToRule(rule, catalogue, "#/inline/keepRule", faults).Resolved(catalogue) };
        }

        var stored = reference is null ? null : Find(reference);
        var (design, builds) = references is not null ? JointDesign.Of([.. references.Index().Select(each => Settled(each.Item, catalogue, shop, $"#/designs/{each.Index}", faults))])
            : (stored is null ? DesignMapping.ToDesign(inline.Design!, catalogue, shop.Currency, "#/inline/design", faults) : Read(stored, catalogue, shop, "#/design", faults), []);
        builds = given?.Design is null ? builds : ProblemMapping.ToBuilds(inline.Builds, design, "#/inline/builds", faults);
        var wood = Given(inline, shop, catalogue, faults);
        faults.ThrowIfAny();
        var problem = store.Of(design, shop, catalogue, wood, heldBy: from) with { Builds = builds };
        return (problem, new PlanDesign(design.Name, stored?.Version ?? DesignMapping.Canonical(design, shop.Currency).Version, stored?.Reference), catalogue);
    }

    private GivenWood Given(InlineProblem inline, Shop shop, SpeciesCatalogue catalogue, Faults faults) => new()
    {
        Stock = inline.Stock is { } stock ? ProblemMapping.ToStock(stock, catalogue, clock.GetUtcNow(), "#/inline/stock", faults) : null,
        Offers = inline.Offers is { } offered ? ProblemMapping.ToOffers(offered, catalogue, shop.Currency, "#/inline/offers", faults) : null,
        Terms = inline.Terms is { } terms ? ProblemMapping.ToTerms(terms, shop.Currency, "#/inline/terms", faults) : null,
        Rates = inline.Rates is { } rates ? ProblemMapping.ToRates(rates, shop.Currency, "#/inline/rates", faults) : null,
        Reaches = inline.Places is { } said ? PlaceMapping.ToReaches(said, "#/inline/places", faults) : null,
        Today = inline.Today,
    };

    private StoredDesign Find(string reference) => designs.Find(reference) ?? throw DesignEndpoints.NoDesign(reference);

    private static Design Read(StoredDesign stored, SpeciesCatalogue catalogue, Shop shop, string at, Faults faults) =>
        DesignMapping.ToDesign(JsonSerializer.Deserialize(stored.Content, WireJson.Default.DesignEntry)!, catalogue, shop.Currency, at, faults);

    /// <summary>A design of several: what it leaves open has its defaults and the first answers.</summary>
    private Design Settled(string reference, SpeciesCatalogue catalogue, Shop shop, string at, Faults faults) =>
        DesignSettings.Usual(Read(Find(reference), catalogue, shop, at, faults), catalogue, at, faults);

    private static IReadOnlyList<Offer> Without(IReadOnlyList<Offer> wood, IReadOnlyList<UnavailableRecord>? without, Faults faults)
    {
        foreach (var (index, record) in faults.Entries("#/without", without, Limits.MaxSizes))
        {
            var at = $"#/without/{index}";
            if (record is { What: null, LengthMm: null })
            {
                faults.Add(at, "Say what is not to be had: an offer or a supplier, a length, or both.");
                continue;
            }

            var gone = new Unavailable(record.What, record.LengthMm is { } length ? faults.Millimetres($"{at}/lengthMm", length) : null);
            if (!gone.Concerns(wood))
            {
                faults.Add(at, $"No offer is left that is {(record.What is null ? "" : $"of '{record.What}'")}{(record is { What: not null, LengthMm: not null } ? " and " : "")}{(record.LengthMm is null ? "" : "of this length")}: list the offers to see which there are.");
            }

            wood = gone.From(wood);
        }

        return wood;
    }
}
