using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Host.Builds;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Planning;
using Offcuts.Planning.Fitting;
using Offcuts.Storage;

namespace Offcuts.Host.Fits;

/// <summary>Makes rankings of the designs, the stock, the offers and the shop as they are now. Every plan passes the auditor before it counts.</summary>
internal sealed partial class FitRunner(
    Workshop workshop, BoardStore boards, PlaceStore places, StoredOffers wood, DesignStore designs, FitStore outcomes, Expiry expiry, RejectedPlans rejected,
    HostSettings settings, TimeProvider clock, ILogger<FitRunner> log) : IDisposable
{
    private readonly SemaphoreSlim turn = new(1);

    /// <summary>Prepares a ranking.</summary>
    /// <exception cref="OffcutsException">The query cannot be right.</exception>
    public FitRun Prepare(IQueryCollection query)
    {
        var (shop, catalogue) = (workshop.Shop(), workshop.Catalogue());
        var request = FitRequest.Read(query, catalogue, shop.Currency);
        expiry.Run();
        var (saved, unreadable) = SavedDesigns.Read(designs, catalogue, shop.Currency);
        var faults = new Faults();
        var (offers, terms) = (wood.List(shop, catalogue, faults), wood.Terms(shop, faults));
        faults.ThrowIfAny();
        var today = DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
        var stock = new FitStock(
            new PlanningProblem
            {
                Stock = boards.ListFree(),
                Offers = offers,
                Terms = terms,
                Design = new Design { Name = "any" },
                Shop = shop,
                Rates = OfferRates.Of(offers),
                Reaches = places.Reaches(),
                // The age of boards counts by months, so that what is remembered holds for more than a day.
                Today = new DateOnly(today.Year, today.Month, 1),
            },
            request.Question.Focus);
        var memory = new FitMemory(outcomes, new FitPrints(stock));
        return new FitRun(
            new FitSearch(stock, request.Question, memory, Plan), memory, new FitMapping(stock, request.Question, catalogue), saved, unreadable, request.Budget, turn);
    }

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    private Plan? Plan(SavedDesign design, PlanningProblem problem, PlanLimits limits, CancellationToken cancellationToken)
    {
        Plan plan;
        try
        {
            plan = (settings.Solve ?? Planner.Solve)(problem, limits, null, cancellationToken);
        }
        catch (Exception failure) when (!cancellationToken.IsCancellationRequested)
        {
            // Whatever it is, the other designs still have their places: it is logged, and the design is named as one that could not be planned.
            LogFailed(log, failure, design.Reference);
            return null;
        }

        var findings = (settings.Audit ?? Auditor.Audit)(problem, plan);
        if (findings.Count == 0)
        {
            return plan;
        }

        var fault = rejected.Keep($"fit-{design.Version}", problem, plan, findings);
        LogRejected(log, design.Reference, fault.Reproduction, fault.Message);
        return null;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Design {Design} could not be planned to be ranked")]
    private static partial void LogFailed(ILogger logger, Exception failure, string design);

    [LoggerMessage(Level = LogLevel.Error, Message = "The auditor rejected a plan of design {Design}; {Reproduction} reproduces it. {Findings}")]
    private static partial void LogRejected(ILogger logger, string design, string reproduction, string findings);
}
