using Google.OrTools.LinearSolver;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// Lets the strips of the patterns in an integer program share out anew the room in which they lie, so that what one board gives of one panel complements what another
/// gives of the next. For a pattern cut x times, with w the net width that all copies of a strip have together:
/// <code>
/// narrowest x &lt;= w &lt;= widest x,   sum of w over a room &lt;= room x
/// </code>
/// </summary>
/// <param name="model">The model.</param>
/// <param name="solver">The program.</param>
/// <param name="cover">Its rows.</param>
internal sealed class FreeWidths(PlanningModel model, Solver solver, Constraint[] cover)
{
    /// <summary>With more strips than this the programs take longer than it is worth: of 8 workshops that must buy, 5 s each, the mean gap was 1.43 % without, 1.29 % so.</summary>
    private const int MostStrips = 400;
    private readonly Dictionary<Pattern, (List<StripRoom> Rooms, List<Variable> Widths)> freed = [];

    /// <summary>Whether the pool has strips, and few enough.</summary>
    public static bool IsWorthwhile(PlanningModel model, IReadOnlyList<Pattern> pool) => model.Rows.Any(row => row is StripRow)
        && pool.Sum(pattern => pattern.Areas.Sum(area => area.Sections.Sum(section => section.Bands.Count(band => band.Strip is not null)))) is > 0 and <= MostStrips;

    /// <summary>Adds a pattern's strips.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="use">How often it is cut.</param>
    public void Add(Pattern pattern, Variable use)
    {
        var (rooms, widths) = (StripRoom.Of(model, pattern), new List<Variable>());
        foreach (var room in rooms)
        {
            var shared = solver.MakeConstraint(double.NegativeInfinity, 0, "");
            shared.SetCoefficient(use, -room.Room);
            foreach (var strip in room.Strips)
            {
                var width = solver.MakeNumVar(0, double.PositiveInfinity, "");
                shared.SetCoefficient(width, 1);
                var (least, most) = (solver.MakeConstraint(0, double.PositiveInfinity, ""), solver.MakeConstraint(double.NegativeInfinity, 0, ""));
                least.SetCoefficient(width, 1);
                least.SetCoefficient(use, -strip.Narrowest);
                most.SetCoefficient(width, 1);
                most.SetCoefficient(use, -strip.Widest);
                foreach (var row in strip.Rows.GroupBy(row => row))
                {
                    cover[row.Key].SetCoefficient(width, model.Rows[row.Key].Scaled(row.Count()));
                }

                widths.Add(width);
            }
        }

        freed.Add(pattern, (rooms, widths));
    }

    /// <summary>
    /// The cuts with the widths that the program found, in whole ticks: what rounding takes from a row is given back where there is room for it.
    /// </summary>
    /// <param name="cuts">How often it cuts every pattern.</param>
    /// <param name="need">What the cuts have to make, by row.</param>
    public List<(Pattern Pattern, int Count)> Read(IEnumerable<(Pattern Pattern, int Count)> cuts, long[] need)
    {
        var made = new List<(Pattern, int)>();
        var lacking = (long[])need.Clone();
        var open = new List<(Pattern Pattern, List<StripRoom> Rooms, long[] Nets)>();
        foreach (var (pattern, count) in cuts.Where(cut => cut.Count > 0))
        {
            if (freed[pattern] is not { Rooms: { Count: > 0 } rooms, Widths: var widths })
            {
                made.Add((pattern, count));
                continue;
            }

            for (var copy = 0; copy < count; copy++)
            {
                open.Add((pattern, rooms, Within(rooms, [.. widths.Select(width => width.SolutionValue() / count)], lacking)));
            }
        }

        foreach (var (_, rooms, nets) in open)
        {
            Widen(rooms, nets, lacking);
        }

        return [.. made, .. open.Select(each => (StripRoom.With(model, each.Pattern, each.Rooms, each.Nets), 1))];
    }

    /// <summary>Whole ticks within the limits; what they make is taken off.</summary>
    private static long[] Within(List<StripRoom> rooms, double[] widths, long[] lacking)
    {
        var nets = new List<long>();
        foreach (var room in rooms)
        {
            var (left, after) = (room.Room, room.Strips.Sum(strip => strip.Narrowest));
            foreach (var strip in room.Strips)
            {
                after -= strip.Narrowest;
                var net = Math.Clamp((long)Math.Round(widths[nets.Count]), strip.Narrowest, Math.Max(strip.Narrowest, Math.Min(strip.Widest, left - after)));
                nets.Add(net);
                left -= net;
                foreach (var row in strip.Rows)
                {
                    lacking[row] -= net;
                }
            }
        }

        return [.. nets];
    }

    private static void Widen(List<StripRoom> rooms, long[] nets, long[] lacking)
    {
        var at = 0;
        foreach (var room in rooms)
        {
            var spare = room.Room - room.Strips.Index().Sum(entry => nets[at + entry.Index]);
            foreach (var strip in room.Strips)
            {
                // Each row that a rip serves gets a tick for every piece of it.
                var wanted = strip.Rows.Max(row => lacking[row]);
                var more = Math.Clamp(wanted, 0, Math.Max(0, Math.Min(spare, strip.Widest - nets[at])));
                nets[at++] += more;
                spare -= more;
                foreach (var row in strip.Rows)
                {
                    lacking[row] -= more;
                }
            }
        }
    }
}
