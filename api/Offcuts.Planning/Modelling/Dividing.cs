using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>How much of a board's possible divisions is looked at.</summary>
/// <param name="MostBoxes">Most defects told apart; more are joined.</param>
/// <param name="MostInside">Most ways kept for a piece on the way.</param>
/// <param name="MostOfBoard">Most ways kept for the board.</param>
internal readonly record struct DividingEffort(int MostBoxes, int MostInside, int MostOfBoard)
{
    /// <summary>With few such boards all that matter are kept; with many, the few that promise most, so that pricing keeps its pace.</summary>
    public static DividingEffort For(int boards) => boards <= 10 ? new(4, 10, 16) : boards <= 40 ? new(4, 4, 4) : new(3, 2, 2);
}

/// <summary>
/// The ways to saw a board with defects down to areas that are clear, or hold only what some parts tolerate: a piece that holds defects is sawn
/// along an edge of one of them, and so is what this leaves. Of two ways one is dropped if each area of it lies in an area of its own of the other.
/// </summary>
/// <param name="kerf">Width of a cut.</param>
/// <param name="boxes">The defects.</param>
/// <param name="effort">How many ways to look at.</param>
/// <param name="worthOf">What an area is worth that holds such kinds: 0 if nothing can be cut from it and it is not worth keeping.</param>
internal sealed class Dividing(Length kerf, IReadOnlyList<DefectBox> boxes, DividingEffort effort, Func<AreaRegion, double> worthOf)
{
    private readonly Dictionary<Rect, List<Way>> known = [];

    /// <summary>The ways for the whole board, the most promising first; never none, but what they hold may be scrap.</summary>
    /// <param name="face">The whole face.</param>
    /// <param name="usable">What the trims of ends and edges leave of it.</param>
    /// <param name="target">The largest clear rectangle: freeing just that is among the ways, unless another has more.</param>
    public List<Way> Run(Rect face, Rect usable, Rect? target)
    {
        var ways = Ways(usable).ConvertAll(way => way with { Tree = Region.Isolate(face, usable, kerf, way.Tree).WithoutIdleCuts(kerf) });
        if (target is not { } clear || worthOf(new AreaRegion(clear, [])) is not (> 0 and var worth))
        {
            return [.. ways.Take(effort.MostOfBoard)];
        }

        var area = new AreaRegion(clear, []);
        var simple = new Way(Region.Isolate(face, clear, kerf, area), [area], worth);
        return ways.Exists(way => simple.IsWithin(way) && ways.IndexOf(way) < effort.MostOfBoard)
            ? [.. ways.Take(effort.MostOfBoard)]
            : Undominated([simple, .. ways.Take(effort.MostOfBoard - 1)], effort.MostOfBoard);
    }

    private List<Way> Ways(Rect piece)
    {
        if (known.TryGetValue(piece, out var found))
        {
            return found;
        }

        var inside = boxes.Where(box => box.At.Overlaps(piece)).ToList();
        var whole = new AreaRegion(piece, [.. inside.SelectMany(box => box.Kinds).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]);
        var ways = new List<Way> { worthOf(whole) is > 0 and var worth ? new Way(whole, [whole], worth) : new Way(new ScrapRegion(piece), [], 0) };
        foreach (var cut in inside.SelectMany(box => Cuts(piece, box.At)).Distinct())
        {
            ways.AddRange(Sawn(piece, cut.Direction, cut.Front, cut.Kerf));
        }

        return known[piece] = Undominated(ways, effort.MostInside);
    }

    /// <summary>Cuts along the edges of a defect that lie within the piece. The kerf runs in the defect as far as it can.</summary>
    private IEnumerable<(FirstCut Direction, Length Front, Length Kerf)> Cuts(Rect piece, Rect defect)
    {
        foreach (var (direction, low, high, extent) in new[]
        {
            (FirstCut.Crosscut, defect.X - piece.X, defect.Right - piece.X, piece.Length), (FirstCut.Rip, defect.Y - piece.Y, defect.Top - piece.Y, piece.Width),
        })
        {
            if (low > Length.Zero)
            {
                yield return (direction, low, Length.Min(kerf, extent - low));
            }

            if (high < extent)
            {
                var blade = Length.Min(kerf, high);
                yield return (direction, high - blade, blade);
            }
        }
    }

    private IEnumerable<Way> Sawn(Rect piece, FirstCut direction, Length front, Length blade)
    {
        var sawn = Region.Saw(piece, direction, front, blade, at => new ScrapRegion(at));
        List<Way> nothing = [new Way(new ScrapRegion(piece), [], 0)];
        foreach (var before in sawn.Front is { } first ? Ways(first.At) : nothing)
        {
            foreach (var behind in sawn.Behind is { } second ? Ways(second.At) : nothing)
            {
                if (before.Areas.Count + behind.Areas.Count > 0)
                {
                    yield return new Way(
                        sawn with { Front = sawn.Front is null ? null : before.Tree, Behind = sawn.Behind is null ? null : behind.Tree },
                        [.. before.Areas, .. behind.Areas], before.Worth + behind.Worth);
                }
            }
        }
    }

    private static List<Way> Undominated(List<Way> ways, int most)
    {
        var kept = new List<Way>();
        foreach (var way in ways.OrderByDescending(way => way.Worth).ThenBy(way => way.Areas.Count))
        {
            if (kept.Count < most && !kept.Exists(way.IsWithin))
            {
                kept.RemoveAll(other => other.IsWithin(way));
                kept.Add(way);
            }
        }

        return kept;
    }
}

/// <summary>One way to saw a piece down to areas.</summary>
/// <param name="Tree">The cuts.</param>
/// <param name="Areas">The areas that they free.</param>
/// <param name="Worth">What the areas are worth by their sizes, to choose between ways.</param>
internal sealed record Way(Region Tree, IReadOnlyList<AreaRegion> Areas, double Worth)
{
    /// <summary>Whether each area lies in one of the other's, no two in the same, so that all that it gives the other gives too.</summary>
    public bool IsWithin(Way other)
    {
        if (Areas.Count > other.Areas.Count)
        {
            return false;
        }

        var taken = new HashSet<AreaRegion>(ReferenceEqualityComparer.Instance);
        return Areas.All(area => other.Areas.FirstOrDefault(place => !taken.Contains(place) && Contains(place, area)) is { } home && taken.Add(home));
    }

    private static bool Contains(AreaRegion outer, AreaRegion inner) =>
        inner.At.X >= outer.At.X && inner.At.Right <= outer.At.Right && inner.At.Y >= outer.At.Y && inner.At.Top <= outer.At.Top
        && outer.Kinds.All(kind => inner.Kinds.Contains(kind));
}
