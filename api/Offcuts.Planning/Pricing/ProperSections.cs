using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// A good proper pattern where the nested knapsacks count more of a part than is needed: takes the best sections that are
/// proper, then prices the rest of the board anew for what is still needed, until nothing more fits.
/// </summary>
internal sealed class ProperSections(PlanningModel model, OrientedProfile view)
{
    private readonly ProfilePricer inner = new(model, view);

    public List<Section> Of(BoardType board, PriceList prices)
    {
        var need = (long[])prices.Need.Clone();
        var sections = new List<Section>();
        var rest = view.FirstOf(board);
        var (again, taken) = (true, true);
        while (again && taken && rest > 0)
        {
            inner.Prepare(prices.With(need), view.SecondOf(board));
            inner.Open(view.SecondOf(board), rest);
            (again, taken) = (false, false);
            foreach (var section in inner.Sections(rest, proper: false).OrderByDescending(section => Value(section, prices) / (section.First + model.Kerf)))
            {
                if (!IsProper(section, need))
                {
                    again = true;
                    continue;
                }

                Take(section);
            }

            if (again && !taken)
            {
                // Not even one section is proper: take what is needed of the best.
                foreach (var section in inner.Sections(rest, proper: true).Take(1))
                {
                    Take(section);
                }
            }
        }

        return sections;

        void Take(Section section)
        {
            taken = true;
            sections.Add(section);
            rest -= section.First + model.Kerf;
            foreach (var (row, amount, _) in Amounts(section))
            {
                need[row] -= amount;
            }
        }
    }

    private static bool IsProper(Section section, long[] need) => Amounts(section).GroupBy(each => each.Row)
        .All(row => need[row.Key] > 0 && (row.First().IsStrip || row.Sum(each => each.Amount) <= need[row.Key]));

    private static double Value(Section section, PriceList prices) =>
        Amounts(section).Sum(each => (prices.Piece[each.Row] + prices.PerTick[each.Row]) * each.Amount);

    /// <summary>Blanks count what they yield, strips their net width.</summary>
    private static IEnumerable<(int Row, long Amount, bool IsStrip)> Amounts(Section section) => section.Bands.SelectMany(band =>
        band.Strip is { } strip ? [(strip.Row, strip.Net, true)] : band.Run.Select(blank => (blank.Row, blank.Yield, false)));
}
