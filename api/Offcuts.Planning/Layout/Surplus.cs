using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;

namespace Offcuts.Planning.Layout;

/// <summary>Takes out of a solution what is cut beyond need: whole boards first, the dearest first, then single pieces.</summary>
internal static class Surplus
{
    public static List<Pattern> Remove(PlanningModel model, Solution solution)
    {
        var extra = solution.Short.Select(amount => -amount).ToArray();
        var patterns = solution.Cuts.SelectMany(cut => Enumerable.Repeat(cut.Pattern, cut.Count))
            .OrderByDescending(pattern => pattern.Money).ThenByDescending(pattern => pattern.Worth).ThenBy(pattern => pattern.Board.Index)
            .ToList();
        patterns.RemoveAll(pattern =>
        {
            var idle = pattern.Cover.All(cover => extra[cover.Row] >= cover.Amount);
            foreach (var (row, amount) in idle ? pattern.Cover : [])
            {
                extra[row] -= amount;
            }

            return idle;
        });
        return [.. patterns.Select(pattern => pattern.Cover.Any(cover => extra[cover.Row] > 0) ? Trim(model, pattern, extra) : pattern)];
    }

    private static Pattern Trim(PlanningModel model, Pattern pattern, long[] extra)
    {
        var sections = pattern.Sections
            .Select(section => new Section(section.First, [.. section.Bands.Select(band => Trim(band, pattern.RipFirst, extra)).OfType<Band>()]))
            .Where(section => section.Bands.Count > 0)
            .ToList();
        return PatternFactory.Create(model, pattern.Board, pattern.RipFirst, sections);
    }

    private static Band? Trim(Band band, bool ripFirst, long[] extra)
    {
        if (band.Strip is { } strip)
        {
            if (extra[strip.Row] < strip.Net)
            {
                return band;
            }

            extra[strip.Row] -= strip.Net;
            return null;
        }

        var run = band.Run.Where(blank =>
        {
            var spare = extra[blank.Row] > 0;
            extra[blank.Row] -= spare ? 1 : 0;
            return !spare;
        }).ToList();
        return run.Count == 0 ? null : new Band(run.Max(blank => ripFirst ? blank.Along : blank.Across), run, null);
    }
}
