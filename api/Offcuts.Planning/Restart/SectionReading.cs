using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Restart;

/// <summary>
/// Reads pieces that were cut from an area back to sections and bands. The saw cuts that go right through tell them apart; where cuts are not known,
/// the gaps between the pieces do. What does not fit, because the area or the blanks have changed, is left out.
/// </summary>
/// <param name="model">The model.</param>
/// <param name="area">The area.</param>
/// <param name="ripFirst">Which way its first cuts go.</param>
internal sealed class SectionReading(PlanningModel model, BoardType area, bool ripFirst)
{
    private readonly FirstCut first = ripFirst ? FirstCut.Rip : FirstCut.Crosscut;
    private readonly FirstCut second = ripFirst ? FirstCut.Crosscut : FirstCut.Rip;

    /// <summary>The sections, and how many of the pieces are in them.</summary>
    /// <param name="pieces">The pieces in the area.</param>
    /// <param name="cuts">The saw cuts in the area; none to go by the pieces alone.</param>
    public (AreaPattern Pattern, int Pieces) Read(List<Piece> pieces, List<SawCut> cuts)
    {
        var sections = new List<Section>();
        var count = 0;
        var left = Extent(area.Clear, first);

        // Where pieces have grown within their tolerances the cuts moved with them: the layout lets them grow anew.
        var asCut = cuts.Count > 0 && !pieces.Exists(HasGrown);
        foreach (var (at, inside) in Split(area.Clear, first, pieces, cuts))
        {
            var bands = new List<(Band Band, long First)>();
            var room = Extent(area.Clear, second);
            foreach (var (across, run) in Split(at, second, inside, cuts))
            {
                if (BandOf(across, run, asCut, asCut ? Math.Min(left, Extent(at, first)) : left) is var (band, extent) && band.Second <= room)
                {
                    bands.Add((band, extent));
                    room -= band.Second + model.Kerf;
                }
            }

            if (bands.Count > 0)
            {
                // As long as it was where cuts say how long that is; else as its longest band. A rip that holds strips is just as wide as they are.
                var longest = bands.Max(each => each.First);
                var holdsStrips = ripFirst && bands.Exists(each => each.Band.Strip is not null);
                bands.RemoveAll(each => holdsStrips && each.Band.Strip is not null && each.First < longest);
                var extent = asCut && !holdsStrips ? Math.Max(longest, Math.Min(left, Extent(at, first))) : longest;
                count += bands.Sum(each => Math.Max(1, each.Band.Run.Count));
                sections.Add(new Section(extent, [.. bands.Select(each => each.Band)]));
                left -= extent + model.Kerf;
            }
        }

        return (new AreaPattern(area, ripFirst, sections), count);
    }

    /// <summary>The band of the pieces, and how much it takes of its section; null if none of them can be cut.</summary>
    private (Band Band, long First)? BandOf(Rect at, List<Piece> pieces, bool asCut, long room)
    {
        if (pieces[0] is StripPiece strip)
        {
            return StripOf(strip) is var (cut, edge) && (ripFirst ? (cut.Net + edge, cut.Along) : (cut.Along, cut.Net + edge)) is var (along, across) && along <= room
                ? (new Band(across, [], cut), along)
                : null;
        }

        var run = new List<BlankOption>();
        var used = 0L;
        foreach (var blank in pieces.OfType<PartPiece>().Select(BlankOf).OfType<BlankOption>())
        {
            var extent = (ripFirst ? blank.Across : blank.Along) + (run.Count > 0 ? model.Kerf : 0);
            if (used + extent <= room && (run.Count == 0 || model.Recut))
            {
                run.Add(blank);
                used += extent;
            }
        }

        var widest = run.Select(blank => ripFirst ? blank.Along : blank.Across).DefaultIfEmpty(0).Max();
        return run.Count == 0 ? null : (new Band(asCut ? Math.Max(widest, Extent(at, second)) : widest, run, null), used);
    }

