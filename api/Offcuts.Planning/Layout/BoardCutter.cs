using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>
/// Cuts one board: turns a pattern into pieces with exact places and saw cuts in order. Of what is <c>lost</c>, defects and trimmed ends and edges, nothing
/// is kept.
/// </summary>
internal sealed class BoardCutter(Shop shop, IReadOnlyList<Rect> lost)
{
    private readonly List<Piece> pieces = [];
    private readonly List<SawCut> cuts = [];
    private readonly Dictionary<int, BlankOption> cutAs = [];

    public IReadOnlyList<Piece> Pieces => pieces;

    /// <summary>The saw cuts; none with a blade that takes nothing.</summary>
    public IReadOnlyList<SawCut> Cuts => shop.Kerf == Length.Zero ? [] : cuts;

    /// <summary>All cuts, those of a blade that takes nothing too.</summary>
    public IReadOnlyList<SawCut> Divisions => cuts;

    /// <summary>Place in <see cref="Pieces"/> of the piece that is exactly there; -1 if there is none.</summary>
    public int IndexAt(Rect at) => pieces.FindIndex(piece => piece.At == at);

    /// <summary>The blank that a piece was cut as; null if it is no part's.</summary>
    public BlankOption? BlankAt(int piece) => cutAs.TryGetValue(piece, out var blank) ? blank : null;

    /// <summary>Saws a board down to its areas first, then cuts each area by its own sections.</summary>
    public void Cut(Region board, IReadOnlyList<AreaPattern> areas, PieceNames names)
    {
        var offcuts = new List<Rect>();
        var used = areas.Where(area => area.Sections.Count > 0).ToDictionary(area => area.Area.Clear);
        Free(board, used, offcuts);
        foreach (var area in areas.Where(area => area.Sections.Count > 0))
        {
            CutArea(area, names, offcuts);
        }

        foreach (var offcut in offcuts)
        {
            PutAway(offcut);
        }
    }

    /// <summary>The cuts that free the areas. A piece that holds no area in use is put away in one.</summary>
    private void Free(Region region, Dictionary<Rect, AreaPattern> used, List<Rect> offcuts)
    {
        if (!Holds(region, used))
        {
            offcuts.Add(region.At);
        }
        else if (region is SawnRegion sawn)
        {
            if (sawn.Kerf is { Length.Ticks: > 0, Width.Ticks: > 0 } || shop.Kerf == Length.Zero)
            {
                cuts.Add(new SawCut(cuts.Count + 1, sawn.Direction, sawn.Kerf));
            }

            foreach (var part in new[] { sawn.Front, sawn.Behind }.OfType<Region>())
            {
                Free(part, used, offcuts);
            }
        }
    }

    private static bool Holds(Region? region, Dictionary<Rect, AreaPattern> used) => region is SawnRegion sawn
        ? Holds(sawn.Front, used) || Holds(sawn.Behind, used)
        : region is AreaRegion area && used.ContainsKey(area.At);

    private void CutArea(AreaPattern area, PieceNames names, List<Rect> offcuts)
    {
        var (_, ripFirst, sections) = area;
        var fronts = SplitOff(area.Area.Clear, alongX: !ripFirst, sections.Select(section => section.First), offcuts);
        foreach (var (front, section) in fronts.Zip(sections))
        {
            var bands = SplitOff(front, alongX: ripFirst, section.Bands.Select(band => band.Second), offcuts);
            foreach (var (rect, band) in bands.Zip(section.Bands))
            {
                CutBand(rect, section, band, ripFirst, names, offcuts);
            }
        }
    }

