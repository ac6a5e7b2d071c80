using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>
/// Cuts one board: turns a pattern into pieces with exact places and saw cuts in order. Of what is <c>lost</c>, defects and trimmed ends and edges, nothing
/// is kept.
/// </summary>
internal sealed class BoardCutter(Shop shop, IReadOnlyList<Rect> lost, bool ripFirst)
{
    private readonly List<Piece> pieces = [];
    private readonly List<SawCut> cuts = [];

    public IReadOnlyList<Piece> Pieces => pieces;

    public IReadOnlyList<SawCut> Cuts => cuts;

    /// <summary>Cuts a board of the given face down to its clear rectangle, and that by the pattern's sections.</summary>
    public void Cut(Rect face, Rect clear, IReadOnlyList<Section> sections, PieceNames names)
    {
        var offcuts = new List<Rect>();
        var fronts = SplitOff(Isolate(face, clear, offcuts), alongX: !ripFirst, sections.Select(section => section.First), offcuts);
        foreach (var (front, section) in fronts.Zip(sections))
        {
            var bands = SplitOff(front, alongX: ripFirst, section.Bands.Select(band => band.Second), offcuts);
            foreach (var (rect, band) in bands.Zip(section.Bands))
            {
                CutBand(rect, section, band, names, offcuts);
            }
        }

        foreach (var offcut in offcuts)
        {
            PutAway(offcut);
        }
    }

    private void CutBand(Rect rect, Section section, Band band, PieceNames names, List<Rect> offcuts)
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
            pieces.Add(names.Part(trimmed, blank));
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
        if (kerf > Length.Zero)
        {
            cuts.Add(new SawCut(
                cuts.Count + 1, alongX ? FirstCut.Crosscut : FirstCut.Rip,
                alongX ? rect with { X = rect.X + extent, Length = kerf } : rect with { Y = rect.Y + extent, Width = kerf }));
        }

        var front = alongX ? rect with { Length = extent } : rect with { Width = extent };
        if (rest == Length.Zero)
        {
            return (front, null);
        }

        return (front, alongX
            ? rect with { X = rect.X + extent + kerf, Length = rest }
            : rect with { Y = rect.Y + extent + kerf, Width = rest });
    }

    /// <summary>Cuts a rectangle out of a larger one by guillotine cuts that take nothing from it.</summary>
    private Rect Isolate(Rect whole, Rect target, List<Rect> offcuts)
    {
        var rest = CutLow(whole, alongX: true, target.X, offcuts);
        rest = SplitOff(rest, true, [target.Length.Ticks], offcuts)[0];
        rest = CutLow(rest, alongX: false, target.Y, offcuts);
        return SplitOff(rest, false, [target.Width.Ticks], offcuts)[0];
    }

    private Rect CutLow(Rect rect, bool alongX, Length at, List<Rect> offcuts)
    {
        var low = at - (alongX ? rect.X : rect.Y);
        if (low == Length.Zero)
        {
            return rect;
        }

        var extent = Length.Larger(Length.Zero, low - shop.Kerf);
        if (extent > Length.Zero)
        {
            var (front, rest) = Split(rect, alongX, extent);
            offcuts.Add(front);
            return rest!.Value;
        }

        cuts.Add(new SawCut(
            cuts.Count + 1, alongX ? FirstCut.Crosscut : FirstCut.Rip, alongX ? rect with { Length = low } : rect with { Width = low }));
        return alongX ? rect with { X = at, Length = rect.Length - low } : rect with { Y = at, Width = rect.Width - low };
    }

    /// <summary>A clear offcut is kept if it is large enough; from one over what is lost the largest clear rectangle is, and so on with the rest.</summary>
    private void PutAway(Rect rect)
    {
        var clear = ClearRectangle.Largest(rect, lost, IsKept);
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
            var offcuts = new List<Rect>();
            pieces.Add(new LeftoverPiece(Isolate(rect, clear.Value, offcuts)));
            foreach (var offcut in offcuts)
            {
                PutAway(offcut);
            }
        }
    }

    /// <summary>Set by the caller to the board's thickness.</summary>
    public required Length Thickness { get; init; }

    private bool IsKept(Rect rect) => Worth.IsKept(new Dimensions(Thickness, rect.Width, rect.Length), shop.Keep);
}
