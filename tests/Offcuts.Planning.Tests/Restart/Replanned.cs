using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Restart;

/// <summary>A problem planned, then planned again from that plan.</summary>
/// <param name="Earlier">The plan before.</param>
/// <param name="Problem">The problem that was planned again.</param>
/// <param name="First">The first plan on the way.</param>
/// <param name="Plan">The plan in the end.</param>
internal sealed record Replanned(EarlierPlan Earlier, PlanningProblem Problem, Plan First, Plan Plan)
{
    public static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(1));

    /// <summary>The random shops of one kind: plain ones, or with what the design or the record of the boards may add.</summary>
    public static PlanningProblem Shop(string kind, ShopScale scale, int seed)
    {
        var problem = RandomShops.Create(seed, RandomShops.Kind(seed, scale));
        return kind switch
        {
            "freedom" => RandomFreedom.Add(problem, seed),
            "recipes" => RandomRecipes.Apply(problem, seed, problem.Shop.Unit == DisplayUnit.Millimetre),
            "defects" => RandomDefects.Add(problem, seed),
            "condition" => RandomCondition.Applied(problem, seed),
            _ => problem,
        };
    }

    public static EarlierPlan Before(PlanningProblem problem) => new(problem, Planner.Solve(problem, Limits));

    /// <summary>Plans again from a plan, and audits what comes of it, the first plan too.</summary>
    public static Replanned From(EarlierPlan earlier, PlanningProblem problem)
    {
        Plan? first = null;
        var plan = Planner.Solve(problem with { Earlier = earlier }, Limits, progress => first ??= progress.Improved);
        Assert.Empty(Auditor.Audit(problem, first!));
        Assert.Empty(Auditor.Audit(problem, plan));
        return new Replanned(earlier, problem, first!, plan);
    }

    public PlanChanges Changes => PlanComparison.Of(Earlier, Problem, Plan);

    public PlanChanges FirstChanges => PlanComparison.Of(Earlier, Problem, First);

    /// <summary>A board that should have been kept, as it was cut and as it is.</summary>
    public string Say(int seed, BoardChange change)
    {
        return FormattableString.Invariant($"seed {seed}: board {change.Board.BoardId ?? change.Board.OfferId} is {change.Kind}\n")
            + $"{Pieces(Earlier.Plan.Boards.FirstOrDefault(board => board.Number == change.EarlierNumber))}\n{Pieces(change.Board)}";

        static string Pieces(BoardCut? board) => string.Join("; ", (board?.Pieces ?? []).Select(piece => FormattableString.Invariant(
            $"{piece.GetType().Name} {(piece as PartPiece)?.Part} {(piece as PartPiece)?.Use} {piece.At.X.Ticks},{piece.At.Y.Ticks} {piece.At.Length.Ticks}x{piece.At.Width.Ticks}")))
            + " | " + string.Join("; ", (board?.Cuts ?? []).Select(cut => FormattableString.Invariant($"{cut.Direction} {cut.Kerf.X.Ticks},{cut.Kerf.Y.Ticks} {cut.Kerf.Length.Ticks}x{cut.Kerf.Width.Ticks}")));
    }

    /// <summary>Whether all searches ended by themselves, so that the machine's load has no part in what they found.</summary>
    public bool IsFinished => Earlier.Plan.Run.Finished && Plan.Run.Finished;
}
