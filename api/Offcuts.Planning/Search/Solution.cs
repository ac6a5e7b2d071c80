using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>Patterns and how often each is cut.</summary>
internal sealed class Solution
{
    public Solution(PlanningModel model, IEnumerable<(Pattern Pattern, int Count)> cuts)
    {
        Cuts = [.. cuts.Where(cut => cut.Count > 0)];
        Money = Cuts.Sum(cut => cut.Pattern.Money * cut.Count);
        Worth = Cuts.Sum(cut => cut.Pattern.Worth * cut.Count);
        Made = new long[model.Rows.Count];
        foreach (var (pattern, count) in Cuts)
        {
            foreach (var (row, amount) in pattern.Cover)
            {
                Made[row] += amount * count;
            }
        }

        Short = model.StillNeeded(Made);
    }

    public IReadOnlyList<(Pattern Pattern, int Count)> Cuts { get; }

    public long Money { get; }

    public double Worth { get; }

    /// <summary>How much is made, by row.</summary>
    public long[] Made { get; }

    /// <summary>What is not covered, by row.</summary>
    public long[] Short { get; }

    public bool IsComplete => Array.TrueForAll(Short, amount => amount <= 0);

    /// <summary>Whether it is better: nothing short, then less money, then less worth.</summary>
    public bool Beats(Solution? other) => other is null
        || (IsComplete && !other.IsComplete)
        || (IsComplete == other.IsComplete && (IsComplete
            ? Money < other.Money || (Money == other.Money && Worth < other.Worth - 1e-6)
            : Short.Where(amount => amount > 0).Sum(amount => (double)amount) < other.Short.Where(amount => amount > 0).Sum(amount => (double)amount)));
}