    private (StripCut Cut, long Edge)? StripOf(StripPiece piece)
    {
        var row = model.Rows.OfType<StripRow>().FirstOrDefault(row => row.Name == piece.Panel && row.Copy == piece.Copy && row.SubPanel == piece.SubPanel);
        var family = row is null ? null : Array.Find(area.Profile.Families, family => family.Rows.Contains(row.Index));
        return family is not null && piece.NetWidth.Ticks >= family.Narrowest && piece.NetWidth.Ticks <= family.Widest
            ? (new StripCut(row!.Index, piece.NetWidth.Ticks, family.Along), family.Edge)
            : null;
    }

    private bool HasGrown(Piece piece) => piece is PartPiece { Finished: not null } part && BlankOf(part) is { } blank
        && (part.At.Length.Ticks > blank.Along || part.At.Width.Ticks > blank.Across);

    private BlankOption? BlankOf(PartPiece piece)
    {
        var options = area.Profile.Blanks.Where(blank => model.Rows[blank.Row].Name == piece.Part && blank.Turned == piece.Turned
            && blank.Recipe with { Slices = 1 } == piece.Recipe with { Slices = 1 } && blank.Pieces >= piece.Copies.Count);
        return options.OrderBy(blank => blank.Pieces).Select(blank => (BlankOption?)(blank with { Pieces = piece.Copies.Count })).FirstOrDefault();
    }

    /// <summary>The parts of a rectangle that hold pieces, in their order, by the cuts that go right through it or by the gaps between the pieces.</summary>
    private static IEnumerable<(Rect At, List<Piece> Pieces)> Split(Rect whole, FirstCut axis, List<Piece> pieces, List<SawCut> cuts)
    {
        var ordered = pieces.OrderBy(piece => Start(piece.At, axis)).ThenBy(piece => Start(piece.At, axis == FirstCut.Rip ? FirstCut.Crosscut : FirstCut.Rip)).ToList();
        var ends = cuts.Count > 0
            ? cuts.Where(cut => cut.Direction == axis && IsThrough(cut.Kerf, whole, axis)).Select(cut => (Start(cut.Kerf, axis), Start(cut.Kerf, axis) + Extent(cut.Kerf, axis)))
            : Gaps(ordered, axis);
        var from = Start(whole, axis);
        foreach (var (end, next) in ends.Order().Append((Start(whole, axis) + Extent(whole, axis), long.MaxValue)))
        {
            var inside = ordered.FindAll(piece => Start(piece.At, axis) >= from && Start(piece.At, axis) < end);
            if (inside.Count > 0)
            {
                yield return (Part(whole, axis, from, end - from), inside);
            }

            from = next;
        }
    }

    /// <summary>Where one piece ends before all others begin, and where the next begins.</summary>
    private static IEnumerable<(long End, long Next)> Gaps(List<Piece> ordered, FirstCut axis)
    {
        var reached = 0L;
        for (var at = 0; at < ordered.Count; at++)
        {
            var start = Start(ordered[at].At, axis);
            if (at > 0 && start >= reached)
            {
                yield return (reached, start);
            }

            reached = Math.Max(reached, start + Extent(ordered[at].At, axis));
        }
    }

    private static bool IsThrough(Rect kerf, Rect whole, FirstCut axis) => axis == FirstCut.Crosscut
        ? kerf.Y == whole.Y && kerf.Width == whole.Width && kerf.X > whole.X && kerf.Right <= whole.Right
        : kerf.X == whole.X && kerf.Length == whole.Length && kerf.Y > whole.Y && kerf.Top <= whole.Top;

    private static long Start(Rect at, FirstCut axis) => (axis == FirstCut.Crosscut ? at.X : at.Y).Ticks;

    private static long Extent(Rect at, FirstCut axis) => (axis == FirstCut.Crosscut ? at.Length : at.Width).Ticks;

    private static Rect Part(Rect whole, FirstCut axis, long from, long extent) => axis == FirstCut.Crosscut
        ? whole with { X = Length.FromTicks(from), Length = Length.FromTicks(extent) }
        : whole with { Y = Length.FromTicks(from), Width = Length.FromTicks(extent) };
}
