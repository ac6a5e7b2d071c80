using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>
/// A rectangle of a board in the course of sawing: a piece, a saw cut, or a row of such rectangles that follow each other along the board
/// (divided by crosscuts) or across it (by rips). Only extents are kept, so that what lies behind a cut that moves moves with it.
/// </summary>
internal sealed class CutNode(long along, long across)
{
    /// <summary>More than any board has.</summary>
    private const long Unlimited = long.MaxValue / 4;

    public long Along { get; private set; } = along;

    public long Across { get; private set; } = across;

    /// <summary>The piece that it is; where it lies is only known once it is laid out again.</summary>
    public Piece? Piece { get; init; }

    /// <summary>The blank that a part's piece was cut as.</summary>
    public BlankOption? Blank { get; init; }

    /// <summary>Place of the piece in the board's list.</summary>
    public int Index { get; init; }

    /// <summary>Order of the saw cut that it is; 0 if it is none.</summary>
    public int Cut { get; init; }

    /// <summary>Which way the cuts between its items go; null for a single piece or cut.</summary>
    public FirstCut? Direction { get; private set; }

    /// <summary>What it is divided into, in order, saw cuts included.</summary>
    public List<CutNode> Items { get; private set; } = [];

    public bool IsWaste => Piece is WastePiece;

    /// <summary>Extent along the board for crosscuts, across it for rips.</summary>
    public long Extent(FirstCut axis) => axis == FirstCut.Crosscut ? Along : Across;

    public void Resize(FirstCut axis, long more)
    {
        Along += axis == FirstCut.Crosscut ? more : 0;
        Across += axis == FirstCut.Rip ? more : 0;
    }

    public void Divide(FirstCut direction, IEnumerable<CutNode> items)
    {
        Direction = direction;
        Items = [.. items];
    }

    public CutNode Clone()
    {
        var copy = new CutNode(Along, Across) { Piece = Piece, Blank = Blank, Index = Index, Cut = Cut, Direction = Direction };
        copy.Items = [.. Items.Select(item => item.Clone())];
        return copy;
    }

    /// <summary>This and all that it is divided into.</summary>
    public IEnumerable<CutNode> All() => Items.SelectMany(item => item.All()).Prepend(this);

    /// <summary>By how much it can be made larger in a direction, all that it holds with it.</summary>
    public long Room(FirstCut axis, KeepFaces kept) => (Direction, Piece) switch
    {
        (null, PartPiece) => RoomOfPart(axis),
        (null, StripPiece) => 0,
        (null, WastePiece) => kept.RoomOfWaste(axis, Along, Across),
        (null, _) => Unlimited,
        var (direction, _) when direction == axis => Items.Where(item => item.Cut == 0).Max(item => item.Room(axis, kept)),
        _ => Items.Min(item => item.Room(axis, kept)),
    };

    /// <summary>How much of that is of use to a part in it.</summary>
    public long Useful(FirstCut axis, KeepFaces kept) => Math.Min(Room(axis, kept), Direction is null
        ? Piece is PartPiece ? RoomOfPart(axis) : 0
        : Items.Max(item => item.Useful(axis, kept)));

    /// <summary>Makes it larger by no more than there is room.</summary>
    public void Grow(FirstCut axis, long more, KeepFaces kept)
    {
        Resize(axis, more);
        if (Direction is null)
        {
            return;
        }

        if (Direction != axis)
        {
            Items.ForEach(item => item.Grow(axis, more, kept));
            return;
        }

        var taker = Items.Find(item => item.Cut == 0 && item.Useful(axis, kept) >= more)
            ?? Items.First(item => item.Cut == 0 && item.Room(axis, kept) >= more);
        taker.Grow(axis, more, kept);
    }

    private long RoomOfPart(FirstCut axis)
    {
        var blank = Blank!.Value;
        return axis == FirstCut.Crosscut ? blank.Along + blank.MoreAlong - Along : blank.Across + blank.MoreAcross - Across;
    }
}
