using Google.OrTools.LinearSolver;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// The best choice of sections for one board from a list of them:
/// max sum_r v_r y_r such that y_r &lt;= need_r, y_r &lt;= sum_s a_rs x_s, sum_s (extent_s + kerf) x_s &lt;= extent + kerf, x whole.
/// What the sections make beyond the need is left out of them.
/// </summary>
internal static class SectionProgram
{
    private const string Limits = "limits/totalnodes = 60\n";

    /// <summary>The sections chosen, within what is needed.</summary>
    /// <param name="sections">What to choose from.</param>
    /// <param name="room">First extent of the board with one kerf, in ticks.</param>
    /// <param name="kerf">The kerf in ticks.</param>
    /// <param name="prices">What everything is worth, and what is needed.</param>
    public static List<Section> Choose(IReadOnlyList<Section> sections, long room, long kerf, PriceList prices)
    {
        using var solver = Solver.CreateSolver("SCIP");
        solver.SetSolverSpecificParametersAsString(Limits);
        var fit = solver.MakeConstraint(double.NegativeInfinity, room, "");
        var made = new Dictionary<int, Constraint>();
        var uses = sections.Select((section, at) =>
        {
            var use = solver.MakeIntVar(0, room / (section.First + kerf), "");
            fit.SetCoefficient(use, section.First + kerf);
            foreach (var (row, amount) in Amounts(section))
            {
                if (!made.TryGetValue(row, out var counted))
                {
                    counted = made[row] = solver.MakeConstraint(double.NegativeInfinity, 0, "");
                    var count = solver.MakeNumVar(0, prices.Need[row], "");
                    counted.SetCoefficient(count, 1);
                    solver.Objective().SetCoefficient(count, prices.Piece[row] + prices.PerTick[row]);
                }

                counted.SetCoefficient(use, -amount);
            }

            return use;
        }).ToList();
        solver.Objective().SetMaximization();
        if (solver.Solve() is not (Solver.ResultStatus.OPTIMAL or Solver.ResultStatus.FEASIBLE))
        {
            return [];
        }

        var need = (long[])prices.Need.Clone();
        return [.. sections.SelectMany((section, at) => Enumerable.Repeat(section, (int)Math.Round(uses[at].SolutionValue())))
            .Select(section => Within(section, need)).OfType<Section>()];
    }

    /// <summary>How much of every row a section makes.</summary>
    public static IEnumerable<(int Row, long Amount)> Amounts(Section section) => section.Bands
        .SelectMany(band => band.Strip is { } strip ? [(strip.Row, strip.Net)] : band.Run.Select(blank => (blank.Row, Amount: blank.Yield)))
        .GroupBy(each => each.Row, (row, each) => (row, each.Sum(one => one.Amount)));

    /// <summary>The section without what is no longer needed; null if nothing is left.</summary>
    private static Section? Within(Section section, long[] need)
    {
        var bands = new List<Band>();
        foreach (var band in section.Bands)
        {
            if (band.Strip is { } strip)
            {
                if (need[strip.Row] > 0)
                {
                    need[strip.Row] -= strip.Net;
                    bands.Add(band);
                }

                continue;
            }

            var run = new List<BlankOption>();
            foreach (var blank in band.Run.Where(blank => need[blank.Row] > 0))
            {
                run.Add(blank.Within(need[blank.Row]));
                need[blank.Row] -= run[^1].Yield;
            }

            if (run.Count > 0)
            {
                bands.Add(band with { Run = run });
            }
        }

        return bands.Count > 0 ? section with { Bands = bands } : null;
    }
}
