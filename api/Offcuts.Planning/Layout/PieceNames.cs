using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>Numbers the pieces of each part and the strips of each sub-panel as they are cut.</summary>
internal sealed class PieceNames(PlanningModel model)
{
    private readonly int[] made = new int[model.Rows.Count];

    public PartPiece Part(Rect at, BlankOption blank) =>
        new(at, model.Rows[blank.Row].Name, ++made[blank.Row], blank.Turned);

    public StripPiece Strip(Rect at, StripCut strip)
    {
        var row = (StripRow)model.Rows[strip.Row];
        return new StripPiece(at, row.Name, row.Copy, row.SubPanel, ++made[strip.Row], Length.FromTicks(strip.Net));
    }
}
