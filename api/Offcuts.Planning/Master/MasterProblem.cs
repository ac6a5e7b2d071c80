using Google.OrTools.LinearSolver;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Master;

/// <summary>
/// The linear relaxation over the patterns at hand:
/// min sum c_p x_p + missing costs, such that for every row sum a_rp x_p + missing_r >= need_r, for every supply
/// and every bought size least &lt;= sum x_p &lt;= most, x >= 0, and where money is limited sum money_p x_p &lt;= most money. Strip rows are scaled so that a whole sub-panel counts 1; the sub-panels
/// of a panel may shift width to each other (<see cref="WidthShifts"/>).
/// </summary>
internal sealed class MasterProblem : IDisposable
{
    private readonly PlanningModel model;
    private readonly Solver solver;
    private readonly Constraint[] cover;
    private readonly Constraint[] supply;
    private readonly Constraint?[] purchases;
    private readonly Variable[] missing;
    private readonly WidthShifts shifts;
    private readonly Constraint? money;
    private readonly List<Variable> variables = [];
    private readonly HashSet<string> keys = new(StringComparer.Ordinal);
    private CostWeights weights;

    /// <param name="model">The model.</param>
    /// <param name="weights">How a pattern's two costs are added up.</param>
    /// <param name="mostMoney">The most money that may be spent; null for any.</param>
    public MasterProblem(PlanningModel model, CostWeights weights, long? mostMoney = null)
    {
        this.model = model;
        this.weights = weights;
        solver = Solver.CreateSolver("GLOP");
        var infinity = double.PositiveInfinity;
        cover = [.. model.Rows.Select(row => solver.MakeConstraint(row.Scaled(row.Needed), infinity, ""))];
        supply = [.. model.Supplies.Select(each => solver.MakeConstraint(-infinity, each.Capacity, ""))];
        missing = [.. model.Rows.Select(_ => solver.MakeNumVar(0, infinity, ""))];
        var cost = MissingCost(model);
        for (var row = 0; row < cover.Length; row++)
        {
            cover[row].SetCoefficient(missing[row], 1);
            solver.Objective().SetCoefficient(missing[row], model.Rows[row] is StripRow ? cost * 10 : cost);
        }

        shifts = new WidthShifts(solver, model, cover);
        purchases = [.. model.Boards.Select(board => board.Price > 0 ? solver.MakeConstraint(-infinity, infinity, "") : null)];
        money = mostMoney is { } most ? solver.MakeConstraint(-infinity, most, "") : null;
        CoverDuals = new double[cover.Length];
        BoardDuals = new double[purchases.Length];
    }

    public List<Pattern> Patterns { get; } = [];

    public double[] CoverDuals { get; }

    /// <summary>What the limits on a board's use count for, by board index.</summary>
    public double[] BoardDuals { get; }

    /// <summary>What one more minor unit of money would save, where it is limited.</summary>
    public double MoneyPrice { get; private set; }

    /// <summary>Values of the patterns after the last solve, in their order.</summary>
    public double[] Values { get; private set; } = [];

    public double Objective { get; private set; }

    /// <summary>Sum of what is missing after the last solve.</summary>
    public double Missing { get; private set; }

    /// <summary>More than anything that could be bought instead for one piece.</summary>
    public static double MissingCost(PlanningModel model) =>
        1000 + (10 * model.Boards.Select(board => board.Price + board.WorthConsumed).DefaultIfEmpty(0).Max());

