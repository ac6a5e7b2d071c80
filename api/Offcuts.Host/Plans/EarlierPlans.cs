using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>Plans made before, back in the domain: to build them, to tell how they went, or to start a new one from them.</summary>
internal sealed class EarlierPlans(PlanStore store, Workshop workshop)
{
    /// <summary>The id of the plan that a new one is to start from.</summary>
    /// <param name="from">What was asked for; its letters may be of any case.</param>
    /// <exception cref="OffcutsException">There is no such plan, or it has not ended, or it ended without a plan.</exception>
    public string IdOf(string from)
    {
        var run = PlanEndpoints.FindRun(from, store);
        return run.FinishedAt is null
                ? throw new OffcutsException(ErrorCode.Conflict, $"Plan '{from}' is still {Words.Of(run.State)}: wait until it has ended, then start from it.")
            : run.Plan is null
                ? throw new OffcutsException(ErrorCode.Conflict, $"Plan '{from}' is {Words.Of(run.State)} and has no plan to start from: name another, or none.")
            : run.Asked.Id;
    }

    /// <summary>The plan of an id that <see cref="IdOf"/> gave.</summary>
    public EarlierPlan Read(string id) => Read(store.Find(id)!, workshop.Catalogue());

    /// <summary>The plan of a run that has one, with all that it was made from.</summary>
    public static EarlierPlan Read(StoredPlanRun run, SpeciesCatalogue catalogue)
    {
        var problem = ProblemMapping.Read(run.Asked.Problem, catalogue);
        return new EarlierPlan(problem, ResultReading.ToPlan(JsonSerializer.Deserialize(run.Plan!, WireJson.Default.PlanResult)!, problem));
    }
}