    private void CutBand(Rect rect, Section section, Band band, bool ripFirst, PieceNames names, List<Rect> offcuts)
    {
        if (band.Strip is { } strip)
        {
            var first = ripFirst ? section.First : strip.Along;
            pieces.Add(names.Strip(SplitOff(rect, !ripFirst, [first], offcuts)[0], strip));
            return;
        }

        var blanks = SplitOff(rect, !ripFirst, band.Run.Select(blank => ripFirst ? blank.Across : blank.Along), offcuts);
        foreach (var (piece, blank) in blanks.Zip(band.Run))
        {
            var trimmed = SplitOff(piece, ripFirst, [ripFirst ? blank.Along : blank.Across], offcuts)[0];
            cutAs.Add(pieces.Count, blank);
            pieces.Add(names.Part(trimmed, blank, Class));
        }
    }

    /// <summary>Cuts pieces of the given extents off a rectangle one after another; what remains joins the offcuts.</summary>
    private List<Rect> SplitOff(Rect rect, bool alongX, IEnumerable<long> extents, List<Rect> offcuts)
    {
        var fronts = new List<Rect>();
        Rect? rest = rect;
        foreach (var extent in extents)
        {
            (var front, rest) = Split(
                rest ?? throw new InvalidOperationException("A pattern does not fit its board."), alongX, Length.FromTicks(extent));
            fronts.Add(front);
        }

        if (rest is not null)
        {
            offcuts.Add(rest.Value);
        }

        return fronts;
    }

    /// <summary>One cut behind an extent. The kerf runs out at the edge where less than its width is left.</summary>
    private (Rect Front, Rect? Behind) Split(Rect rect, bool alongX, Length extent)
    {
        var whole = alongX ? rect.Length : rect.Width;
        if (extent > whole)
        {
            throw new InvalidOperationException("A pattern does not fit its board.");
        }

        if (extent == whole)
        {
            return (rect, null);
        }

        var kerf = Length.Min(shop.Kerf, whole - extent);
        var rest = whole - extent - kerf;
        cuts.Add(new SawCut(
            cuts.Count + 1, alongX ? FirstCut.Crosscut : FirstCut.Rip,
            alongX ? rect with { X = rect.X + extent, Length = kerf } : rect with { Y = rect.Y + extent, Width = kerf }));

        var front = alongX ? rect with { Length = extent } : rect with { Width = extent };
        if (rest == Length.Zero)
        {
            return (front, null);
        }

        return (front, alongX
            ? rect with { X = rect.X + extent + kerf, Length = rest }
            : rect with { Y = rect.Y + extent + kerf, Width = rest });
    }

    /// <summary>A clear offcut is kept if it is large enough; from one over what is lost the largest clear rectangle is, and so on with the rest.</summary>
    private void PutAway(Rect rect)
    {
        var clear = ClearRectangle.Largest(rect, lost, Kept.Include);
        if (clear is null)
        {
            pieces.Add(new WastePiece(rect));
        }
        else if (clear == rect)
        {
            pieces.Add(new LeftoverPiece(rect));
        }
        else
        {
            Region kept = new AreaRegion(clear.Value, []);
            PutAway(Region.Isolate(rect, clear.Value, shop.Kerf, kept), kept);
        }
    }

    /// <summary>Saws what is kept free and puts away what comes off around it.</summary>
    private void PutAway(Region region, Region kept)
    {
        if (region == kept)
        {
            pieces.Add(new LeftoverPiece(kept.At));
        }
        else if (region is SawnRegion sawn)
        {
            if (sawn.Kerf is { Length.Ticks: > 0, Width.Ticks: > 0 } || shop.Kerf == Length.Zero)
            {
                cuts.Add(new SawCut(cuts.Count + 1, sawn.Direction, sawn.Kerf));
            }

            foreach (var part in new[] { sawn.Front, sawn.Behind }.OfType<Region>())
            {
                PutAway(part, kept);
            }
        }
        else
        {
            PutAway(region.At);
        }
    }

    /// <summary>What the board is.</summary>
    public required BoardClass Class { get; init; }

    /// <summary>What is kept of the board.</summary>
    public required KeepFaces Kept { get; init; }
}
