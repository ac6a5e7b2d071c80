using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>What comes off a board's ends and a sheet's edges before anything is cut from it.</summary>
internal sealed class Trims(Shop shop)
{
    /// <summary>The face of a board in stock without its trims; null if nothing is left.</summary>
    public Rect? Usable(Board board) => Usable(board.Kind, board.Surface, board.Size, board.Ends);

    /// <summary>The face of a board to buy without its trims; null if nothing is left. Nobody knows its ends.</summary>
    public Rect? Usable(OfferSize size) => Usable(size.Offer.Kind, size.Offer.Surface, size.Size, default);

    /// <summary>The largest clear rectangle that may be cut.</summary>
    public Rect? Clear(Board board) =>
        Usable(board) is { } usable ? ClearRectangle.Largest(usable, board.Defects.Select(defect => defect.Area)) : null;

    /// <summary>What lies between the face of a board and what is usable of it: the two ends, then the two edges.</summary>
    public static IEnumerable<Rect> Outside(Dimensions size, Rect usable)
    {
        Rect[] all =
        [
            new(Length.Zero, Length.Zero, usable.X, size.Width),
            new(usable.Right, Length.Zero, size.Length - usable.Right, size.Width),
            new(Length.Zero, Length.Zero, size.Length, usable.Y),
            new(Length.Zero, usable.Top, size.Length, size.Width - usable.Top),
        ];
        return all.Where(rect => rect.Length > Length.Zero && rect.Width > Length.Zero);
    }

    private Rect? Usable(BoardKind kind, Surface surface, Dimensions size, Ends ends)
    {
        var (left, right) = (End(kind, surface, ends.Left), End(kind, surface, ends.Right));
        // A sheet with two sound ends was cut out of a trimmed one.
        var edge = kind == BoardKind.Sheet && ends != Ends.BothSound ? shop.FactoryEdgeTrim : Length.Zero;
        var usable = new Rect(left, edge, size.Length - left - right, size.Width - (edge * 2));
        return usable.Length > Length.Zero && usable.Width > Length.Zero ? usable : null;
    }

    private Length End(BoardKind kind, Surface surface, EndState state) => (kind, state) switch
    {
        (_, EndState.Sound) => Length.Zero,
        (BoardKind.Sheet, _) => shop.FactoryEdgeTrim,
        (_, EndState.Checked) => shop.EndTrimChecked,
        _ => surface == Surface.Surfaced ? Length.Zero : shop.EndTrimUnknown,
    };
}
