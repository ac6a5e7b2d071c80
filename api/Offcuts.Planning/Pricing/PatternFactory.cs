using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>Makes patterns from sections and works out what they cover and what they are worth.</summary>
internal static class PatternFactory
{
    /// <summary>A pattern of a board that is cut as one rectangle, or of an area by itself.</summary>
    public static Pattern Create(PlanningModel model, BoardType board, bool ripFirst, IReadOnlyList<Section> sections) =>
        Create(model, board, null, [new AreaPattern(board, ripFirst, sections)]);

    /// <summary>A pattern of a board with what is cut from each of its areas.</summary>
    public static Pattern Create(PlanningModel model, BoardType board, Division? division, IReadOnlyList<AreaPattern> areas)
    {
        var cover = new SortedDictionary<int, long>();
        foreach (var band in areas.SelectMany(area => area.Sections).SelectMany(section => section.Bands))
        {
            foreach (var blank in band.Run)
            {
                cover[blank.Row] = cover.GetValueOrDefault(blank.Row) + blank.Yield;
            }

            if (band.Strip is { } strip)
            {
                cover[strip.Row] = cover.GetValueOrDefault(strip.Row) + strip.Net;
            }
        }

        return new Pattern
        {
            Board = board,
            Division = division,
            Areas = areas,
            Cover = [.. cover.Select(pair => (pair.Key, pair.Value))],
            Worth = board.WorthConsumed + model.HandlingOf(board) + Freeing(model, division)
                + areas.Sum(area => Handling(model, area.Sections) - Returned(model, area)),
        };
    }

    /// <summary>The pattern as that of boards which an earlier plan cuts like this: it counts a little less, so that it is kept if nothing else is better.</summary>
    public static Pattern Kept(PlanningModel model, Pattern pattern, IReadOnlyList<EarlierPlace> places) => new()
    {
        Board = pattern.Board,
        Division = pattern.Division,
        Areas = pattern.Areas,
        Cover = pattern.Cover,
        Worth = pattern.Worth - (places.Count > 0 ? model.KeepingPerBoard : 0),
        Earlier = places,
    };

    /// <summary>What it costs in worth to free the areas, less what is kept of the wood between them.</summary>
    public static double Freeing(PlanningModel model, Division? division) =>
        division is null ? 0 : (model.HandlingPerCut * division.Cuts) - division.Spare;

    private static double Handling(PlanningModel model, IReadOnlyList<Section> sections) =>
        model.HandlingPerCut * sections.Sum(section => 1 + section.Bands.Sum(band => Math.Max(1, band.Run.Sum(blank => 1 + blank.Resaws))));

    /// <summary>Worth of the ends and edgings; the small change beside trimmed blanks is left out.</summary>
    private static double Returned(PlanningModel model, AreaPattern area)
    {
        var (board, ripFirst, sections) = area;
        var (first, second) = ripFirst ? (board.Across, board.Along) : (board.Along, board.Across);
        var rest = first - sections.Sum(section => section.First + model.Kerf);
        var worth = Piece(rest, second);
        foreach (var section in sections)
        {
            worth += Piece(section.First, second - section.Bands.Sum(band => band.Second + model.Kerf));
            foreach (var band in section.Bands)
            {
                var run = band.Strip is { } strip
                    ? (ripFirst ? section.First : strip.Along)
                    : band.Run.Sum(blank => (ripFirst ? blank.Across : blank.Along) + model.Kerf) - model.Kerf;
                worth += Piece(section.First - run - model.Kerf, band.Second);
            }
        }

        return worth;

        double Piece(long firstExtent, long secondExtent)
        {
            var (along, across) = ripFirst ? (secondExtent, firstExtent) : (firstExtent, secondExtent);
            return along <= 0 || across <= 0 ? 0 : board.Profile.WorthOf(along, across);
        }
    }
}
