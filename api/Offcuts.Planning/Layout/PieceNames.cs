using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>Numbers the pieces of each part and the strips of each sub-panel as they are cut.</summary>
internal sealed class PieceNames(PlanningModel model)
{
    private readonly int[] made = new int[model.Rows.Count];
    private readonly int[] spares = new int[model.Rows.Count];

    /// <summary>Whether a blank is one of a part's.</summary>
    public bool IsOf(BlankOption blank, string part) => model.Rows[blank.Row].Name == part;

    /// <summary>The next extra piece of a part; where it lies is set later. Spares are numbered by themselves.</summary>
    public PartPiece Extra(BlankOption blank, in BoardClass cls, PieceUse use)
    {
        var row = (PartRow)model.Rows[blank.Row];
        var copy = use == PieceUse.Spare ? ++spares[blank.Row] : ++made[blank.Row];
        return new PartPiece(default, row.Name, copy, blank.Turned) { Finished = Finished(row, cls), Use = use };
    }

    /// <summary>The next piece of a part, finished to the least size that will do.</summary>
    public PartPiece Part(Rect at, BlankOption blank, in BoardClass cls)
    {
        var row = (PartRow)model.Rows[blank.Row];
        return new PartPiece(at, row.Name, ++made[blank.Row], blank.Turned) { Finished = Finished(row, cls) };
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
