using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Fitting;

/// <summary>What all designs are ranked against: the stock, the offers and the shop, with what depends on these alone worked out once.</summary>
public sealed class FitStock
{
    private readonly Dictionary<string, decimal> weights;

    /// <param name="shop">The boards that may be cut, what can be bought, and how the shop works; its design is not looked at.</param>
    /// <param name="focus">The part of the pile whose wood counts as eaten; null for all of it.</param>
    public FitStock(PlanningProblem shop, FitFocus? focus = null)
    {
        ArgumentNullException.ThrowIfNull(shop);
        Shop = shop;
        weights = shop.Stock.Where(board => focus?.Has(board) ?? true).ToDictionary(
            board => board.Id, board => shop.Rates.Of(board.Species).MinorUnits * PileWeight.Of(board, shop.Today), StringComparer.Ordinal);
        var trims = new Trims(shop.Shop);
        Pieces =
        [
            .. shop.Stock.Select(board => Piece(board, trims)).OfType<FitPiece>(),
            .. shop.Offers.Where(offer => offer.Available != 0).SelectMany(OfferSize.Of).Select(size => Piece(size, trims)).OfType<FitPiece>(),
        ];
        BySpecies = Pieces.ToLookup(piece => piece.Class.Species, StringComparer.Ordinal);
    }

    /// <summary>The boards that may be cut, what can be bought, and how the shop works.</summary>
    public PlanningProblem Shop { get; }

    internal IReadOnlyList<FitPiece> Pieces { get; }

    internal ILookup<string, FitPiece> BySpecies { get; }

    /// <summary>What a board foot from a board counts as eaten, in minor units; 0 where it is not in focus.</summary>
    public decimal WeightOf(string boardId) => weights.GetValueOrDefault(boardId);

    // Two designs that differ in nothing but batches cut the same blanks: the class is told without.
    private FitPiece? Piece(Board board, Trims trims) =>
        Estimates.Counted(board, Shop.Shop.EstimateMargin) is { } counted && trims.Usable(counted) is { } usable
            ? new FitPiece(BoardClass.Of(counted) with { Batch = null }, usable, board.Quantity, board, null, (double)WeightOf(board.Id))
            : null;

    private static FitPiece? Piece(OfferSize size, Trims trims) =>
        trims.Usable(size) is { } usable ? new FitPiece(BoardClass.Of(size.Offer) with { Batch = null }, usable, int.MaxValue, null, size, 0) : null;
}

/// <summary>A board in stock, or a size of an offer, as designs see it.</summary>
/// <param name="Class">What decides what may be cut from it; without its batch.</param>
/// <param name="Usable">Its face without trims; defects are not heeded.</param>
/// <param name="Quantity">How many alike.</param>
/// <param name="Board">The board; null for an offer.</param>
/// <param name="Offer">The size of an offer; null for a board.</param>
/// <param name="Weight">What a board foot of it counts as eaten, in minor units.</param>
internal sealed record FitPiece(BoardClass Class, Rect Usable, int Quantity, Board? Board, OfferSize? Offer, double Weight)
{
    public double Area => (double)Usable.Length.Ticks * Usable.Width.Ticks;
}
