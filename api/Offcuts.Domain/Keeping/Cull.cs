namespace Offcuts.Domain;

/// <summary>What of the stock the shop may let go. It only suggests: nothing is changed by it.</summary>
/// <remarks>
/// A board is suggested if it breaks the keep rule, fits no saved design, fills its place beyond the limit, or has lain for long; what the rule always keeps
/// never is. First come those with most reasons, then those whose wood is worth least for the space that it takes, then the oldest.
/// </remarks>
/// <param name="shop">The shop with its keep rule.</param>
/// <param name="rates">What wood is worth.</param>
/// <param name="today">The day.</param>
/// <param name="oldDays">From how many days on a board has lain for long.</param>
public sealed class Cull(Shop shop, WorthRates rates, DateOnly today, int oldDays)
{
    /// <summary>From how many days on a board has lain for long, if nobody says: two years (makers say one to three; common practice).</summary>
    public const int OldDays = 730;

    /// <summary>What may go, in order.</summary>
    /// <param name="boards">The boards with what may be cut from them; those of which nothing is free are left out.</param>
    /// <param name="excess">By how many cubic metres places hold more than their limit, by their names.</param>
    public IReadOnlyList<CullCandidate> Suggest(IReadOnlyList<CullBoard> boards, IReadOnlyDictionary<string, decimal> excess)
    {
        var open = boards.Where(board => board.Board.FreeQuantity > 0).Select(Weigh).OfType<CullCandidate>().ToList();
        var full = open.Where(board => board.Board.Place is { } place && excess.ContainsKey(place))
            .GroupBy(board => board.Board.Place!, StringComparer.Ordinal)
            .SelectMany(place => Cheapest(place, excess[place.Key])).ToHashSet();
        return [.. open.Select(board => full.Contains(board) ? board with { Reasons = [.. board.Reasons, CullReason.PlaceFull] } : board)
            .Where(board => board.Reasons.Count > 0)
            .OrderByDescending(board => board.Reasons.Count).ThenBy(WorthOfSpace).ThenByDescending(board => board.Days).ThenBy(board => board.Board.Id, StringComparer.Ordinal)];
    }

    /// <summary>The first of the candidates whose volume together is at least so much; all if it is less.</summary>
    /// <param name="candidates">What may go, in order.</param>
    /// <param name="cubicMetres">What is to become free.</param>
    public static IEnumerable<CullCandidate> Freeing(IEnumerable<CullCandidate> candidates, decimal cubicMetres)
    {
        foreach (var candidate in candidates)
        {
            if (cubicMetres <= 0)
            {
                yield break;
            }

            cubicMetres -= candidate.CubicMetres;
            yield return candidate;
        }
    }

    private CullCandidate? Weigh(CullBoard entry)
    {
        var board = entry.Board;
        var ruling = KeepRuling.Of(shop.KeepRule, shop.Keep, board.Species, entry.Clear);
        if (ruling.Entry?.Word == KeepWord.Always)
        {
            return null;
        }

        var days = Math.Max(0, today.DayNumber - DateOnly.FromDateTime(board.LoggedAt.UtcDateTime).DayNumber);
        List<CullReason> reasons = [];
        AddIf(!ruling.IsKept, CullReason.BreaksRule);
        AddIf(entry.FitsDesign == false, CullReason.FitsNothing);
        AddIf(days >= oldDays, CullReason.Old);
        var worth = Worth.OfBoard(board, rates.Of(board.Species), shop.KeptOf(board.Species), today);
        return new(board, board.FreeQuantity, days, BoardMeasure.CubicMetres(board.Size) * board.FreeQuantity, worth * board.FreeQuantity, reasons, ruling, entry.Clear);

        void AddIf(bool isSo, CullReason reason)
        {
            if (isSo)
            {
                reasons.Add(reason);
            }
        }
    }

    private static IEnumerable<CullCandidate> Cheapest(IEnumerable<CullCandidate> boards, decimal excess) =>
        Freeing(boards.OrderByDescending(board => board.Reasons.Count).ThenBy(WorthOfSpace).ThenByDescending(board => board.Days).ThenBy(board => board.Board.Id, StringComparer.Ordinal), excess);

    private static decimal WorthOfSpace(CullCandidate candidate) => candidate.Worth.MinorUnits / candidate.CubicMetres;
}

/// <summary>A board, and whether any part of any saved design can be cut from it.</summary>
/// <param name="Board">The board.</param>
/// <param name="FitsDesign">Whether one can; null if there are no designs to tell by.</param>
/// <param name="Clear">The size of what its defects leave clear, by which the keep rule is asked.</param>
public sealed record CullBoard(Board Board, bool? FitsDesign, Dimensions Clear)
{
    /// <summary>A board without defects.</summary>
    public CullBoard(Board board, bool? fitsDesign)
        : this(board, fitsDesign, board.Size)
    {
    }
}

/// <summary>A board that may go.</summary>
/// <param name="Board">The board.</param>
/// <param name="Quantity">How many alike no plan holds.</param>
/// <param name="Days">For how many days it has lain.</param>
/// <param name="CubicMetres">The space that these take, in cubic metres of wood.</param>
/// <param name="Worth">What they are worth to the shop.</param>
/// <param name="Reasons">Why it may go; equal only if the list is the same.</param>
/// <param name="Ruling">What the keep rule says of it.</param>
/// <param name="Clear">The size of what its defects leave clear, by which the rule was asked.</param>
public sealed record CullCandidate(
    Board Board, int Quantity, int Days, decimal CubicMetres, Money Worth, IReadOnlyList<CullReason> Reasons, KeepRuling Ruling, Dimensions Clear);

/// <summary>Why a board may go.</summary>
public enum CullReason
{
    /// <summary>The keep rule lets such a piece go.</summary>
    BreaksRule,

    /// <summary>No part of any saved design can be cut from it.</summary>
    FitsNothing,

    /// <summary>It has lain for long.</summary>
    Old,

    /// <summary>Its place holds more than its limit, and it is among those that are worth least there.</summary>
    PlaceFull,
}
