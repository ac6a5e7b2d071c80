using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>A piece of a board on the way from the whole board to its areas: left as it is, or sawn in two along a defect's edge.</summary>
internal abstract record Region(Rect At)
{
    /// <summary>The piece sawn in two by a kerf that begins where the front piece ends.</summary>
    /// <param name="whole">The piece.</param>
    /// <param name="direction">Which way the saw goes.</param>
    /// <param name="front">How much is left before the kerf.</param>
    /// <param name="kerf">Width of the kerf: less than the saw's where it runs out at an edge.</param>
    /// <param name="next">What becomes of the two pieces.</param>
    public static SawnRegion Saw(Rect whole, FirstCut direction, Length front, Length kerf, Func<Rect, Region> next)
    {
        var crosscut = direction == FirstCut.Crosscut;
        var behind = (crosscut ? whole.Length : whole.Width) - front - kerf;
        return new SawnRegion(
            whole, direction, Part(front, kerf),
            front > Length.Zero ? next(Part(Length.Zero, front)) : null, behind > Length.Zero ? next(Part(front + kerf, behind)) : null);

        Rect Part(Length from, Length extent) => crosscut
            ? whole with { X = whole.X + from, Length = extent }
            : whole with { Y = whole.Y + from, Width = extent };
    }

    /// <summary>Four cuts that take nothing from the target; all around it is scrap.</summary>
    public static Region Isolate(Rect whole, Rect target, Length kerf, Region area)
    {
        foreach (var (direction, low, high) in new[]
        {
            (FirstCut.Crosscut, target.X - whole.X, target.Right - whole.X), (FirstCut.Rip, target.Y - whole.Y, target.Top - whole.Y),
        })
        {
            var extent = direction == FirstCut.Crosscut ? whole.Length : whole.Width;
            if (low > Length.Zero)
            {
                var blade = Length.Min(kerf, low);
                return Saw(whole, direction, low - blade, blade, Next);
            }

            if (high < extent)
            {
                return Saw(whole, direction, high, Length.Min(kerf, extent - high), Next);
            }
        }

        return area;

        Region Next(Rect piece) => piece.Overlaps(target) ? Isolate(piece, target, kerf, area) : new ScrapRegion(piece);
    }

    /// <summary>The same areas without cuts that take scrap off scrap: what lies before the first area, or behind the last, comes off in one cut.</summary>
    /// <param name="kerf">Width of a cut.</param>
    public virtual Region WithoutIdleCuts(Length kerf) => this;
}

/// <summary>An area from which blanks are cut; it holds nothing but defects of kinds that they tolerate.</summary>
/// <param name="At">Where it lies.</param>
/// <param name="Kinds">The kinds of the defects in it, in order; empty where it is clear.</param>
internal sealed record AreaRegion(Rect At, IReadOnlyList<string> Kinds) : Region(At);

/// <summary>What nothing is cut from.</summary>
internal sealed record ScrapRegion(Rect At) : Region(At);

/// <summary>A piece sawn in two. Where the blade runs out at an edge, or takes all that is left, one of the two is not there.</summary>
internal sealed record SawnRegion(Rect At, FirstCut Direction, Rect Kerf, Region? Front, Region? Behind) : Region(At)
{
    public override Region WithoutIdleCuts(Length kerf)
    {
        var row = Row(this).ToList();
        var first = row.FindIndex(IsUseful);
        var last = row.FindLastIndex(IsUseful);
        if (first < 0 || (row.Take(first).Count(IsKerf) <= 1 && row.Skip(last).Count(IsKerf) <= 1))
        {
            return this with { Front = Front?.WithoutIdleCuts(kerf), Behind = Behind?.WithoutIdleCuts(kerf) };
        }

        var useful = Rebuilt(row[first..(last + 1)]);
        return Isolate(At, useful.At, kerf, useful);
    }

    /// <summary>All pieces and kerfs that follow each other in its direction; a kerf has no piece.</summary>
    private IEnumerable<(Rect At, Region? Piece)> Row(Region? region) => region is SawnRegion sawn && sawn.Direction == Direction
        ? [.. Row(sawn.Front), (sawn.Kerf, null), .. Row(sawn.Behind)]
        : region is null ? [] : [(region.At, region)];

    private static bool IsUseful((Rect At, Region? Piece) item) => item.Piece is not (null or ScrapRegion);

    private static bool IsKerf((Rect At, Region? Piece) item) => item.Piece is null;

    private Region Rebuilt(List<(Rect At, Region? Piece)> row)
    {
        var cut = row.FindIndex(IsKerf);
        if (cut < 0)
        {
            return row[0].Piece!;
        }

        var (low, high) = (row[0].At, row[^1].At);
        var whole = low with { Length = high.Right - low.X, Width = high.Top - low.Y };
        return new SawnRegion(whole, Direction, row[cut].At, cut == 0 ? null : row[0].Piece, cut + 1 == row.Count ? null : Rebuilt(row[(cut + 1)..]));
    }
}
