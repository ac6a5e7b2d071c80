using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Bounds;

/// <summary>Puts parts that the linear program has for nothing into what a plan without them leaves: small ones, for which some end always has room.</summary>
internal static class FreeParts
{
    /// <summary>The cuts with sections of the free rows' parts added where the first cuts leave room, the largest first; not all of them where room lacks.</summary>
    /// <param name="model">The model.</param>
    /// <param name="free">The free rows.</param>
    /// <param name="cuts">A plan for the others.</param>
    public static IEnumerable<(Pattern Pattern, int Count)> Fill(PlanningModel model, IReadOnlySet<int> free, IEnumerable<(Pattern Pattern, int Count)> cuts)
    {
        if (free.Count == 0)
        {
            return cuts;
        }

        var boards = cuts.SelectMany(cut => Enumerable.Repeat(cut.Pattern, cut.Count)).Select(pattern => new Filled(model, pattern)).ToList();
        foreach (var row in model.Rows.Where(row => free.Contains(row.Index)).OrderByDescending(Size))
        {
            for (var left = row.Needed - boards.Sum(board => board.Made(row.Index)); left > 0;)
            {
                // Where it leaves least, so that there is room for others.
                var fits = boards.Select(board => (Board: board, Fit: board.Fit(row.Index))).Where(each => each.Fit is not null).ToList();
                if (fits.Count == 0)
                {
                    break;
                }

                var (best, fit) = fits.MinBy(each => each.Fit!.Value.Left);
                left -= best.Put(fit!.Value.Blank.Within(left));
            }
        }

        return boards.GroupBy(board => board.Pattern.Key, StringComparer.Ordinal).Select(alike => (alike.First().Pattern, alike.Count()));
    }

    private static long Size(DemandRow row) => row is PartRow part ? part.Length.Ticks : 0;

    private sealed class Filled(PlanningModel model, Pattern pattern)
    {
        public Pattern Pattern { get; private set; } = pattern;

        public long Made(int row) => Pattern.Cover.FirstOrDefault(cover => cover.Row == row).Amount;

        /// <summary>The blank of a row that leaves least of the first extent; null if none fits.</summary>
        public (BlankOption Blank, long Left)? Fit(int row)
        {
            if (Pattern.Areas is not [{ } area] || Pattern.Division is not null)
            {
                return null;
            }

            var (first, second) = area.RipFirst ? (area.Area.Across, area.Area.Along) : (area.Area.Along, area.Area.Across);
            var room = first - area.Sections.Sum(section => section.First + model.Kerf);
            var fitting = area.Area.Profile.Blanks.Where(blank => blank.Row == row && First(blank) <= room && Second(blank) <= second).ToList();
            return fitting.Count == 0 ? null : fitting.Select(blank => (blank, room - First(blank))).MinBy(each => each.Item2);
        }

        /// <summary>Adds a section of one blank; says what it counts.</summary>
        public long Put(BlankOption blank)
        {
            var area = Pattern.Areas[0];
            Pattern = PatternFactory.Create(
                model, area.Area, area.RipFirst, [.. area.Sections, new Section(First(blank), [new Band(Second(blank), [blank], null)])]);
            return blank.Yield;
        }

        private long First(BlankOption blank) => Pattern.Areas[0].RipFirst ? blank.Across : blank.Along;

        private long Second(BlankOption blank) => Pattern.Areas[0].RipFirst ? blank.Along : blank.Across;
    }
}
