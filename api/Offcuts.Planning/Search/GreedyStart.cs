using Offcuts.Planning.Master;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// The first plan: one board after another, each time the pattern that gets the most wood into parts for what the board costs.
/// It goes on when time is up, so that there always is a plan, but hurries then. Large and long parts count a little more than their area, so that they are served while there are boards for them.
/// </summary>
internal static class GreedyStart
{
    /// <summary>With more board types than this, only the smallest that do and the cheapest are looked at.</summary>
    private const int MostTypes = 60;

    /// <summary>The plan.</summary>
    /// <param name="model">The model.</param>
    /// <param name="pricer">Finds the patterns.</param>
    /// <param name="clock">When to hurry.</param>
    /// <param name="begun">Cuts that are part of the plan; what they leave to be made is planned.</param>
    /// <param name="found">Told of every pattern.</param>
    public static Solution Run(PlanningModel model, PatternPricer pricer, SearchClock clock, IReadOnlyList<(Pattern Pattern, int Count)> begun, Action<Pattern> found)
    {
        var rest = Remainder.After(model, begun);
        var cuts = new List<(Pattern, int)>(begun);
        var noDuals = new double[model.Boards.Count];
        var values = Values(model);
        var candidates = Candidates(model);
        while (!rest.IsCovered)
        {
            var prices = PriceList.FromDuals(model.Rows, values, rest.Need, 0);
            var ranked = pricer.Improving(prices, noDuals, new CostWeights(0, 0), int.MaxValue, board => candidates[board.Index] && rest.Has(board), CancellationToken.None, thorough: false)
                .OrderByDescending(pattern => Merit(model, pattern, values)).ThenBy(pattern => pattern.Board.Index).ToList();
            if (ranked.Count == 0)
            {
                break;
            }

            // Several a round, as long as they do not take from each other: pricing again for each costs more than it brings. All of them if time is up.
            var hurry = clock.IsOver;
            var most = hurry ? ranked.Count : 1 + (ranked.Count / 10);
            foreach (var pattern in ranked.Take(most))
            {
                if (pattern == ranked[0] || (IsOpen(pattern) && (hurry || pattern.Money == 0 || cuts.Count == 0)))
                {
                    Take(pattern);
                }
            }
        }

        return new Solution(model, cuts);

        bool IsOpen(Pattern pattern) => rest.Has(pattern.Board) && pattern.Cover.All(cover => cover.Amount <= rest.Need[cover.Row]);

        void Take(Pattern pattern)
        {
            var count = Times(pattern, rest.Need, rest.Left[pattern.Board.Supply]);
            cuts.Add((pattern, count));
            found(pattern);
            rest.Take(pattern, count);
        }
    }

    private static int Times(Pattern pattern, long[] need, long left)
    {
        var times = pattern.Cover.Min(cover => need[cover.Row] / cover.Amount);
        return (int)Math.Clamp(times, 1, left);
    }

    private static double[] Values(PlanningModel model)
    {
        var largest = model.Rows.Max(row => row is PartRow part ? part.Length.Ticks : ((StripRow)row).Length.Ticks);
        return [.. model.Rows.Select(row =>
        {
            var length = (row is PartRow part ? part.Length : ((StripRow)row).Length).Ticks;
            var width = (row is PartRow piece ? piece.Width : ((StripRow)row).Width).Ticks;
            return length * (double)width / (Domain.Length.TicksPerInch * Domain.Length.TicksPerInch) * (1 + (0.25 * length / largest))
                / (row is PartRow { Units: var units } ? units : 1);
        })];
    }

    /// <summary>Value of what is cut for the price, and for stock how full the board is.</summary>
    private static double Merit(PlanningModel model, Pattern pattern, double[] values)
    {
        var value = pattern.Cover.Sum(cover => model.Rows[cover.Row] is PartRow
            ? values[cover.Row] * cover.Amount
            : values[cover.Row] * Math.Min(1.0, (double)cover.Amount / model.Rows[cover.Row].Needed));
        var area = (double)pattern.Board.Along * pattern.Board.Across / (Domain.Length.TicksPerInch * Domain.Length.TicksPerInch);
        return pattern.Money == 0 ? 1e6 + (value / area) : value / pattern.Money;
    }

    private static bool[] Candidates(PlanningModel model)
    {
        var chosen = new bool[model.Boards.Count];
        foreach (var profile in model.Boards.GroupBy(board => board.Profile))
        {
            var bySize = profile.OrderBy(board => board.Price).ThenBy(board => board.Along * (double)board.Across).ToList();
            var step = Math.Max(1, bySize.Count / MostTypes);
            for (var at = 0; at < bySize.Count; at += step)
            {
                chosen[bySize[at].Index] = true;
            }

            foreach (var board in bySize.Where(board => board.Offer is not null))
            {
                chosen[board.Index] = true;
            }
        }

        return chosen;
    }
}
