using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Bounds;

/// <summary>The linear program of the money where purchases lie within given ranges: its bound and its duals.</summary>
internal sealed class PurchaseProgram(PlanningModel model, PatternPricer pricer, SearchClock clock)
{
    private const int MostRounds = 40;
    private const int MostColumns = 100;
    private const int Corners = 4;
    private const int RoundsPerCorner = 20;

    /// <summary>What is asked for more at most of a row to find another corner, in pieces.</summary>
    private const double MostMore = 1e-3;
    private readonly List<Pattern> overcounting = [];

    /// <summary>The duals of the rows that gave the last bound.</summary>
    public double[] Duals { get; private set; } = [];

    /// <summary>The program with patterns to start from and those that it met before.</summary>
    public MasterProblem Open(IEnumerable<Pattern> pool)
    {
        var master = new MasterProblem(model, CostWeights.MoneyOnly);
        foreach (var pattern in pool)
        {
            master.Add(pattern);
        }

        foreach (var pattern in overcounting)
        {
            master.Add(pattern, beyondNeed: true);
        }

        return master;
    }

    /// <summary>A node's bound by column generation with patterns as the knapsacks count them; stops at <paramref name="known"/>, the cost of a plan at hand.</summary>
    public double Bound(MasterProblem master, Purchases node, long known)
    {
        var best = 0.0;
        Duals = (double[])master.CoverDuals.Clone();
        var need = model.Rows.Select(row => row.Needed).ToArray();
        for (var round = 0; round < MostRounds && !clock.IsOver && master.Solve(); round++)
        {
            var prices = PriceList.FromDuals(model.Rows, master.CoverDuals, need, 0);
            if (SafeBound.Of(model, pricer, prices, node) is var bound && bound > best)
            {
                best = bound;
                Duals = (double[])master.CoverDuals.Clone();
            }

            if (best >= known || SafeBound.IsAsGoodAs(best, master.Objective))
            {
                break;
            }

            if (!Price(master))
            {
                break;
            }
        }

        return best;
    }

    /// <summary>
    /// The mean of some of the duals that are as good as the best. Those of one solution are a corner of what is possible, where many patterns lack
    /// nothing to the best and small parts cost nothing; a little more asked of every row, at random, leads to another corner.
    /// </summary>
    public double[] Central(MasterProblem master)
    {
        var random = new Random(1);
        var corners = new List<double[]> { Duals };
        for (var corner = 0; corner < Corners; corner++)
        {
            master.AskForMore([.. model.Rows.Select(row => row.Needed > 0 ? MostMore * random.NextDouble() : 0)]);
            for (var round = 0; round < RoundsPerCorner && !clock.IsOver && master.Solve(); round++)
            {
                if (!Price(master))
                {
                    corners.Add((double[])master.CoverDuals.Clone());
                    break;
                }
            }
        }

        master.AskForMore(new double[model.Rows.Count]);
        return [.. model.Rows.Select(row => corners.Average(corner => corner[row.Index]))];
    }

    /// <summary>Adds patterns that improve the linear program; whether there were any.</summary>
    private bool Price(MasterProblem master)
    {
        var prices = PriceList.FromDuals(model.Rows, master.CoverDuals, [.. model.Rows.Select(row => row.Needed)], 0);
        var any = false;
        foreach (var pattern in pricer.Improving(
            prices, master.BoardDuals, CostWeights.MoneyOnly, MostColumns, _ => true, clock.Cancellation, proper: false))
        {
            if (master.Add(pattern, beyondNeed: true))
            {
                any = true;
                overcounting.Add(pattern);
            }
        }

        return any;
    }
}
