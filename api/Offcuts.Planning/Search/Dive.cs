using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// Diving with re-pricing: fix the patterns that the linear program takes whole, else the largest fraction; take what they cover
/// off the demand; price patterns that are proper for what is left; repeat until all is covered.
/// </summary>
internal sealed class Dive(PlanningModel model, PatternPricer pricer, IReadOnlyCollection<Pattern> pool, SearchClock clock, Action<Pattern> found)
{
    private const int RoundsPerStep = 6;
    private const double Whole = 1e-5;

    /// <summary>
    /// One dive, from the cuts that are kept; null if time ran out or it cannot beat the incumbent. <paramref name="discrepancies"/> says how often the
    /// second choice is taken instead of the first, as <paramref name="random"/> decides where.
    /// </summary>
    public Solution? Run(IReadOnlyList<(Pattern Pattern, int Count)> kept, Solution? incumbent, int discrepancies, Random random)
    {
        using var master = new MasterProblem(model, CostWeights.Blend);
        var need = model.Rows.Select(row => row.Needed).ToArray();
        var left = model.Supplies.Select(supply => supply.Capacity).ToArray();
        var cuts = new List<(Pattern, int)>();
        var spent = 0.0;
        foreach (var (pattern, count) in kept)
        {
            Take(pattern, count);
        }

        foreach (var pattern in pool.Where(pattern => pattern.Cover.Any(cover => need[cover.Row] > 0) && left[pattern.Board.Supply] > 0))
        {
            master.Add(pattern);
        }

        while (Array.Exists(need, amount => amount > 0))
        {
            ColumnGeneration.Run(
                model, master, pricer, CostWeights.Blend, need, clock, RoundsPerStep,
                board => left[board.Supply] > 0, found, thorough: false);
            if (clock.IsOver || (incumbent is { IsComplete: true } && spent + master.Objective >= Blended(incumbent) - 1e-6))
            {
                return null;
            }

            var chosen = Choose(master, need, left, ref discrepancies, random);
            if (chosen.Count == 0)
            {
                break;
            }

            foreach (var (pattern, count) in chosen)
            {
                Take(pattern, count);
            }
        }

        return new Solution(model, cuts);

        void Take(Pattern pattern, int count)
        {
            Fix(master, pattern, count, need, left);
            cuts.Add((pattern, count));
            spent += CostWeights.Blend.Of(pattern) * count;
        }
    }

    private static double Blended(Solution solution) =>
        (CostWeights.Blend.Money * solution.Money) + (CostWeights.Blend.Worth * solution.Worth);

    private List<(Pattern Pattern, int Count)> Choose(MasterProblem master, long[] need, long[] left, ref int discrepancies, Random random)
    {
        var rest = (Need: (long[])need.Clone(), Left: (long[])left.Clone());
        var ranked = Enumerable.Range(0, master.Patterns.Count)
            .Where(p => master.Values[p] > Whole)
            .OrderByDescending(p => master.Values[p]).ThenBy(p => p)
            .Select(p => (Pattern: master.Patterns[p], Value: master.Values[p])).ToList();
        var chosen = new List<(Pattern, int)>();
        foreach (var (pattern, value) in ranked.Where(entry => entry.Value >= 1 - Whole))
        {
            Take(pattern, (int)Math.Floor(value + Whole));
        }

        if (chosen.Count > 0)
        {
            return chosen;
        }

        if (discrepancies > 0 && ranked.Count > 1 && random.Next(3) == 0)
        {
            discrepancies--;
            ranked.RemoveAt(0);
        }

        // Several large fractions at once, as long as they do not get into each other's way: fewer, longer steps.
        var most = 1 + (ranked.Count / 12);
        foreach (var (pattern, value) in ranked)
        {
            if (chosen.Count >= most || (chosen.Count > 0 && value < 0.6))
            {
                break;
            }

            Take(pattern, 1);
        }

        if (chosen.Count == 0 && ranked.Count > 0)
        {
            var useful = ranked.Where(entry => left[entry.Pattern.Board.Supply] > 0 && entry.Pattern.Cover.Any(cover => need[cover.Row] > 0)).ToList();
            if (useful.Count > 0)
            {
                chosen.Add((useful[0].Pattern, 1));
            }
        }

        return chosen;

        void Take(Pattern pattern, int wanted)
        {
            var count = 0;
            while (count < wanted && rest.Left[pattern.Board.Supply] > 0 && IsProper(pattern, rest.Need))
            {
                count++;
                rest.Left[pattern.Board.Supply]--;
                foreach (var (row, amount) in pattern.Cover)
                {
                    rest.Need[row] -= amount;
                }
            }

            if (count > 0)
            {
                chosen.Add((pattern, count));
            }
        }

        bool IsProper(Pattern pattern, long[] open) => pattern.Cover.All(cover => open[cover.Row] > 0
            && (cover.Amount <= open[cover.Row] || model.Rows[cover.Row] is StripRow));
    }

    private static void Fix(MasterProblem master, Pattern pattern, int count, long[] need, long[] left)
    {
        left[pattern.Board.Supply] -= count;
        master.SetCapacity(pattern.Board.Supply, left[pattern.Board.Supply]);
        foreach (var (row, amount) in pattern.Cover)
        {
            need[row] = Math.Max(0, need[row] - (amount * count));
            master.SetNeed(row, need[row]);
        }
    }
}
