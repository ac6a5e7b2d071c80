using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>Makes patterns that lost pieces anew, within what is needed.</summary>
internal static class PatternRepair
{
    private const int MostRepairs = 12;
    private const int CheapSteps = 6;
    private const int ThoroughSteps = 16;
    private const int Few = 4;

    /// <summary>Up to so many cells times blanks are worth a thorough search.</summary>
    private const long LightWork = 8_000;

    /// <summary>New patterns, with their reduced costs, for the first of the boards; the most promising come first.</summary>
    public static IEnumerable<(double Reduced, Pattern Pattern)> Cheap(PlanningModel model, IReadOnlyList<LossyBoard> lossy, PriceList prices)
    {
        foreach (var (view, board, cost, _) in lossy.Take(MostRepairs))
        {
            var pattern = view.Proper.Of(board, prices, cost, CheapSteps, recombine: false);
            if (pattern is not null)
            {
                yield return (cost - view.Proper.Value(pattern, prices), pattern);
            }

            if (pattern is null || lossy.Count <= Few || view.Proper.Value(pattern, prices) <= cost + PatternPricer.Tolerance)
            {
                pattern = PatternFactory.Create(model, board, view.Oriented.RipFirst, new ProperSections(model, view.Oriented).Of(board, prices));
                yield return (cost - view.Proper.Value(pattern, prices), pattern);
            }
        }
    }

    /// <summary>The last resort where no pattern improves as far as one can see: a longer search for a few boards of small sizes.</summary>
    public static IEnumerable<(double Reduced, Pattern Pattern)> Thorough(IReadOnlyList<LossyBoard> lossy, PriceList prices)
    {
        foreach (var (view, board, cost, _) in lossy.Where(entry => entry.View.Oriented.Work <= LightWork).Take(Few))
        {
            if (view.Proper.Of(board, prices, cost, ThoroughSteps, recombine: true) is { } pattern)
            {
                yield return (cost - view.Proper.Value(pattern, prices), pattern);
            }
        }
    }
}
