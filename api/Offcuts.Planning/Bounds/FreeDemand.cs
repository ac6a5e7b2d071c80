using Google.OrTools.LinearSolver;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Bounds;

/// <summary>Something of which a program decides how many: what one is worth, and from how many to how many there may be.</summary>
/// <param name="Value">What one is worth.</param>
/// <param name="Least">Fewest, in whole numbers.</param>
/// <param name="Most">Most.</param>
/// <param name="Asked">How many the model asks for.</param>
internal readonly record struct FreeCount(double Value, int Least, double Most, double Asked);

/// <summary>
/// The program over patterns whose demand is free: max sum v_d n_d, such that for every part or panel g of thing d
/// sum a_gp x_p >= n_d (a in copies of d, all copies of a panel as one), for every supply sum x_p &lt;= capacity, 0 &lt;= n_d &lt;= most_d.
/// </summary>
internal sealed class FreeDemand
{
    private const int MostRounds = 150;
    private const int MostPerRound = 150;
    private readonly PlanningModel model;
    private readonly PatternPricer pricer;
    private readonly IReadOnlyList<FreeCount> things;
    private readonly List<Pattern> patterns = [];
    private readonly HashSet<string> keys = new(StringComparer.Ordinal);

    // The group of each row, and of each group its thing and how much one takes of it.
    private readonly int[] groupOf;
    private readonly List<(int Thing, double Each)> groups = [];

    /// <param name="model">The model, with as much demand as the things may have.</param>
    /// <param name="pricer">Finds the patterns.</param>
    /// <param name="things">What is counted.</param>
    /// <param name="thingOf">Which of them a part or panel is of, by name.</param>
    public FreeDemand(PlanningModel model, PatternPricer pricer, IReadOnlyList<FreeCount> things, Func<string, int> thingOf)
    {
        (this.model, this.pricer, this.things) = (model, pricer, things);
        groupOf = new int[model.Rows.Count];
        foreach (var rows in model.Rows.GroupBy(row => row.Name))
        {
            var thing = thingOf(rows.Key);
            foreach (var row in rows)
            {
                groupOf[row.Index] = groups.Count;
            }

            groups.Add((thing, rows.Sum(row => (double)row.Needed) / things[thing].Asked));
        }
    }

    /// <summary>Which thing a row is of.</summary>
    public int ThingOf(DemandRow row) => groups[groupOf[row.Index]].Thing;

    /// <summary>Solves the linear program; gives the duals of the rows, as <see cref="MasterProblem.CoverDuals"/>, of the last round that there was time for.</summary>
    /// <param name="clock">When to stop.</param>
    /// <param name="known">Patterns to start from.</param>
    public double[] Relax(SearchClock clock, IEnumerable<Pattern> known)
    {
        long[] need = [.. model.Rows.Select(row => row.Needed)];
        var rows = new double[need.Length];
        foreach (var pattern in known)
        {
            Keep(pattern);
        }

        using var solver = Solver.CreateSolver("GLOP");
        var program = new Program(this, solver, isWhole: false);
        patterns.ForEach(program.Add);
        for (var round = 0; round < MostRounds && solver.Solve() == Solver.ResultStatus.OPTIMAL; round++)
        {
            (rows, var boards) = program.Duals();
            var prices = PriceList.FromDuals(model.Rows, rows, need, 0);
            List<Pattern> better = [.. pricer.Improving(prices, boards, new CostWeights(0, 0), MostPerRound, _ => true, clock.Cancellation).Where(Keep)];
            if (better.Count == 0 || clock.IsOver)
            {
                break;
            }

            better.ForEach(program.Add);
        }

        return rows;
    }

    /// <summary>The best whole numbers over the patterns met; null if none were found. Where panels are shared out over sub-panels a plan may still fall short of them.</summary>
    public int[]? Whole(TimeSpan limit)
    {
        using var solver = Solver.CreateSolver("SCIP");
        var program = new Program(this, solver, isWhole: true);
        patterns.ForEach(program.Add);
        solver.SetTimeLimit((long)Math.Max(1, limit.TotalMilliseconds));
        return solver.Solve() is Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE ? program.Counts() : null;
    }

    private bool Keep(Pattern pattern)
    {
        var isNew = pattern.Cover.Length > 0 && keys.Add(pattern.Key);
        if (isNew)
        {
            patterns.Add(pattern);
        }

        return isNew;
    }

    /// <summary>The program as a solver has it.</summary>
    private sealed class Program
    {
        private readonly FreeDemand demand;
        private readonly Solver solver;
        private readonly bool isWhole;
        private readonly Variable[] counts;
        private readonly Constraint[] cover;
        private readonly Constraint[] supply;

        public Program(FreeDemand demand, Solver solver, bool isWhole)
        {
            (this.demand, this.solver, this.isWhole) = (demand, solver, isWhole);
            counts = [.. demand.things.Select(thing => solver.MakeVar(isWhole ? thing.Least : 0, thing.Most, isWhole, ""))];
            cover = [.. demand.groups.Select(_ => solver.MakeConstraint(0, double.PositiveInfinity, ""))];
            supply = [.. demand.model.Supplies.Select(each => solver.MakeConstraint(double.NegativeInfinity, each.Capacity, ""))];
            foreach (var (at, group) in demand.groups.Index())
            {
                cover[at].SetCoefficient(counts[group.Thing], -1);
            }

            foreach (var (at, thing) in demand.things.Index())
            {
                solver.Objective().SetCoefficient(counts[at], thing.Value);
            }

            solver.Objective().SetMaximization();
        }

        public void Add(Pattern pattern)
        {
            var capacity = demand.model.Supplies[pattern.Board.Supply].Capacity;
            var variable = solver.MakeVar(0, isWhole ? capacity : double.PositiveInfinity, isWhole, "");
            foreach (var made in pattern.Cover.GroupBy(each => demand.groupOf[each.Row]))
            {
                cover[made.Key].SetCoefficient(variable, made.Sum(each => Math.Min(each.Amount, demand.model.Rows[each.Row].MostCounted)) / demand.groups[made.Key].Each);
            }

            supply[pattern.Board.Supply].SetCoefficient(variable, 1);
        }

        public int[] Counts() => [.. counts.Select(count => (int)Math.Round(count.SolutionValue()))];

        /// <summary>The duals of rows and boards as of a program that minimises costs.</summary>
        public (double[] Rows, double[] Boards) Duals()
        {
            var (groups, supplies) = (cover.Select(each => Math.Max(0, -each.DualValue())).ToArray(), supply.Select(each => -each.DualValue()).ToArray());
            return (
                [.. demand.model.Rows.Select(row => groups[demand.groupOf[row.Index]] / demand.groups[demand.groupOf[row.Index]].Each * (row is StripRow ? row.Needed : 1))],
                [.. demand.model.Boards.Select(board => supplies[board.Supply])]);
        }
    }
}
