using System.Globalization;
using Google.OrTools.LinearSolver;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>What an integer program over patterns is after.</summary>
internal enum PoolGoal
{
    /// <summary>To leave as little as possible missing.</summary>
    Completeness,

    /// <summary>Least money.</summary>
    Money,

    /// <summary>Least worth for no more money than allowed.</summary>
    Worth,
}

/// <summary>
/// The integer program over the patterns at hand: min cost x such that everything is covered, no supply overdrawn and no more
/// money spent than allowed, x whole. A part of the plan may be given.
/// </summary>
internal static class PoolProgram
{
    /// <summary>Enough for a workshop's problems, and the same on every run, which a time limit would not be.</summary>
    private const int MostNodes = 2000;

    /// <summary>Cutting planes take the time in which a hundred nodes find better plans (measured on the programs of large shops).</summary>
    private const string NoCuts = "separating/maxroundsroot = 0\nseparating/maxrounds = 0\n";

    /// <summary>The best solution over the pool that spends at most <paramref name="mostMoney"/>; null if none was found.</summary>
    /// <param name="model">The model.</param>
    /// <param name="pool">Patterns to choose from.</param>
    /// <param name="rest">What is to be covered, and the boards for it.</param>
    /// <param name="kept">Cuts that are part of the solution.</param>
    /// <param name="mostMoney">Limit on the money.</param>
    /// <param name="goal">What to minimise.</param>
    /// <param name="hint">A solution to start from.</param>
    /// <param name="clock">Limits the time.</param>
    /// <param name="limit">The most time for this program.</param>
    /// <param name="tooLarge">Called if it was too large to be solved.</param>
    public static Solution? Solve(
        PlanningModel model, IReadOnlyList<Pattern> pool, Remainder rest, IReadOnlyList<(Pattern Pattern, int Count)> kept,
        long mostMoney, PoolGoal goal, Solution? hint, SearchClock clock, TimeSpan limit, Action? tooLarge = null)
    {
        using var solver = Solver.CreateSolver("SCIP");
        var time = limit < clock.Left ? limit : clock.Left;
        if (time <= TimeSpan.FromMilliseconds(20))
        {
            clock.NoteCutShort();
            return null;
        }

        solver.SetTimeLimit((long)time.TotalMilliseconds);
        solver.SetSolverSpecificParametersAsString(
            string.Create(CultureInfo.InvariantCulture, $"limits/totalnodes = {MostNodes}\n{NoCuts}"));
        var (variables, widths) = Build(solver, model, pool, rest, mostMoney - kept.Sum(cut => cut.Pattern.Money * cut.Count), goal);
        Hint(solver, pool, variables, hint);
        var status = solver.Solve();
        if (status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.INFEASIBLE))
        {
            tooLarge?.Invoke();
        }

        if (status is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE))
        {
            return null;
        }

        if (status == Solver.ResultStatus.FEASIBLE && solver.Nodes() < MostNodes)
        {
            clock.NoteCutShort();
        }

        // The solver's tolerances are not trusted: the solution is counted anew in whole numbers.
        var cuts = pool.Select((pattern, p) => (pattern, (int)Math.Round(variables[p].SolutionValue())));
        var solution = new Solution(model, kept.Concat(widths?.Read(cuts, rest.Need) ?? cuts));
        return goal == PoolGoal.Completeness || (solution.IsComplete && solution.Money <= mostMoney) ? solution : null;
    }

    private static (Variable[] Uses, FreeWidths? Widths) Build(
        Solver solver, PlanningModel model, IReadOnlyList<Pattern> pool, Remainder rest, long mostMoney, PoolGoal goal)
    {
        var variables = new Variable[pool.Count];
        var cover = model.Rows.Select(row => solver.MakeConstraint(row.Scaled(rest.Need[row.Index]), double.PositiveInfinity, "")).ToArray();
        new WidthShifts(solver, model, cover).SetRemainder(rest);
        var widths = FreeWidths.IsWorthwhile(model, pool) ? new FreeWidths(model, solver, cover) : null;
        var supply = model.Supplies.Select(each => solver.MakeConstraint(double.NegativeInfinity, rest.Left[each.Index], "")).ToArray();
        var money = solver.MakeConstraint(double.NegativeInfinity, mostMoney, "");
        for (var p = 0; p < pool.Count; p++)
        {
            var pattern = pool[p];
            var most = pattern.Cover.Max(each =>
                (rest.Need[each.Row] + (model.Rows[each.Row] is StripRow strip ? rest.Room(strip) : 0) + each.Amount - 1) / each.Amount);
            variables[p] = solver.MakeIntVar(0, Math.Min(most, rest.Left[pattern.Board.Supply]), "");
            widths?.Add(pattern, variables[p]);
            foreach (var (row, amount) in pattern.Cover.Where(each => widths is null || model.Rows[each.Row] is not StripRow))
            {
                cover[row].SetCoefficient(variables[p], model.Rows[row].Scaled(amount));
            }

            supply[pattern.Board.Supply].SetCoefficient(variables[p], 1);
            if (pattern.Money > 0)
            {
                money.SetCoefficient(variables[p], pattern.Money);
            }

            solver.Objective().SetCoefficient(variables[p], goal == PoolGoal.Worth ? pattern.Worth : pattern.Money + (1e-4 * pattern.Worth));
        }

        foreach (var row in goal == PoolGoal.Completeness ? model.Rows : [])
        {
            var missing = solver.MakeNumVar(0, double.PositiveInfinity, "");
            cover[row.Index].SetCoefficient(missing, 1);
            solver.Objective().SetCoefficient(missing, MasterProblem.MissingCost(model));
        }

        return (variables, widths);
    }

    private static void Hint(Solver solver, IReadOnlyList<Pattern> pool, Variable[] variables, Solution? hint)
    {
        if (hint is null)
        {
            return;
        }

        var counts = hint.Cuts.GroupBy(cut => cut.Pattern.Key).ToDictionary(group => group.Key, group => group.Sum(cut => cut.Count), StringComparer.Ordinal);
        solver.SetHint(new MPVariableVector(variables), [.. pool.Select(pattern => (double)counts.GetValueOrDefault(pattern.Key))]);
    }
}
