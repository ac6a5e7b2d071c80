using Offcuts.Domain;

namespace Offcuts.Pictures.Drawing;

/// <summary>Where a board lies on the drawing: one scale for both directions, its upper edge at y = 0.</summary>
internal sealed record BoardView
{
    /// <summary>Width of the whole drawing: 7 1/2 in at 96 units an inch, what both A4 and Letter have between usual margins.</summary>
    public const decimal PageWidth = 720;

    /// <summary>Where the board's left end is: beside it stand the width and the numbers of cuts.</summary>
    public const decimal Left = 96;

    private const decimal RightMargin = 36;

    // A page must hold the tables too.
    private const decimal MostHeight = 400;

    // A third of full size: a short offcut needs no larger picture.
    private const decimal MostUnitsPerTick = 32m / Domain.Length.TicksPerInch;

    private readonly BoardCut board;
    private readonly decimal unitsPerTick;

    public BoardView(BoardCut board)
    {
        this.board = board;
        unitsPerTick = Math.Min(MostUnitsPerTick, Math.Min(
            (PageWidth - Left - RightMargin) / board.Size.Length.Ticks, MostHeight / board.Size.Width.Ticks));
    }

    public decimal Right => Left + (board.Size.Length.Ticks * unitsPerTick);

    public decimal Bottom => board.Size.Width.Ticks * unitsPerTick;

    public Box Of(Rect place) => new(
        Left + (place.X.Ticks * unitsPerTick),
        (board.Size.Width - place.Top).Ticks * unitsPerTick,
        place.Length.Ticks * unitsPerTick,
        place.Width.Ticks * unitsPerTick);
}
