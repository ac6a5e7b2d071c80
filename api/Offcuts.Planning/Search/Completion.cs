using Offcuts.Planning.Bounds;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// Completes a dive: its first cuts stay, and for what they leave all patterns that a plan of the least total could use are listed, so that an integer
/// program decides whether there is one. What a whole problem has too many patterns for, its last boards have not. Where there is none, the dive went
/// astray before, and fewer of its cuts stay.
/// </summary>
internal sealed class Completion(PlanningModel model, SearchClock clock)
{
    private const double Larger = 1.2;
    private const int LeastBoards = 10;

    /// <summary>With more steps than this a rest has too many patterns; the next dive may leave one that has not.</summary>
    private const int MostEffort = 2_000_000;
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(1);

    /// <summary>A plan for the target that begins with cuts of a dive; null if none was found.</summary>
    /// <param name="cuts">The cuts of the dive, in its order.</param>
    /// <param name="known">How many boards a plan for more money takes: one for less is likely to take fewer.</param>
    /// <param name="target">The money that the whole plan may cost.</param>
    /// <param name="pool">Patterns to start from.</param>
    public Solution? Run(IReadOnlyList<(Pattern Pattern, int Count)> cuts, int known, long target, IReadOnlyCollection<Pattern> pool)
    {
        for (var boards = LeastBoards; boards < known && !clock.IsOver; boards = (int)Math.Ceiling(boards * Larger))
        {
            var kept = First(cuts, known - 1 - boards);
            var (isDecided, found) = Complete(kept, target - kept.Sum(cut => cut.Pattern.Money * cut.Count), pool);
            if (found is not null)
            {
                return new Solution(model, kept.Concat(found.Cuts));
            }

            if (!isDecided)
            {
                return null;
            }
        }

        return null;
    }

    private (bool IsDecided, Solution? Found) Complete(List<(Pattern Pattern, int Count)> kept, long left, IReadOnlyCollection<Pattern> pool)
    {
        var rest = Remainder.After(model, kept);
        if (rest.IsCovered || Residual(rest) is not { } residual)
        {
            return default;
        }

        var pricer = new PatternPricer(residual);
        var program = new PurchaseProgram(residual, pricer, clock);
        var seeking = new LeastTotal(residual, program, new PatternListing(residual, pricer, clock, _ => { }, MostEffort), clock);
        var (bound, found) = seeking.Seek(pool.Where(rest.IsProper), 0, left, Limit);
        return (bound > left, found);
    }

    private static List<(Pattern Pattern, int Count)> First(IReadOnlyList<(Pattern Pattern, int Count)> cuts, int count)
    {
        var first = new List<(Pattern, int)>();
        foreach (var (pattern, times) in cuts)
        {
            var taken = Math.Min(times, count);
            if (taken <= 0)
            {
                break;
            }

            first.Add((pattern, taken));
            count -= taken;
        }

        return first;
    }

    /// <summary>The model of what is left; null where that cannot be told in whole pieces.</summary>
    private PlanningModel? Residual(Remainder rest)
    {
        if (model.Rows.Any(row => row is not PartRow part || rest.Need[row.Index] % part.Units != 0))
        {
            return null;
        }

        return model.With(
            [.. model.Rows.Cast<PartRow>().Select(row => row with { Quantity = (int)(Math.Max(0, rest.Need[row.Index]) / row.Units) })],
            [.. model.Supplies.Select(supply => supply with { Capacity = rest.Left[supply.Index] })]);
    }
}
