using System.Globalization;
using Google.OrTools.LinearSolver;
using Google.OrTools.Sat;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Bounds;

/// <summary>How an integer program over listed patterns ended.</summary>
/// <param name="IsDecided">Whether the least money is known, or that there is no plan for so little.</param>
/// <param name="Uses">How often each pattern is used in the best plan found; null if none was.</param>
internal readonly record struct ListedOutcome(bool IsDecided, int[]? Uses);

/// <summary>
/// The integer program over listed patterns: least money such that everything but the free rows is covered, no more is spent than allowed and no more boards are used
/// than may be. First by a solver that reckons in whole numbers, for a moment; what that leaves open by one that is often
/// faster but reckons in floating point, which is good enough for coefficients that are small whole numbers.
/// </summary>
/// <param name="model">The model.</param>
/// <param name="patterns">The patterns.</param>
/// <param name="free">Rows that need not be covered.</param>
/// <param name="surplus">How much of each row may be made beyond what is needed.</param>
/// <param name="purchases">How many boards may be used.</param>
/// <param name="mostMoney">What may be spent.</param>
internal sealed class ListedProgram(
    PlanningModel model, IReadOnlyList<Pattern> patterns, IReadOnlySet<int> free, long[] surplus, Purchases purchases, long mostMoney)
{
    /// <summary>Work after which the exact solver gives up, in its own units (about seconds), so that it ends the same on every machine.</summary>
    private const double MostWork = 0.15;
    private const int MostNodes = 20_000;

    /// <summary>Cutting planes at the root take longer than the tree without them (measured on published one-dimensional problems: 0.5 to 3 s against 3 to 12).</summary>
    private const string NoCuts = "separating/maxroundsroot = 0\nseparating/maxrounds = 0\n";

    /// <summary>The outcome within a time; <paramref name="cutShort"/> says whether the time ended it.</summary>
    public ListedOutcome Solve(TimeSpan time, out bool cutShort)
    {
        var constraints = Constraints().ToList();
        var exact = Exactly(constraints, time, out var took);
        cutShort = false;
        return exact.IsDecided ? exact : Quickly(constraints, time - took, out cutShort);
    }

    private ListedOutcome Exactly(List<Row> constraints, TimeSpan time, out TimeSpan took)
    {
        var program = new CpModel();
        var uses = patterns.Select(pattern => program.NewIntVar(0, purchases.OfBoard(pattern.Board).Most, "")).ToArray();
        foreach (var (terms, least, most) in constraints)
        {
            program.AddLinearConstraint(Google.OrTools.Sat.LinearExpr.WeightedSum([.. terms.Select(term => uses[term.Pattern])], [.. terms.Select(term => term.Amount)]), least, most);
        }

        program.Minimize(Google.OrTools.Sat.LinearExpr.WeightedSum(uses, [.. patterns.Select(pattern => pattern.Money)]));
        var solver = new CpSolver
        {
            StringParameters = string.Create(
                CultureInfo.InvariantCulture, $"num_workers:1,max_deterministic_time:{MostWork},max_time_in_seconds:{Math.Max(0.01, time.TotalSeconds)}"),
        };
        var status = solver.Solve(program);
        took = TimeSpan.FromSeconds(solver.WallTime());
        return new ListedOutcome(
            status is CpSolverStatus.Optimal or CpSolverStatus.Infeasible,
            status == CpSolverStatus.Optimal ? [.. uses.Select(use => (int)solver.Value(use))] : null);
    }

    private ListedOutcome Quickly(List<Row> constraints, TimeSpan time, out bool cutShort)
    {
        cutShort = time <= TimeSpan.FromMilliseconds(10);
        if (cutShort)
        {
            return default;
        }

        using var solver = Solver.CreateSolver("SCIP");
        solver.SetTimeLimit((long)time.TotalMilliseconds);
        solver.SetSolverSpecificParametersAsString($"limits/totalnodes = {MostNodes}\n{NoCuts}");
        var uses = patterns.Select(pattern => solver.MakeIntVar(0, purchases.OfBoard(pattern.Board).Most, "")).ToArray();
        foreach (var (terms, least, most) in constraints)
        {
            var constraint = solver.MakeConstraint(least, most, "");
            foreach (var (pattern, amount) in terms)
            {
                constraint.SetCoefficient(uses[pattern], amount);
            }
        }

        for (var at = 0; at < uses.Length; at++)
        {
            solver.Objective().SetCoefficient(uses[at], patterns[at].Money);
        }

        var status = solver.Solve();
        var isDecided = status is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.INFEASIBLE;
        cutShort = !isDecided && solver.WallTime() >= time.TotalMilliseconds;
        return new ListedOutcome(
            isDecided, status is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE ? [.. uses.Select(use => (int)Math.Round(use.SolutionValue()))] : null);
    }

    /// <summary>A constraint: amounts by pattern and their limits.</summary>
    private sealed record Row(List<(int Pattern, long Amount)> Terms, long Least, long Most);

    /// <summary>All constraints.</summary>
    private IEnumerable<Row> Constraints()
    {
        foreach (var row in model.Rows.Where(row => !free.Contains(row.Index)))
        {
            yield return new(
                Terms(pattern => Math.Min(row.Needed, pattern.Cover.FirstOrDefault(cover => cover.Row == row.Index).Amount)),
                row.Needed, Math.Min(int.MaxValue, row.Needed + surplus[row.Index]));
        }

        foreach (var supply in model.Supplies)
        {
            var range = purchases.OfSupply(supply.Index);
            yield return new(Terms(pattern => pattern.Board.Supply == supply.Index ? 1 : 0), range.Least, range.Most);
        }

        foreach (var board in model.Boards.Where(board => board.Price > 0))
        {
            var range = purchases.OfBoard(board);
            yield return new(Terms(pattern => pattern.Board == board ? 1 : 0), range.Least, range.Most);
        }

        yield return new(Terms(pattern => pattern.Money), 0, mostMoney);
    }

    private List<(int Pattern, long Amount)> Terms(Func<Pattern, long> amount) =>
        [.. patterns.Select((pattern, at) => (at, amount(pattern))).Where(term => term.Item2 != 0)];
}
