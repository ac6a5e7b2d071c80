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
    private readonly List<Pattern> met = [];
    private readonly ProperValues proper = new(model, pricer, () => clock.IsOver);

    /// <summary>The prices that gave the last bound.</summary>
    public ProgramDuals Duals { get; private set; } = new([], []);

    /// <summary>The program with patterns to start from and those that it met before.</summary>
    public MasterProblem Open(IEnumerable<Pattern> pool)
    {
        var master = new MasterProblem(model, CostWeights.MoneyOnly);
        foreach (var pattern in pool.Concat(met))
        {
            master.Add(pattern);
        }

        foreach (var pattern in overcounting)
        {
            master.Add(pattern, beyondNeed: true);
        }

        return master;
    }

    /// <summary>
    /// A node's bound by column generation with proper patterns and, of boards that have too many of them to be sure of the best, with patterns as the knapsacks
    /// count them. Stops at <paramref name="known"/>, the cost of a plan at hand.
    /// </summary>
    public double Bound(MasterProblem master, Purchases node, long known)
    {
        var (best, need) = (0.0, model.Rows.Select(row => row.Needed).ToArray());
        Duals = ProgramDuals.Of(master);
        for (var round = 0; round < MostRounds && !clock.IsOver; round++)
        {
            ColumnGeneration.Run(model, master, pricer, CostWeights.MoneyOnly, need, clock, MostRounds, _ => true, met.Add);
            var duals = ProgramDuals.Of(master);
            var prices = PriceList.FromDuals(model.Rows, duals.Rows, need, 0).Even(model);
            if (SafeBound.Of(model, prices, proper.Of(prices, duals.Costs(model)), node) is var bound && bound > best)
            {
                (best, Duals) = (bound, duals);
            }

            if (best >= known || SafeBound.IsAsGoodAs(best, master.Objective) || !Improve(master, prices))
            {
                break;
            }
        }

        return best;
    }

    /// <summary>Adds the patterns that the last look at what boards are worth met, and of the boards that it could not tell of what the knapsacks make; whether there were any.</summary>
    private bool Improve(MasterProblem master, PriceList prices)
    {
        var any = false;
        foreach (var pattern in proper.Better.Where(pattern => master.Add(pattern)))
        {
            any = true;
            met.Add(pattern);
        }

        return (proper.Untold.Count > 0 && Price(master, prices, proper.Untold.Contains)) || any;
    }

    /// <summary>
    /// The mean of some of the duals that are as good as the best. Those of one solution are a corner of what is possible, where many patterns lack
    /// nothing to the best and small parts cost nothing; a little more asked of every row, at random, leads to another corner.
    /// </summary>
    public ProgramDuals Central(MasterProblem master)
    {
        var (random, need) = (new Random(1), model.Rows.Select(row => row.Needed).ToArray());
        var corners = new List<ProgramDuals> { Duals };
        for (var corner = 0; corner < Corners; corner++)
        {
            master.AskForMore([.. model.Rows.Select(row => row.Needed > 0 ? MostMore * random.NextDouble() : 0)]);
            for (var round = 0; round < RoundsPerCorner && !clock.IsOver; round++)
            {
                ColumnGeneration.Run(model, master, pricer, CostWeights.MoneyOnly, need, clock, RoundsPerCorner, _ => true, met.Add);
                if (proper.Untold.Count == 0 || !Price(master, PriceList.FromDuals(model.Rows, master.CoverDuals, need, 0), proper.Untold.Contains))
                {
                    corners.Add(ProgramDuals.Of(master));
                    break;
                }
            }
        }

        master.AskForMore(new double[model.Rows.Count]);
        return ProgramDuals.Mean(corners);
    }

    /// <summary>Adds patterns of some boards, as the knapsacks count them, that improve the linear program; whether there were any.</summary>
    private bool Price(MasterProblem master, PriceList prices, Func<BoardType, bool> allowed)
    {
        var any = false;
        foreach (var pattern in pricer.Improving(
            prices, master.BoardDuals, CostWeights.MoneyOnly, MostColumns, allowed, clock.Cancellation, proper: false))
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
