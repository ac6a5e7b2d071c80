using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Builds;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Host.Keeping;
using Offcuts.Host.Places;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>Makes the planning problem of a request: what it gives inline, and the rest from the store as it is now.</summary>
internal sealed class ProblemBuilder(
    Workshop workshop, BoardStore boards, PlaceStore places, StoredOffers offers, DesignStore designs, Expiry expiry, TimeProvider clock)
{
    /// <summary>The problem, and the design by which it is listed.</summary>
    /// <param name="request">What was asked for.</param>
    /// <param name="from">Id of the plan that the new one starts from, and whose place it is to take; null for none.</param>
    public (PlanningProblem Problem, PlanDesign Design) Build(PlanRequest request, string? from)
    {
        var faults = new Faults();
        faults.Count("#/budgetMs", request.BudgetMs, 100, 300_000);
        faults.Count("#/seed", request.Seed, 0, int.MaxValue);
        if ((request.Design is null) == (request.Inline?.Design is null))
        {
            faults.Add("#/design", "Give either the reference of a stored design here or a design in inline.");
        }

        faults.ThrowIfAny();
        expiry.Run();
        var catalogue = workshop.Catalogue();
        var inline = request.Inline ?? new InlineProblem();
        var shop = inline.Shop is null ? workshop.Shop() : ProblemMapping.ToShop(inline, catalogue, "#/inline", faults);
        if (inline is { Shop: null, KeepRule: { } rule })
        {
            shop = shop with { KeepRule = KeepRuleMapping.ToRule(rule, catalogue, "#/inline/keepRule", faults).Resolved(catalogue) };
        }

        var stored = request.Design is { } reference ? designs.Find(reference) ?? throw DesignEndpoints.NoDesign(reference) : null;
        var design = stored is null
            ? DesignMapping.ToDesign(inline.Design!, catalogue, shop.Currency, "#/inline/design", faults)
            : DesignMapping.ToDesign(JsonSerializer.Deserialize(stored.Content, WireJson.Default.DesignEntry)!, catalogue, shop.Currency, "#/design", faults);
        var wood = inline.Offers is { } given
            ? ProblemMapping.ToOffers(given, catalogue, shop.Currency, "#/inline/offers", faults)
            : offers.List(shop, catalogue, faults);
        var problem = new PlanningProblem
        {
            Stock = inline.Stock is { } stock
                ? ProblemMapping.ToStock(stock, catalogue, clock.GetUtcNow(), "#/inline/stock", faults)
                : boards.ListFree(heldBy: from),
            Offers = wood,
            Design = design,
            Shop = shop,
            Rates = inline.Rates is { } rates ? ProblemMapping.ToRates(rates, shop.Currency, "#/inline/rates", faults) : WorthRates.Default,
            Reaches = inline.Places is { } said ? PlaceMapping.ToReaches(said, "#/inline/places", faults) : places.Reaches(),
            Today = inline.Today ?? DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime),
        };
        faults.ThrowIfAny();
        var named = new PlanDesign(design.Name, stored?.Version ?? DesignMapping.Canonical(design, shop.Currency).Version, stored?.Reference);
        return (problem with
        {
            Design = DesignResolver.Resolve(design, catalogue.All),
            Rates = inline.Rates is null ? OfferRates.Of(wood) : problem.Rates,
        }, named);
    }
}
