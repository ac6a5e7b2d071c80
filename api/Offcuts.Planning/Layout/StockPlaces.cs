using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>
/// Says which of several boards that are alike a pattern is cut from: the one that an earlier plan cuts like that, else the next one that no
/// other pattern keeps.
/// </summary>
internal sealed class StockPlaces
{
    private readonly Dictionary<BoardType, List<(Board Board, int Copy)>> free = [];
    private readonly Dictionary<Pattern, Queue<(Board Board, int Copy)>> kept = [];

    /// <summary>Keeps for every pattern the boards that it had in the earlier plan, one for each time that it is cut.</summary>
    /// <param name="patterns">All patterns of a plan, one for each board, in cutting order.</param>
    public StockPlaces(IReadOnlyList<Pattern> patterns)
    {
        foreach (var cuts in patterns.GroupBy(pattern => pattern))
        {
            var places = Free(cuts.Key.Board);
            var own = cuts.Key.Earlier.Select(place => places.FindIndex(each => each.Board.Id == place.BoardId && each.Copy == place.Copy))
                .Where(at => at >= 0).Select(at => places[at]).Take(cuts.Count()).ToList();
            kept[cuts.Key] = new(own);
            places.RemoveAll(own.Contains);
        }
    }

    /// <summary>The board in stock for the pattern, and which of several alike; for a bought one neither matters.</summary>
    public (Board? Board, int Copy) Next(Pattern pattern)
    {
        if (pattern.Board.Boards.Count == 0)
        {
            return (null, 1);
        }

        if (kept[pattern].TryDequeue(out var own))
        {
            return own;
        }

        var places = Free(pattern.Board);
        var next = places[0];
        places.RemoveAt(0);
        return next;
    }

    private List<(Board Board, int Copy)> Free(BoardType type)
    {
        if (!free.TryGetValue(type, out var places))
        {
            free.Add(type, places = [.. type.Boards.SelectMany(board => Enumerable.Range(1, board.Quantity).Select(copy => (board, copy)))]);
        }

        return places;
    }
}
