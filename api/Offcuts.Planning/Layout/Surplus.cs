using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Layout;

/// <summary>Takes out of a solution what is cut beyond need: whole boards first, the dearest first, then single pieces.</summary>
internal static class Surplus
{
    public static List<Pattern> Remove(PlanningModel model, Solution solution)
    {
        var extra = new Excess(model, (long[])solution.Made.Clone());
        var patterns = solution.Cuts.SelectMany(cut => Enumerable.Repeat(cut.Pattern, cut.Count))
            .OrderByDescending(pattern => pattern.Money).ThenByDescending(pattern => pattern.Worth).ThenBy(pattern => pattern.Board.Index)
            .ToList();
        patterns.RemoveAll(extra.TryTake);
        return [.. patterns
            .Select(pattern => pattern.Cover.Any(cover => extra[cover.Row] > 0) ? Trim(model, pattern, extra) : pattern).ToList()
            .Select(pattern => pattern.Cover.Any(cover => extra[cover.Row] > 0) ? Narrow(model, pattern, extra) : pattern)];
    }

    /// <summary>Rips strips no wider than their sub-panels need: what is saved stays with the leftover.</summary>
    private static Pattern Narrow(PlanningModel model, Pattern pattern, Excess extra) => EachArea(model, pattern, area => area with
    {
        Sections = [.. area.Sections.Select(section => area.RipFirst
            ? NarrowRip(model, section, extra)
            : section with { Bands = [.. section.Bands.Select(band => Narrow(band, Spare(model, band, extra), extra))] })],
    });

    // What an earlier plan cut from a board stays on that board, even where something of it is left out.
    private static Pattern EachArea(PlanningModel model, Pattern pattern, Func<AreaPattern, AreaPattern> change) => PatternFactory.Kept(
        model, PatternFactory.Create(model, pattern.Board, pattern.Division, [.. pattern.Areas.Select(change)]), pattern.Earlier);

    /// <summary>The strips of one rip are equally wide: it can lose what each of them can spare for its row.</summary>
    private static Section NarrowRip(PlanningModel model, Section section, Excess extra)
    {
        if (!section.Bands.All(band => band.Strip is not null))
        {
            return section;
        }

        var spare = section.Bands.GroupBy(band => extra.Shared(band.Strip!.Value.Row))
            .Min(alike => alike.Min(band => Math.Min(Spare(model, band, extra), Math.Max(0, extra[band.Strip!.Value.Row]) / alike.Count())));
        var bands = section.Bands.Select(band =>
        {
            extra.Take(band.Strip!.Value.Row, spare);
            return band with { Strip = band.Strip.Value with { Net = band.Strip.Value.Net - spare } };
        }).ToList();
        return new Section(section.First - spare, bands);
    }

    private static long Spare(PlanningModel model, Band band, Excess extra) => band.Strip is not { } strip ? 0
        : Math.Max(0, Math.Min(extra[strip.Row], strip.Net - ((StripRow)model.Rows[strip.Row]).Narrowest.Ticks));

    private static Band Narrow(Band band, long spare, Excess extra)
    {
        if (spare == 0 || band.Strip is not { } strip)
        {
            return band;
        }

        extra.Take(strip.Row, spare);
        return band with { Second = band.Second - spare, Strip = strip with { Net = strip.Net - spare } };
    }

    private static Pattern Trim(PlanningModel model, Pattern pattern, Excess extra) => EachArea(model, pattern, area => area with
    {
        Sections = [.. area.Sections
            .Select(section => new Section(section.First, [.. section.Bands.Select(band => Trim(band, area.RipFirst, extra)).OfType<Band>()]))
            .Where(section => section.Bands.Count > 0)],
    });

    private static Band? Trim(Band band, bool ripFirst, Excess extra)
    {
        if (band.Strip is { } strip)
        {
            if (extra[strip.Row] < strip.Net)
            {
                return band;
            }

            extra.Take(strip.Row, strip.Net);
            return null;
        }

        // A layer counts less than a whole piece: as long as there is one, something too much can be left out to the unit.
        var run = band.Run.Select(blank =>
        {
            var spare = (int)Math.Clamp(extra[blank.Row] / blank.Units, 0, blank.Pieces);
            extra.Take(blank.Row, spare * (long)blank.Units);
            return blank with { Pieces = blank.Pieces - spare };
        }).Where(blank => blank.Pieces > 0).ToList();
        return run.Count == 0 ? null : new Band(run.Max(blank => ripFirst ? blank.Along : blank.Across), run, null);
    }
}
