using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>What a plan makes beyond need of every row (pieces or ticks of net width), while that is taken out of it.</summary>
/// <param name="model">The model.</param>
/// <param name="made">What is made of every row.</param>
internal sealed class Excess(PlanningModel model, long[] made)
{
    private readonly Dictionary<int, SplitPanel> splits =
        model.Splits.SelectMany(split => split.Rows.Select(row => (row.Index, split))).ToDictionary(entry => entry.Index, entry => entry.split);

    /// <summary>How much of a row could be left out, all else staying as it is; less than nothing where it is short.</summary>
    public long this[int row] => splits.TryGetValue(row, out var split) ? split.Spare(row, made) : made[row] - model.Rows[row].Needed;

    /// <summary>Rows of the same panel share what is beyond need: the first of them stands for all.</summary>
    public int Shared(int row) => splits.TryGetValue(row, out var split) ? split.Rows[0].Index : row;

    /// <summary>Leaves out so much of a row.</summary>
    public void Take(int row, long amount) => made[row] -= amount;

    /// <summary>Leaves out all that a pattern makes, if none of it is needed.</summary>
    public bool TryTake(Pattern pattern)
    {
        foreach (var (row, amount) in pattern.Cover)
        {
            Take(row, amount);
        }

        if (pattern.Cover.All(cover => this[cover.Row] >= 0))
        {
            return true;
        }

        foreach (var (row, amount) in pattern.Cover)
        {
            Take(row, -amount);
        }

        return false;
    }
}
