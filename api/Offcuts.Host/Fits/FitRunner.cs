using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Planning.Fitting;
using Offcuts.Storage;

namespace Offcuts.Host.Fits;

/// <summary>Makes rankings of the designs, the stock, the offers and the shop as they are now. Every plan passes the auditor before it counts.</summary>
internal sealed partial class FitRunner(
    Workshop workshop, StoredProblem store, DesignStore designs, BoardStore boards, PlaceStore places, FitStore outcomes, AuditedPlanner planner, ILogger<FitRunner> log)
{
    /// <summary>Prepares a ranking.</summary>
    /// <exception cref="OffcutsException">The query cannot be right.</exception>
    public FitRun Prepare(IQueryCollection query)
    {
        var (shop, catalogue) = workshop.Now();
        var request = FitRequest.Read(query, catalogue, shop.Currency);
        var (saved, unreadable) = SavedDesigns.Read(designs, catalogue, shop.Currency);
        CheckNames(request.Question, saved);
        var problem = store.Of(new Design { Name = "any" }, shop, catalogue);
        // The age of boards counts by months, so that what is remembered holds for more than a day.
        var stock = new FitStock(problem with { Today = new DateOnly(problem.Today.Year, problem.Today.Month, 1) }, request.Question.Focus);
        var memory = new FitMemory(outcomes, new FitPrints(stock));
        return new FitRun(
            new FitSearch(stock, request.Question, memory, Plan), memory, new FitMapping(stock, request.Question, catalogue), saved, unreadable, request.Budget);
    }

    // What nothing has is mostly a slip. A place or batch of which all is used up is none: there the answer is that no design fits.
    private void CheckNames(FitQuestion question, List<SavedDesign> saved)
    {
        var faults = new Faults();
        if (question.Focus?.Place is { } place && places.Names() is var known && !known.Contains(place))
        {
            faults.Add("?place", $"Nothing lies at '{place}'. {Spelling.Instead(place, known, "No board names a place yet.")}");
        }

        if (question.Focus?.Batch is { } batch && boards.Batches() is var batches && !batches.Contains(batch))
        {
            faults.Add("?batch", $"No board is of the batch '{batch}'. {Spelling.Instead(batch, batches, "No board names a batch yet.")}");
        }

        List<string> tags = [.. saved.SelectMany(design => design.Design.Tags).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase)];
        foreach (var tag in question.Tags.Where(tag => saved.Count > 0 && !tags.Contains(tag, StringComparer.OrdinalIgnoreCase)))
        {
            faults.Add("?tags", $"No design has the tag '{tag}'. {Spelling.Instead(tag, tags, "No design has any.")}");
        }

        faults.ThrowIfAny();
    }

    private Plan? Plan(SavedDesign design, PlanningProblem problem, PlanLimits limits, CancellationToken cancellationToken)
    {
        try
        {
            return planner.Check($"fit-{design.Version}", problem, planner.Search(problem, limits, null, cancellationToken));
        }
        catch (PlanRejectedException fault)
        {
            LogRejected(log, design.Reference, fault.Reproduction, fault.Message);
        }
        catch (Exception failure) when (!cancellationToken.IsCancellationRequested)
        {
            // Whatever it is, the other designs still have their places: it is logged, and the design is named as one that could not be planned.
            LogFailed(log, failure, design.Reference);
        }

        return null;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Design {Design} could not be planned to be ranked")]
    private static partial void LogFailed(ILogger logger, Exception failure, string design);

    [LoggerMessage(Level = LogLevel.Error, Message = "The auditor rejected a plan of design {Design}; {Reproduction} reproduces it. {Findings}")]
    private static partial void LogRejected(ILogger logger, string design, string reproduction, string findings);
}
