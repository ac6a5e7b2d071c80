using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Restart;

/// <summary>
/// Patterns of one model of a problem as patterns of another, where both have the board and what is cut from it; what only the first model knows
/// is left out. Models of different choices of species have most of their patterns in common. Boards that are divided are left to pricing.
/// </summary>
/// <param name="model">The model that takes them.</param>
internal sealed class PatternTransfer(PlanningModel model)
{
    private readonly Dictionary<object, DemandRow> rows = model.Rows.ToDictionary(KeyOf);
    private readonly Dictionary<object, BoardType> boards = model.Boards.Where(board => board.Divisions.Count == 0)
        .SelectMany(board => KeysOf(board).Select(key => (key, board))).ToDictionary(entry => entry.key, entry => entry.board);

    private readonly Dictionary<Profile, Dictionary<BlankOption, BlankOption>> blanks = model.Profiles.ToDictionary(
        profile => profile, profile => profile.Blanks.GroupBy(blank => blank with { Pieces = 0 }).ToDictionary(alike => alike.Key, alike => alike.MaxBy(blank => blank.Pieces)));

    /// <summary>The pattern in this model; null if nothing of it can be cut there.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="source">The model that it is of.</param>
    public Pattern? Of(Pattern pattern, PlanningModel source)
    {
        if (pattern.Division is not null || pattern.Areas is not [var area] || !boards.TryGetValue(KeysOf(pattern.Board).First(), out var board))
        {
            return null;
        }

        var sections = area.Sections.Select(section => Of(section, area.RipFirst, source, board.Profile)).OfType<Section>().ToList();
        return sections.Count == 0 ? null : PatternFactory.Create(model, board, area.RipFirst, sections);
    }

    private Section? Of(Section section, bool ripFirst, PlanningModel source, Profile profile)
    {
        var bands = section.Bands.Select(band => Of(band, source, profile)).OfType<Band>().ToList();
        return bands.Count == 0 ? null : new Section(bands.Max(band => Extent(band, ripFirst, profile)), bands);
    }

    private Band? Of(Band band, PlanningModel source, Profile profile)
    {
        if (band.Strip is { } strip)
        {
            return rows.TryGetValue(KeyOf(source.Rows[strip.Row]), out var row) && FamilyOf(row.Index, profile) is { } family
                && family.Along == strip.Along && strip.Net >= family.Narrowest && strip.Net <= family.Widest
                ? band with { Strip = strip with { Row = row.Index } }
                : null;
        }

        var run = band.Run.Select(blank => Of(blank, source, profile)).OfType<BlankOption>().ToList();
        return run.Count == 0 ? null : band with { Run = run };
    }

    private BlankOption? Of(BlankOption blank, PlanningModel source, Profile profile) =>
        rows.TryGetValue(KeyOf(source.Rows[blank.Row]), out var row)
        && blanks[profile].TryGetValue(blank with { Row = row.Index, Pieces = 0 }, out var known) && known.Pieces >= blank.Pieces
            ? known with { Pieces = blank.Pieces }
            : null;

    /// <summary>How much of its section a band takes in the direction of the first cuts.</summary>
    private long Extent(Band band, bool ripFirst, Profile profile) => band.Strip is { } strip
        ? ripFirst ? strip.Net + FamilyOf(strip.Row, profile)!.Edge : strip.Along
        : band.Run.Sum(blank => (ripFirst ? blank.Across : blank.Along) + model.Kerf) - model.Kerf;

    private static StripFamily? FamilyOf(int row, Profile profile) => Array.Find(profile.Families, family => family.Rows.Contains(row));

    private static object KeyOf(DemandRow row) => row is StripRow strip ? (strip.Name, strip.Copy, strip.SubPanel) : row.Name;

    private static IEnumerable<object> KeysOf(BoardType board) => board.Offer is { } offer ? [(offer.Offer.Id, offer.Size)] : board.Boards.Select(each => each.Id);
}
