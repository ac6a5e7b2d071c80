using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Planning;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>Plans the queued runs, one after another. Every plan passes the auditor before it is stored.</summary>
internal sealed partial class PlanRunner(
    PlanQueue queue, PlanStore store, EarlierPlans earlier, Workshop workshop, AuditedPlanner planner, ILogger<PlanRunner> log) : BackgroundService
{
    /// <summary>Runs whose process ended without a word are interrupted.</summary>
    public override Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var (id, _) in store.ListUnderWay().Where(run => !ProcessMark.IsAlive(run.Owner)))
        {
            store.Finish(id, PlanState.Interrupted, null, null);
        }

        return base.StartAsync(cancellationToken);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await foreach (var run in queue.TakeAsync(stoppingToken))
            {
                // The search keeps its thread for as long as the budget, so it takes none from the pool.
                await Task.Factory.StartNew(
                    () => Plan(run, stoppingToken), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            foreach (var run in queue.UnderWay)
            {
                Record(run.Id, () => store.Finish(run.Id, PlanState.Interrupted, null, null));
                queue.End(run);
            }
        }
    }

    private void Plan(QueuedRun run, CancellationToken stopping)
    {
        try
        {
            if (store.Begin(run.Id))
            {
                Search(run, stopping);
            }
        }
        catch (PlanRejectedException fault)
        {
            LogRejected(log, run.Id, fault.Reproduction, fault.Message);
            Fail(run.Id, "plan-rejected", fault.Message, fault.Reproduction);
        }
        catch (Exception fault)
        {
            // Whatever it is, it must not end the queue: it is logged, and told as a failed run.
            LogFailed(log, fault, run.Id);
            Fail(run.Id, "internal", "The planner failed; the log of the service says why.", null);
        }
        finally
        {
            queue.End(run);
            run.Dispose();
        }
    }

    private void Search(QueuedRun run, CancellationToken stopping)
    {
        var asked = store.Find(run.Id)!.Asked;
        var catalogue = workshop.Catalogue();
        var problem = ProblemMapping.Read(asked.Problem, catalogue) with { Earlier = asked.EarlierId is { } id ? earlier.Read(id) : null };
        var ways = problem.Design.HasAlternatives ? Alternatives.Of(problem.Design, catalogue.All) : [new Alternative(problem.Design, new Dictionary<string, string>())];
        var limits = new PlanLimits(TimeSpan.FromMilliseconds(asked.BudgetMs), asked.Seed) { BoundsWorth = true };
        var reporter = new ProgressReporter(run.Id, store, problem.Shop.Currency, plan => Audited(run.Id, problem, catalogue, plan));
        using var either = CancellationTokenSource.CreateLinkedTokenSource(run.Cancelled, stopping);
        var plan = ways.Count == 1 ? planner.Search(problem, limits, reporter.Report, either.Token) : Cheapest();
        var state = plan.Run.Finished || !either.IsCancellationRequested ? PlanState.Done
            : run.Cancelled.IsCancellationRequested ? PlanState.Cancelled
            : PlanState.Interrupted;
        var result = Audited(run.Id, problem, catalogue, plan);
        store.Finish(run.Id, state, ProgressReporter.Last(plan, problem.Shop.Currency), result);

        Plan Cheapest()
        {
            var open = problem;
            var found = CheapestWay.Find(
                [.. ways.Select(way => open with { Design = DesignResolver.Resolve(way.Design, catalogue.All) })], limits, planner.Search, way => Settle(way, null), reporter.Report, either.Token);
            Settle(found.Way, new ComparisonRecord(ways.Count, found.IsSure));
            return found.Plan;

            void Settle(int way, ComparisonRecord? compared)
            {
                problem = open with { Design = DesignResolver.Resolve(ways[way].Design, catalogue.All) };
                store.Settle(
                    run.Id, JsonSerializer.Serialize(ProblemMapping.ToRecord(problem), WireJson.Default.InlineProblem),
                    JsonSerializer.Serialize(DesignSettings.Answered(asked.MadeWith, ways[way], compared), WireJson.Default.MadeWithRecord));
            }
        }
    }

    private string Audited(string id, PlanningProblem problem, SpeciesCatalogue catalogue, Plan plan) =>
        JsonSerializer.Serialize(ResultMapping.ToResult(planner.Check(id, problem, plan), problem, catalogue), WireJson.Default.PlanResult);

    private void Fail(string id, string code, string detail, string? reproduction) => Record(id, () => store.Fail(id, JsonSerializer.Serialize(
        new PlanFailure($"/problems/{code}", code, detail, reproduction), WireJson.Default.PlanFailure)));

    // Where even the end of a run cannot be recorded (a full disk), the queue goes on; the next start finds the run and ends it.
    private void Record(string id, Action end)
    {
        try
        {
            end();
        }
        catch (Exception fault)
        {
            LogUnrecorded(log, fault, id);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The auditor rejected a plan of run {Id}; {Reproduction} reproduces it. {Findings}")]
    private static partial void LogRejected(ILogger logger, string id, string reproduction, string findings);

    [LoggerMessage(Level = LogLevel.Error, Message = "The end of run {Id} could not be recorded")]
    private static partial void LogUnrecorded(ILogger logger, Exception fault, string id);

    [LoggerMessage(Level = LogLevel.Error, Message = "Run {Id} failed")]
    private static partial void LogFailed(ILogger logger, Exception fault, string id);
}
