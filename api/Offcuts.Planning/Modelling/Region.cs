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
}

/// <summary>An area from which blanks are cut; it holds nothing but defects of kinds that they tolerate.</summary>
/// <param name="At">Where it lies.</param>
/// <param name="Kinds">The kinds of the defects in it, in order; empty where it is clear.</param>
internal sealed record AreaRegion(Rect At, IReadOnlyList<string> Kinds) : Region(At);

/// <summary>What nothing is cut from.</summary>
internal sealed record ScrapRegion(Rect At) : Region(At);

/// <summary>A piece sawn in two. Where the blade runs out at an edge, or takes all that is left, one of the two is not there.</summary>
internal sealed record SawnRegion(Rect At, FirstCut Direction, Rect Kerf, Region? Front, Region? Behind) : Region(At);
