using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>
/// Says a stored plan in the unit that the shop has now: its sentences were made in the unit of their day. A plan of a design that came with
/// the request keeps the unit that came with it.
/// </summary>
internal static class ReadersUnit
{
    /// <summary>The problem of a run, as its pictures and sentences are to tell it.</summary>
    public static PlanningProblem ProblemOf(StoredPlanRun run, Workshop workshop, SpeciesCatalogue catalogue)
    {
        var problem = ProblemMapping.Read(run.Asked.Problem, catalogue);
        return run.Asked.DesignReference is null ? problem : problem with { Shop = problem.Shop with { Unit = workshop.Shop().Unit } };
    }

    /// <summary>The plan of a run; null if there is none yet.</summary>
    public static PlanResult? PlanOf(StoredPlanRun run, Workshop workshop)
    {
        if (run.Plan is null)
        {
            return null;
        }

        var stored = JsonSerializer.Deserialize(run.Plan, WireJson.Default.PlanResult)!;
        return run.Asked.DesignReference is null || UnitOf(run) == Words.Of(workshop.Shop().Unit) ? stored : Said(stored, run, workshop);
    }

    private static string? UnitOf(StoredPlanRun run) => JsonSerializer.Deserialize(run.Asked.Problem, WireJson.Default.InlineProblem)?.Shop?.Unit;

    private static PlanResult Said(PlanResult stored, StoredPlanRun run, Workshop workshop)
    {
        var catalogue = workshop.Catalogue();
        var problem = ProblemOf(run, workshop, catalogue);
        var plan = ResultReading.ToPlan(stored, problem);
        return stored with
        {
            Boards = [.. stored.Boards.Zip(plan.Boards, (record, board) => record with
            {
                Pieces = [.. record.Pieces.Zip(board.Pieces, (each, piece) => each.Steps is null ? each : each with
                {
                    Steps = LaminationMapping.Steps((PartPiece)piece, problem),
                })],
            })],
            Missing = [.. stored.Missing.Zip(plan.Missing, (record, missing) => record with { Reason = PlanText.Of(missing, problem) })],
            Warnings = [.. stored.Warnings.Zip(plan.Warnings, (record, warning) => record with { Text = PlanText.Of(warning, problem.Shop.Unit) })],
            Counts = stored.Counts is null ? null : [.. plan.Counts.Select(count => ResultMapping.ToRecord(count, problem))],
            Movements = stored.Movements is null ? null : MovementMapping.Of(plan, problem, catalogue),
        };
    }
}
