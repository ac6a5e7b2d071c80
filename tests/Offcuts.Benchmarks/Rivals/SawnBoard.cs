using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>Wood of a board that is still free, and the stage at which the next cut through it would be.</summary>
internal readonly record struct FreeWood(Rect At, int Stage);

/// <summary>
/// One board on the way from whole to pieces: a guillotine splitting of free rectangles that keeps to the stages of the cutting rules. A blank in
/// wood of stage s is cut off in the direction of that stage and then of the next; what remains keeps the stage of the cut.
/// </summary>
internal sealed class SawnBoard
{
    private readonly Shop shop;
    private readonly List<SawCut> cuts = [];
    private readonly List<Piece> pieces = [];
    private readonly List<Rect> offcuts = [];
    private readonly List<FreeWood> free = [];

    public SawnBoard(Shop shop, Source source, FirstCut first)
    {
        this.shop = shop;
        Source = source;
        First = first;
        free.Add(new FreeWood(Isolate(new Rect(Length.Zero, Length.Zero, source.Size.Length, source.Size.Width), source.Clear, offcuts), 0));
    }

    public Source Source { get; }

    public FirstCut First { get; }

    /// <summary>The part jobs cut from it.</summary>
    public List<Job> Jobs { get; } = [];

    public IReadOnlyList<FreeWood> Free => free;

    /// <summary>The blanks so far.</summary>
    public IEnumerable<PartPiece> PartsCut => pieces.OfType<PartPiece>();

    /// <summary>Area of the blanks and strips so far, in square ticks.</summary>
    public double Used => pieces.Sum(piece => (double)piece.At.Area.SquareTicks);

    /// <summary>Cuts a piece out of free wood that holds it.</summary>
    public void Cut(FreeWood wood, Length along, Length across, Func<Rect, Piece> create)
    {
        free.Remove(wood);
        var rect = wood.At;
        for (var stage = wood.Stage; stage <= wood.Stage + 1; stage++)
        {
            var alongX = (First == FirstCut.Crosscut) == (stage % 2 == 0);
            (rect, var rest) = Split(rect, alongX, alongX ? along : across);
            if (rest is { } behind && stage <= (shop.Recut ? 2 : 1))
            {
                free.Add(new FreeWood(behind, stage));
            }
            else if (rest is { } waste)
            {
                offcuts.Add(waste);
            }
        }

        pieces.Add(create(rect));
    }

    /// <summary>The board as a plan has it, with what is left of it put away.</summary>
    public BoardCut Write(int number, int copy)
    {
        foreach (var rest in offcuts.Concat(free.Select(wood => wood.At)).ToList())
        {
            PutAway(rest);
        }

        free.Clear();
        offcuts.Clear();
        return new BoardCut
        {
            Number = number,
            BoardId = Source.Board?.Id,
            Copy = copy,
            OfferId = Source.Offer?.Offer.Id,
            Kind = Source.Kind,
            Species = Source.Species,
            Surface = Source.Surface,
            Size = Source.Size,
            Defects = Source.Board?.Defects ?? [],
            FirstCut = First,
            Pieces = pieces,
            Cuts = cuts,
        };
    }

    private void PutAway(Rect rect)
    {
        var defects = (Source.Board?.Defects ?? []).Select(defect => defect.Area).ToList();
        var kept = ClearWood.Largest(rect, defects, each => shop.KeptOf(Source.Species).Include(new Dimensions(Source.Size.Thickness, each.Width, each.Length)));
        if (kept is not { } clear)
        {
            pieces.Add(new WastePiece(rect));
            return;
        }

        var around = new List<Rect>();
        var leftover = Isolate(rect, clear, around);
        pieces.Add(new LeftoverPiece(leftover)
        {
            Ends = new Ends(
                leftover.X > Length.Zero ? EndState.Sound : Source.Board?.Ends.Left ?? default,
                leftover.Right < Source.Size.Length ? EndState.Sound : Source.Board?.Ends.Right ?? default),
        });
        around.ForEach(PutAway);
    }

    private Rect Isolate(Rect whole, Rect target, List<Rect> around)
    {
        foreach (var alongX in new[] { true, false })
        {
            whole = CutBefore(whole, alongX, alongX ? target.X : target.Y, around);
            (whole, var rest) = Split(whole, alongX, alongX ? target.Length : target.Width);
            if (rest is { } behind)
            {
                around.Add(behind);
            }
        }

        return whole;
    }

    /// <summary>Cuts off what lies before a place; where that is less than a kerf, the saw takes it.</summary>
    private Rect CutBefore(Rect rect, bool alongX, Length at, List<Rect> around)
    {
        var before = at - (alongX ? rect.X : rect.Y);
        if (before == Length.Zero)
        {
            return rect;
        }

        if (before > shop.Kerf)
        {
            var (front, rest) = Split(rect, alongX, before - shop.Kerf);
            around.Add(front);
            return rest!.Value;
        }

        AddCut(alongX, alongX ? rect with { Length = before } : rect with { Width = before });
        return alongX ? rect with { X = at, Length = rect.Length - before } : rect with { Y = at, Width = rect.Width - before };
    }

    private (Rect Front, Rect? Behind) Split(Rect rect, bool alongX, Length extent)
    {
        var left = (alongX ? rect.Length : rect.Width) - extent;
        if (left < Length.Zero)
        {
            throw new InvalidOperationException("A piece is larger than the wood that it is cut from.");
        }

        var kerf = Length.Min(shop.Kerf, left);
        var rest = left - kerf;
        if (kerf > Length.Zero)
        {
            AddCut(alongX, alongX ? rect with { X = rect.X + extent, Length = kerf } : rect with { Y = rect.Y + extent, Width = kerf });
        }

        Rect? behind = rest == Length.Zero ? null
            : alongX ? rect with { X = rect.X + extent + kerf, Length = rest }
            : rect with { Y = rect.Y + extent + kerf, Width = rest };
        return (alongX ? rect with { Length = extent } : rect with { Width = extent }, behind);
    }

    private void AddCut(bool alongX, Rect kerf) => cuts.Add(new SawCut(cuts.Count + 1, alongX ? FirstCut.Crosscut : FirstCut.Rip, kerf));
}
