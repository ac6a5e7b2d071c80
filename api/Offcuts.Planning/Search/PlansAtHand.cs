using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>What the search for a component has so far: the best plan, and all patterns met on the way.</summary>
/// <param name="improved">Called when there is a better plan.</param>
internal sealed class PlansAtHand(Action improved)
{
    private readonly Dictionary<string, Pattern> patterns = new(StringComparer.Ordinal);

    /// <summary>The best plan; null before the first.</summary>
    public Solution? Best { get; private set; }

    /// <summary>How many different patterns there are.</summary>
    public int Count => patterns.Count;

    /// <summary>The patterns, as they are now.</summary>
    public List<Pattern> Patterns() => [.. patterns.Values];

    /// <summary>The pattern that stays of all that make the same.</summary>
    public Pattern Known(Pattern pattern)
    {
        Keep(pattern);
        return patterns[pattern.Key];
    }

    /// <summary>Takes a pattern in; of those that make the same the one of least worth stays.</summary>
    public void Keep(Pattern pattern)
    {
        if (pattern.Cover.Length > 0 && (!patterns.TryGetValue(pattern.Key, out var known) || pattern.Worth < known.Worth))
        {
            patterns[pattern.Key] = pattern;
        }
    }

    /// <inheritdoc cref="Keep(Pattern)"/>
    public void Keep(IEnumerable<Pattern> found)
    {
        foreach (var pattern in found)
        {
            Keep(pattern);
        }
    }

    /// <summary>Takes a plan if it is better than the best.</summary>
    public void Offer(Solution? solution)
    {
        if (solution is not null && solution.Beats(Best))
        {
            Best = solution;
            improved();
        }
    }
}
