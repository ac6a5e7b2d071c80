using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>What is still to be covered and which boards are still there, while a plan is put together.</summary>
internal sealed class Remainder
{
    private readonly PlanningModel model;
    private readonly long[] made;

    public Remainder(PlanningModel model)
        : this(model, new long[model.Rows.Count], [.. model.Rows.Select(row => row.Needed)], [.. model.Supplies.Select(supply => supply.Capacity)])
    {
    }

    private Remainder(PlanningModel model, long[] made, long[] need, long[] left)
    {
        this.model = model;
        this.made = made;
        Need = need;
        Left = left;
    }

    /// <summary>What some cuts leave to be covered.</summary>
    public static Remainder After(PlanningModel model, IEnumerable<(Pattern Pattern, int Count)> cuts)
    {
        var rest = new Remainder(model);
        foreach (var (pattern, count) in cuts)
        {
            rest.Take(pattern, count);
        }

        return rest;
    }

    /// <summary>What is still needed, by row.</summary>
    public long[] Need { get; }

    /// <summary>How many boards are left, by supply.</summary>
    public long[] Left { get; }

    public bool IsCovered => Array.TrueForAll(Need, amount => amount <= 0);

    public Remainder Copy() => new(model, (long[])made.Clone(), (long[])Need.Clone(), (long[])Left.Clone());

    public bool Has(BoardType board) => Left[board.Supply] > 0;

    /// <summary>How much wider than planned a sub-panel may still become, in ticks, if others of its panel become narrower.</summary>
    public long Room(StripRow row) => Math.Max(0, row.Room(made) - Need[row.Index]);

    /// <summary>Whether the pattern can be cut and makes anything that is needed.</summary>
    public bool Serves(Pattern pattern) => Has(pattern.Board) && Array.Exists(pattern.Cover, cover => Need[cover.Row] > 0);

    /// <summary>Whether the pattern can be cut and makes no piece too many; the last strips of a sub-panel may be too wide.</summary>
    public bool IsProper(Pattern pattern) => Has(pattern.Board) && Array.TrueForAll(
        pattern.Cover, cover => Need[cover.Row] > 0 && (cover.Amount <= Need[cover.Row] || model.Rows[cover.Row] is StripRow));

    /// <summary>Cuts the pattern so many times.</summary>
    public void Take(Pattern pattern, int count)
    {
        Left[pattern.Board.Supply] -= count;
        foreach (var (row, amount) in pattern.Cover)
        {
            made[row] += amount * count;
            Need[row] = Math.Max(0, model.Rows[row].Needed - made[row]);
        }

        foreach (var split in model.Splits)
        {
            split.ShareOut(made, Need);
        }
    }
}
