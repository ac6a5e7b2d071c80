using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>All that decides what may be cut from a board, apart from its length and width.</summary>
internal readonly record struct BoardClass(
    BoardKind Kind, string Species, Length Thickness, Surface Surface, Appearance Appearance, Flattening Flattening = default, string? Batch = null)
{
    public static BoardClass Of(Board board) => new(
        board.Kind, board.Species, board.Size.Thickness, board.Surface, board.Appearance, Flattening.Of(board),
        board.Batch is { } batch ? $"batch {batch}" : null);

    public static BoardClass Of(Offer offer) =>
        new(offer.Kind, offer.Species, offer.Thickness, offer.Surface, offer.Appearance, Batch: $"offer {offer.Id}");
}

/// <summary>What milling asks of a board of one class: rules 1 to 3 of the cutting rules.</summary>
internal sealed class Milling(Shop shop)
{
    /// <summary>
    /// Whether a thickness from the least to the most can be had from the class when it is flat, and how wide a blank may be for it (null for any width).
    /// </summary>
    public bool SuitsThickness(in BoardClass cls, Length least, Length most, out Length? widest)
    {
        widest = null;
        if (cls.Kind == BoardKind.Sheet || IsUsedAsItIs(cls, least, most))
        {
            return IsUsedAsItIs(cls, least, most);
        }

        widest = WidestMilled(cls.Surface);
        return cls.Thickness >= least + Allowances(cls).Thickness;
    }

    /// <summary>Whether the board's faces stay as they are: a sheet, or surfaced wood, whose thickness will do.</summary>
    public static bool IsUsedAsItIs(in BoardClass cls, Length least, Length most) =>
        (cls.Kind == BoardKind.Sheet || cls.Surface == Surface.Surfaced) && cls.Thickness >= least && cls.Thickness <= most;

    /// <summary>The widest blank that the machines take: rough stock must be flattened on the jointer first.</summary>
    public Length WidestMilled(Surface surface) =>
        surface == Surface.Surfaced ? shop.PlanerWidth : Length.Min(shop.JointerWidth, shop.PlanerWidth);

    /// <summary>
    /// Whether a blank of the given extents on a board of the class gives the thickness, and the machines take its own width. A smaller blank does
    /// whenever a larger one does, because it keeps less warp.
    /// </summary>
    public bool Serves(in BoardClass cls, Length least, Length most, Length along, Length across, Length ownWidth)
    {
        if (!SuitsThickness(cls, least, most, out var widest))
        {
            return false;
        }

        var warp = cls.Flattening.Faces(along, across);
        if (widest is null)
        {
            return warp <= shop.FlatEnough;
        }

        // The planer alone presses a warped piece flat and lets it spring back: it must pass the jointer first.
        var limit = warp > shop.FlatEnough ? Length.Min(shop.JointerWidth, widest.Value) : widest.Value;
        return cls.Thickness >= least + Allowances(cls).Thickness + warp && ownWidth <= limit;
    }

    /// <summary>The widest sawn strip, between two widths, of which a board of the class gives the thickness; null if even the narrowest does not.</summary>
    public Length? WidestStrip(in BoardClass cls, Length finished, Length along, Length narrowest, Length widest)
    {
        if (widest < narrowest || !Serves(cls, finished, finished, along, narrowest, narrowest))
        {
            return null;
        }

        var (low, high) = (narrowest.Ticks, widest.Ticks);
        while (low < high)
        {
            var middle = low + ((high - low + 1) / 2);
            var width = Length.FromTicks(middle);
            (low, high) = Serves(cls, finished, finished, along, width, width) ? (middle, high) : (low, middle - 1);
        }

        return Length.FromTicks(low);
    }

    /// <summary>What a blank of the given extents on a board of the class is counted on to lose to its warp; null if nothing.</summary>
    public static Loss? LossOf(in BoardClass cls, Length least, Length most, Length along, Length across)
    {
        var isMilled = !IsUsedAsItIs(cls, least, most);
        var loss = new Loss(isMilled ? cls.Flattening.Faces(along, across) : Length.Zero, cls.Flattening.Crook(along));
        return loss is { Thickness.Ticks: 0, Width.Ticks: 0 } ? null : loss;
    }

    /// <summary>
    /// The shortest blank that is safe at the machines that it must pass: none for what is not milled. It lies along the grain, in which it is fed.
    /// Surfaced wood passes the jointer only if it is recorded as warped.
    /// </summary>
    public Length SafeLength(in BoardClass cls, Length least, Length most) =>
        cls.Kind == BoardKind.Sheet || IsUsedAsItIs(cls, least, most) ? Length.Zero
        : cls.Surface != Surface.Surfaced || !cls.Flattening.Warp.IsFlat ? Length.Larger(shop.ShortestAtJointer, shop.ShortestAtPlaner)
        : shop.ShortestAtPlaner;

    /// <summary>Length of a panel's strips: where short blanks are refused, the panel is cut to length after it is glued up.</summary>
    public Length StripLength(in BoardClass cls, Length thickness, Length length)
    {
        var blank = length + Allowances(cls).Length;
        return shop.ShortBlanks == ShortBlanks.Refuse ? Length.Larger(blank, SafeLength(cls, thickness, thickness)) : blank;
    }

    /// <summary>
    /// How many slices of a finished thickness t a blank of given extents gives: m = floor((T + k) / (t + c + k)) with the board's thickness T, less
    /// what flattening the blank takes, the clean-up c of a slice and the saw's kerf k, for m slices and m - 1 cuts take m (t + c) + (m - 1) k. 1 if it cannot be resawn.
    /// </summary>
    public int Slices(in BoardClass cls, Length finished, Length along, Length across)
    {
        if (cls.Kind == BoardKind.Sheet || shop.ResawHeight is not { } height || across > height)
        {
            return 1;
        }

        var kerf = shop.ResawKerf.Ticks;
        return (int)Math.Max(1, ((cls.Thickness - cls.Flattening.Faces(along, across)).Ticks + kerf) / (finished.Ticks + shop.ResawCleanup.Ticks + kerf));
    }

    /// <summary>Milling allowances for the class.</summary>
    public Allowances Allowances(in BoardClass cls) => cls.Kind == BoardKind.Sheet ? shop.Sheet
        : cls.Surface switch
        {
            Surface.Rough => shop.Rough,
            Surface.SkipPlaned => shop.SkipPlaned,
            Surface.Surfaced => shop.Surfaced,
        };

    /// <summary>How many sub-panels of a panel the planer demands, and the width that they need together, with what the seams between them take.</summary>
    public (int Count, Length Width) SubPanels(Panel panel)
    {
        var glued = panel.Finished.Width + shop.PanelOversize;
        for (var count = 1; ; count++)
        {
            var width = glued + (shop.SeamAllowance * (count - 1));
            if (width <= shop.PlanerWidth * count)
            {
                return (count, width);
            }

            // Each further sub-panel costs a seam: once the seams alone fill the planer, more do not help.
            if (shop.SeamAllowance >= shop.PlanerWidth || count >= 100)
            {
                return (0, Length.Zero);
            }
        }
    }
}
