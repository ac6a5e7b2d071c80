using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>All that decides what may be cut from a board, apart from its length and width.</summary>
internal readonly record struct BoardClass(BoardKind Kind, string Species, Length Thickness, Surface Surface, Appearance Appearance)
{
    public static BoardClass Of(Board board) =>
        new(board.Kind, board.Species, board.Size.Thickness, board.Surface, board.Appearance);

    public static BoardClass Of(Offer offer) =>
        new(offer.Kind, offer.Species, offer.Thickness, offer.Surface, offer.Appearance);
}

/// <summary>What milling asks of a board of one class: rules 1 to 3 of the cutting rules.</summary>
internal sealed class Milling(Shop shop)
{
    /// <summary>Whether a thickness can be had from the class, and how wide a blank may be for it (null for any width).</summary>
    public bool SuitsThickness(in BoardClass cls, Length finished, out Length? widest)
    {
        widest = null;
        if (cls.Kind == BoardKind.Sheet || (cls.Surface == Surface.Surfaced && cls.Thickness == finished))
        {
            return cls.Thickness == finished;
        }

        widest = WidestMilled(cls.Surface);
        return cls.Thickness >= finished + Allowances(cls).Thickness;
    }

    /// <summary>The widest blank that the machines take: rough stock must be flattened on the jointer first.</summary>
    public Length WidestMilled(Surface surface) =>
        surface == Surface.Rough ? Length.Min(shop.JointerWidth, shop.PlanerWidth) : shop.PlanerWidth;

    /// <summary>Milling allowances for the class.</summary>
    public Allowances Allowances(in BoardClass cls) => cls.Kind == BoardKind.Sheet ? shop.Sheet
        : cls.Surface == Surface.Rough ? shop.Rough : shop.Surfaced;

    /// <summary>Needed width of each sub-panel of a panel, and how many there are.</summary>
    public (int Count, Length Width) SubPanels(Panel panel)
    {
        var glued = (panel.Finished.Width + shop.PanelOversize).Ticks;
        for (var count = 1; ; count++)
        {
            var width = (glued + ((count - 1) * shop.SeamAllowance.Ticks) + count - 1) / count;
            if (width <= shop.PlanerWidth.Ticks)
            {
                return (count, Length.FromTicks(width));
            }

            // Each further sub-panel costs a seam: once the seams alone fill the planer, more do not help.
            if (shop.SeamAllowance >= shop.PlanerWidth || count >= 100)
            {
                return (0, Length.Zero);
            }
        }
    }
}
