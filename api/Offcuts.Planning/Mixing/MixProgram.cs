using Google.OrTools.LinearSolver;
using Offcuts.Planning.Bounds;
using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Mixing;

/// <summary>
/// The program over patterns whose demand is free: max sum v_d n_d, such that for every part or panel g of design d
/// sum a_gp x_p >= n_d (a in copies of the design, all copies of a panel as one), for every supply sum x_p &lt;= capacity, 0 &lt;= n_d &lt;= most_d.
/// </summary>
internal sealed class MixProgram
{
    private const int MostRounds = 150;
    private const int MostPerRound = 150;
    private readonly MixBuilds builds;
    private readonly PlanningModel model;
    private readonly PatternPricer pricer;
    private readonly IReadOnlyList<int> most;
    private readonly List<Pattern> patterns = [];
    private readonly HashSet<string> keys = new(StringComparer.Ordinal);

    // The group of each row, and of each group its design and what a copy of the design takes of it.
    private readonly int[] groupOf;
    private readonly List<(int Build, double PerCopy)> groups = [];

    /// <param name="builds">The designs.</param>
    /// <param name="model">The most copies of all of them.</param>
    /// <param name="most">Most copies of each.</param>
    public MixProgram(MixBuilds builds, PlanningModel model, IReadOnlyList<int> most)
    {
        (this.builds, this.model, this.most) = (builds, model, most);
        pricer = new PatternPricer(model);
        groupOf = new int[model.Rows.Count];
        foreach (var rows in model.Rows.GroupBy(row => row.Name))
        {
            var build = builds.OfName(rows.Key);
            foreach (var row in rows)
            {
                groupOf[row.Index] = groups.Count;
            }

            groups.Add((build, rows.Sum(row => (double)row.Needed) / builds.Most[build]));
        }
    }

    /// <summary>Solves the linear program; whatever the solver's rounding did, and even if time ran out, no mix exceeds the cut.</summary>
    public MixCut Relax(SearchClock clock)
    {
        long[] need = [.. model.Rows.Select(row => row.Needed)];
        if (need.Length == 0)
        {
            return new MixCut([.. builds.Ranks.Select(_ => 0.0)], 0);
        }

        GreedyStart.Run(model, pricer, clock, [], pattern => Keep(pattern));
        using var solver = Solver.CreateSolver("GLOP");
        var program = new Program(this, solver, isWhole: false);
        foreach (var pattern in patterns)
        {
            program.Add(pattern);
        }

        var prices = PriceList.FromDuals(model.Rows, new double[need.Length], need, 0);
        for (var round = 0; round < MostRounds && solver.Solve() == Solver.ResultStatus.OPTIMAL; round++)
        {
            var (rows, boards) = program.Duals();
            prices = PriceList.FromDuals(model.Rows, rows, need, 0);
            List<Pattern> better = [.. pricer.Improving(prices, boards, new CostWeights(0, 0), MostPerRound, _ => true, clock.Cancellation).Where(Keep)];
            if (better.Count == 0 || clock.IsOver)
            {
                break;
            }

            better.ForEach(program.Add);
        }

        return CutAt(prices.Even(model));
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

    /// <summary>
    /// For any prices v >= 0 what a plan makes is worth at least sum_d n_d (v of a copy), and no more than every board's best pattern.
    /// </summary>
    private MixCut CutAt(PriceList prices)
    {
        double[] perCopy = [.. Enumerable.Range(0, builds.Count).Select(build => builds.Most[build] == 0 ? 0
            : prices.OfDemand(model.Rows.Where(row => groups[groupOf[row.Index]].Build == build).Select(row => row.Index)) / builds.Most[build])];
        return new MixCut(perCopy, prices.OfDemand() - SafeBound.Of(model, pricer, prices));
    }

    /// <summary>The program as a solver has it.</summary>
    private sealed class Program
    {
        private readonly MixProgram mix;
        private readonly Solver solver;
        private readonly bool isWhole;
        private readonly Variable[] counts;
        private readonly Constraint[] cover;
        private readonly Constraint[] supply;

        public Program(MixProgram mix, Solver solver, bool isWhole)
        {
            (this.mix, this.solver, this.isWhole) = (mix, solver, isWhole);
            counts = [.. mix.most.Select((most, build) => solver.MakeVar(isWhole ? mix.builds.Least[build] : 0, most, isWhole, ""))];
            cover = [.. mix.groups.Select(_ => solver.MakeConstraint(0, double.PositiveInfinity, ""))];
            supply = [.. mix.model.Supplies.Select(each => solver.MakeConstraint(double.NegativeInfinity, each.Capacity, ""))];
            foreach (var (at, group) in mix.groups.Index())
            {
                cover[at].SetCoefficient(counts[group.Build], -1);
            }

            foreach (var (build, rank) in mix.builds.Ranks.Index())
            {
                // A piece counts so little that it only decides between mixes of the same wood.
                solver.Objective().SetCoefficient(counts[build], rank.MinorUnits + (isWhole ? 1e-4 * rank.Pieces : 0));
            }

            solver.Objective().SetMaximization();
        }

        public void Add(Pattern pattern)
        {
            var capacity = mix.model.Supplies[pattern.Board.Supply].Capacity;
            var variable = solver.MakeVar(0, isWhole ? capacity : double.PositiveInfinity, isWhole, "");
            foreach (var made in pattern.Cover.GroupBy(each => mix.groupOf[each.Row]))
            {
                cover[made.Key].SetCoefficient(variable, made.Sum(each => Math.Min(each.Amount, mix.model.Rows[each.Row].MostCounted)) / mix.groups[made.Key].PerCopy);
            }

            supply[pattern.Board.Supply].SetCoefficient(variable, 1);
        }

        public int[] Counts() => [.. counts.Select(count => (int)Math.Round(count.SolutionValue()))];

        /// <summary>The duals of rows and boards as of a program that minimises costs.</summary>
        public (double[] Rows, double[] Boards) Duals()
        {
            var (groups, supplies) = (cover.Select(each => Math.Max(0, -each.DualValue())).ToArray(), supply.Select(each => -each.DualValue()).ToArray());
            return (
                [.. mix.model.Rows.Select(row => groups[mix.groupOf[row.Index]] / mix.groups[mix.groupOf[row.Index]].PerCopy * (row is StripRow ? row.Needed : 1))],
                [.. mix.model.Boards.Select(board => supplies[board.Supply])]);
        }
    }
}