    /// <summary>
    /// Adds a pattern unless it is there. What it covers beyond the whole need counts only if <paramref name="beyondNeed"/>. Where all that counts is the worth, one
    /// that makes the same and leaves more is another (<paramref name="byWorth"/>).
    /// </summary>
    public bool Add(Pattern pattern, bool beyondNeed = false, bool byWorth = false)
    {
        var beyond = beyondNeed && pattern.Cover.Any(each => each.Amount > model.Rows[each.Row].MostCounted);
        var key = byWorth ? FormattableString.Invariant($"{pattern.Key} {pattern.Worth:0.000}") : pattern.Key;
        if (pattern.Cover.Length == 0 || !keys.Add(beyond ? key + "+" : key))
        {
            return false;
        }

        var variable = solver.MakeNumVar(0, double.PositiveInfinity, "");
        foreach (var (row, amount) in pattern.Cover)
        {
            cover[row].SetCoefficient(variable, model.Rows[row].Scaled(beyondNeed ? amount : Math.Min(amount, model.Rows[row].MostCounted)));
        }

        supply[pattern.Board.Supply].SetCoefficient(variable, 1);
        purchases[pattern.Board.Index]?.SetCoefficient(variable, 1);
        money?.SetCoefficient(variable, pattern.Money);
        solver.Objective().SetCoefficient(variable, weights.Of(pattern));
        variables.Add(variable);
        Patterns.Add(pattern);
        return true;
    }

    /// <summary>Asks for what is left only, from the boards that are left. What a pattern makes of a part beyond that does not count.</summary>
    public void SetRemainder(Remainder rest)
    {
        for (var p = 0; p < Patterns.Count; p++)
        {
            foreach (var (row, amount) in Patterns[p].Cover.Where(each => model.Rows[each.Row] is PartRow))
            {
                cover[row].SetCoefficient(variables[p], Math.Min(amount, rest.Need[row]));
            }
        }

        for (var row = 0; row < cover.Length; row++)
        {
            cover[row].SetLb(model.Rows[row].Scaled(rest.Need[row]));
        }

        shifts.SetRemainder(rest);
        for (var index = 0; index < supply.Length; index++)
        {
            supply[index].SetUb(rest.Left[index]);
        }
    }

    /// <summary>Asks for a little more than is needed of every row, in pieces or whole sub-panels.</summary>
    public void AskForMore(double[] more)
    {
        for (var row = 0; row < cover.Length; row++)
        {
            cover[row].SetLb(model.Rows[row].Scaled(model.Rows[row].Needed) + more[row]);
        }
    }

    /// <summary>Bounds how many boards a supply gives, and how many of one bought size are used.</summary>
    public void SetRange(int index, PurchaseRange range) => supply[index].SetBounds(range.Least, range.Most);

    /// <inheritdoc cref="SetRange"/>
    public void SetBoardRange(int board, PurchaseRange range) => purchases[board]!.SetBounds(range.Least, range.Most);

    public void SetWeights(CostWeights newWeights)
    {
        weights = newWeights;
        for (var p = 0; p < variables.Count; p++)
        {
            solver.Objective().SetCoefficient(variables[p], weights.Of(Patterns[p]));
        }
    }

    /// <summary>Solves, and reads every dual at once: a read after the model has changed is an error to the solver.</summary>
    public bool Solve()
    {
        if (!IsSolved(solver.Solve()))
        {
            // From a basis that has become degenerate the solver may give up; from none it finds its way.
            solver.Reset();
            if (!IsSolved(solver.Solve()))
            {
                return false;
            }
        }

        for (var row = 0; row < cover.Length; row++)
        {
            CoverDuals[row] = Math.Max(0, cover[row].DualValue());
        }

        var supplyDuals = supply.Select(each => each.DualValue()).ToArray();
        foreach (var board in model.Boards)
        {
            BoardDuals[board.Index] = supplyDuals[board.Supply] + (purchases[board.Index]?.DualValue() ?? 0);
        }

        MoneyPrice = Math.Max(0, -(money?.DualValue() ?? 0));
        Values = [.. variables.Select(variable => variable.SolutionValue())];
        Missing = missing.Sum(variable => variable.SolutionValue());
        Objective = solver.Objective().Value();
        return true;
    }

    public void Dispose() => solver.Dispose();

    private static bool IsSolved(Solver.ResultStatus status) => status is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE;
}

/// <summary>From how many to how many boards.</summary>
internal readonly record struct PurchaseRange(long Least, long Most);
