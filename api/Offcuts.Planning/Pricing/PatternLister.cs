using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>Lists the nearly best patterns of boards, those that fall into areas as well: the choices of the areas are put together.</summary>
internal sealed class PatternLister(PlanningModel model, IReadOnlyList<BoardView> views)
{
    /// <summary>See <see cref="PatternPricer.Near"/>.</summary>
    public List<Pattern>? Near(PriceList prices, IReadOnlySet<BoardType> boards, double[] least, ListingEffort effort)
    {
        var best = DividedPricer.Best(views, views.Select(view => view.Values(prices, [.. view.Boards.Where(area => area.Whole is not null && boards.Contains(area.Whole))]).ToList()));
        var leastOf = Leasts(boards, least, best);
        var choices = new Dictionary<BoardType, List<NearArea>>();
        foreach (var view in views)
        {
            if (view.Near(prices, [.. view.Boards.Where(leastOf.ContainsKey)], leastOf, effort) is not { } found)
            {
                return null;
            }

            foreach (var each in found)
            {
                choices.TryAdd(each.Pattern.Area, []);
                choices[each.Pattern.Area].Add(each);
            }
        }

        var patterns = new List<Pattern>();
        foreach (var board in boards.OrderBy(board => board.Index))
        {
            var own = board.Divisions.Count == 0
                ? choices.GetValueOrDefault(board, []).ConvertAll(near => (near.Made, Areas: new[] { near.Pattern }, Division: (Division?)null))
                : [.. board.Divisions.SelectMany(division => Together(division, least[board.Index], prices, best, choices, effort)
                    .Select(each => (each.Made, Areas: each.Areas.ToArray(), Division: (Division?)division)))];
            if (effort.IsSpent)
            {
                return null;
            }

            patterns.AddRange(Made.Undominated(own.Where(each => each.Made.Total > 0), each => each.Made, effort).Select(each => PatternFactory.Create(model, board, each.Division, each.Areas)));
        }

        return effort.IsSpent ? null : patterns;
    }

    /// <summary>What a board or an area must be worth at least, so that the whole can be worth enough.</summary>
    private static Dictionary<BoardType, double> Leasts(IReadOnlySet<BoardType> boards, double[] least, Dictionary<BoardType, BestOfArea> best)
    {
        var leastOf = new Dictionary<BoardType, double>();
        foreach (var board in boards)
        {
            if (board.Divisions.Count == 0)
            {
                leastOf[board] = least[board.Index];
            }

            foreach (var division in board.Divisions)
            {
                var whole = division.Areas.Sum(area => best[area].Value);
                foreach (var area in division.Areas)
                {
                    leastOf[area] = Math.Min(leastOf.GetValueOrDefault(area, double.PositiveInfinity), least[board.Index] - (whole - best[area].Value));
                }
            }
        }

        return leastOf;
    }

    private static List<(Made Made, IReadOnlyList<AreaPattern> Areas)> Together(
        Division division, double least, PriceList prices, Dictionary<BoardType, BestOfArea> best, Dictionary<BoardType, List<NearArea>> choices, ListingEffort effort)
    {
        var all = new List<(Made Made, IReadOnlyList<AreaPattern> Areas, double Value)> { (Made.Nothing(prices.Need.Length), [], 0) };
        var open = division.Areas.Sum(area => best[area].Value);
        foreach (var area in division.Areas)
        {
            open -= best[area].Value;
            var ways = choices.GetValueOrDefault(area, []);

            // An area from which nothing is cut is a way too.
            ways = [.. ways, new NearArea(Made.Nothing(prices.Need.Length), 0, new AreaPattern(area, false, []))];
            if (!effort.SpendInTime((long)all.Count * ways.Count))
            {
                return [];
            }

            all = [.. all.SelectMany(before => ways.Select(way => (
                    before.Made.And(way.Made, prices.Need), (IReadOnlyList<AreaPattern>)[.. before.Areas, way.Pattern], Value: before.Value + way.Value)))
                .Where(each => each.Value + open >= least - PatternPricer.Tolerance)];
        }

        return all.ConvertAll(each => (each.Made, each.Areas));
    }
}
