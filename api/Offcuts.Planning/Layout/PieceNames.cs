using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>Numbers the pieces of each part and the strips of each sub-panel as they are cut.</summary>
internal sealed class PieceNames(PlanningModel model)
{
    private readonly int[] made = new int[model.Rows.Count];
    private readonly int[] spares = new int[model.Rows.Count];

    // The copy of each part that is being glued up, and how many of its layers there are.
    private readonly (int Copy, int Layers)[] open = new (int, int)[model.Rows.Count];

    /// <summary>The row of a part; null if it is not in the model.</summary>
    public PartRow? RowOf(string part) => model.Rows.OfType<PartRow>().FirstOrDefault(row => row.Name == part);

    /// <summary>The blank for the next extra pieces of a part; where it lies is set later. Spares are numbered by themselves.</summary>
    public PartPiece Extra(BlankOption blank, in BoardClass cls, PieceUse use)
    {
        var row = (PartRow)model.Rows[blank.Row];
        var numbers = use == PieceUse.Spare ? spares : made;
        var copies = Enumerable.Range(0, blank.Pieces).Select(_ => new PartCopy(++numbers[blank.Row])).ToList();
        return new PartPiece(default, row.Name, copies, blank.Turned, blank.Recipe with { Slices = blank.Resaws + 1 })
        {
            Finished = Finished(row, cls),
            Use = use,
        };
    }

    /// <summary>The next piece of a part, finished to the least size that will do, or the next ones.</summary>
    public PartPiece Part(Rect at, BlankOption blank, in BoardClass cls)
    {
        var row = (PartRow)model.Rows[blank.Row];
        var copies = Enumerable.Range(0, blank.Pieces).Select(_ => Next(blank.Row, blank.Recipe.Layers)).ToList();

        // A blank that need not give all it could is not resawn more often than it takes.
        return new PartPiece(at, row.Name, copies, blank.Turned, blank.Recipe with { Slices = blank.Resaws + 1 }) { Finished = Finished(row, cls) };
    }

    private PartCopy Next(int row, int layers)
    {
        if (layers == 1)
        {
            return new PartCopy(++made[row]);
        }

        var (copy, number) = open[row];
        (copy, number) = number == 0 ? (++made[row], 1) : (copy, number + 1);
        open[row] = (copy, number == layers ? 0 : number);
        return new PartCopy(copy, number);
    }

    private static Dimensions? Finished(PartRow row, in BoardClass cls)
    {
        var least = new Dimensions(row.Thickness, row.Width, row.Length);
        return row.Most == least ? null
            : Milling.IsUsedAsItIs(cls, row.Thickness, row.MostThickness) ? least with { Thickness = cls.Thickness }
            : least;
    }

    public StripPiece Strip(Rect at, StripCut strip)
    {
        var row = (StripRow)model.Rows[strip.Row];
        return new StripPiece(at, row.Name, row.Copy, row.SubPanel, ++made[strip.Row], Length.FromTicks(strip.Net));
    }
}
