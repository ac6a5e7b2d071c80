using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Restart;

namespace Offcuts.Planning.Search;

/// <summary>
/// What an earlier plan gives a component to begin with: the patterns of its boards that can still be cut, less the pieces that are no longer
/// wanted or no longer fit, and of these as many boards as serve.
/// </summary>
internal sealed class WarmStart
{
    public WarmStart(PlanningModel model)
    {
        var reading = new CutReading(model);
        var read = (model.Problem.Earlier?.Plan.Boards ?? []).Select(reading.Read).OfType<EarlierCut>().ToList();
        Patterns = [.. read.GroupBy(cut => cut.Pattern.Key, StringComparer.Ordinal).Select(alike => Joined(model, [.. alike]))];
        Pieces = read.Sum(cut => cut.Pieces);
        Cuts = Begin(model, read);
    }

    /// <summary>The patterns.</summary>
    public IReadOnlyList<Pattern> Patterns { get; }

    /// <summary>How many pieces they make.</summary>
    public int Pieces { get; }

    /// <summary>Patterns to begin a plan with, and how often each is cut.</summary>
    public IReadOnlyList<(Pattern Pattern, int Count)> Cuts { get; }

    private static Pattern Joined(PlanningModel model, List<EarlierCut> alike) => alike.Find(cut => cut.IsWhole) is { } whole
        ? PatternFactory.Kept(model, whole.Pattern, [.. alike.Select(cut => cut.Place)])
        : alike[0].Pattern;

    /// <summary>Board after board, the shop's own first, as long as one makes anything that is still needed.</summary>
    private List<(Pattern Pattern, int Count)> Begin(PlanningModel model, List<EarlierCut> read)
    {
        var byKey = Patterns.ToDictionary(pattern => pattern.Key, StringComparer.Ordinal);
        var rest = new Remainder(model);
        var cuts = new List<(Pattern Pattern, int Count)>();
        foreach (var pattern in read.Select(cut => byKey[cut.Pattern.Key]).OrderBy(pattern => pattern.Money).Where(pattern => rest.Serves(pattern)))
        {
            rest.Take(pattern, 1);
            cuts.Add((pattern, 1));
        }

        return [.. cuts.GroupBy(cut => cut.Pattern).Select(alike => (alike.Key, alike.Count()))];
    }
}
