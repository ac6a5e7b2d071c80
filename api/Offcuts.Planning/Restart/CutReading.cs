using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Restart;

/// <summary>A board of an earlier plan as a pattern of the model at hand.</summary>
/// <param name="Place">The board.</param>
/// <param name="Pattern">What is cut from it.</param>
/// <param name="Pieces">How many of its pieces the pattern makes.</param>
/// <param name="IsWhole">Whether these are all that the design asked of it.</param>
internal sealed record EarlierCut(EarlierPlace Place, Pattern Pattern, int Pieces, bool IsWhole);

/// <summary>
/// Reads the boards of an earlier plan back to patterns. What the model does not know (a board that is gone, a part that is not wanted, a blank that
/// does not fit any more) is left out. Extra pieces are left out too: the layout cuts them anew.
/// </summary>
internal sealed class CutReading(PlanningModel model)
{
    /// <summary>The board as a pattern; null if nothing of it can be cut.</summary>
    public EarlierCut? Read(BoardCut board)
    {
        var type = model.Boards.FirstOrDefault(type => IsOf(type, board));
        var asked = board.Pieces.Where(piece => piece is StripPiece or PartPiece { Use: PieceUse.Asked }).ToList();
        if (type is null || asked.Count == 0)
        {
            return null;
        }

        var best = Divisions(type).Select(division => Read(type, division, board, asked)).MaxBy(read => (read.Pieces, read.Cuts));
        return best.Pieces == 0 ? null
            : new EarlierCut(new EarlierPlace(board.BoardId, board.Copy), best.Pattern, best.Pieces, best.Pieces == asked.Count);
    }

    private static bool IsOf(BoardType type, BoardCut board) => board.BoardId is { } id
        ? type.Boards.Any(each => each.Id == id && each.Quantity >= board.Copy)
        : type.Offer is { } offer && offer.Offer.Id == board.OfferId && offer.Size == board.Size;

    private static IEnumerable<Division?> Divisions(BoardType type) => type.Divisions.Count == 0 ? (IReadOnlyList<Division?>)[null] : type.Divisions;

    /// <summary>The pattern by one division, how many pieces it makes, and by how many its cuts that are the board's too outnumber the others.</summary>
    private (Pattern Pattern, int Pieces, int Cuts) Read(BoardType type, Division? division, BoardCut board, List<Piece> asked)
    {
        var areas = (division?.Areas ?? [type]).Select(area => Read(area, board, asked, isDivided: division is not null)).ToList();
        var shared = Kerfs(division?.Tree).Sum(kerf => board.Cuts.Any(cut => cut.Kerf == kerf) ? 1 : -1);
        return (PatternFactory.Create(model, type, division, [.. areas.Select(area => area.Pattern)]), areas.Sum(area => area.Pieces), shared);
    }

    /// <summary>The area by the first of its readings that gives most pieces: by the saw cuts, else by where the pieces lie.</summary>
    private (AreaPattern Pattern, int Pieces) Read(BoardType area, BoardCut board, List<Piece> asked, bool isDivided)
    {
        var inside = asked.FindAll(piece => Contains(area.Clear, piece.At));
        var cuts = board.Cuts.Where(cut => Contains(area.Clear, cut.Kerf)).OrderBy(cut => cut.Order).ToList();
        var ripFirst = (isDivided && cuts.Count > 0 ? cuts[0].Direction : board.FirstCut) == FirstCut.Rip;
        var sections = new SectionReading(model, area, ripFirst);
        return new[] { sections.Read(inside, cuts), sections.Read(inside, []) }.MaxBy(read => read.Pieces);
    }

    private static IEnumerable<Rect> Kerfs(Region? region) =>
        region is SawnRegion sawn ? [sawn.Kerf, .. Kerfs(sawn.Front), .. Kerfs(sawn.Behind)] : [];

    private static bool Contains(Rect outer, Rect inner) =>
        inner.X >= outer.X && inner.Right <= outer.Right && inner.Y >= outer.Y && inner.Top <= outer.Top;
}
