using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>
/// A board in stock or one size of an offer, as the rivals see it. The supply, a board or an offer, limits how often it can be had; only the clear
/// part of the face may be cut.
/// </summary>
internal sealed record Source(
    string Supply, long Most, BoardKind Kind, string Species, Surface Surface, Appearance Appearance, Dimensions Size, Rect Clear, Board? Board, OfferSize? Offer)
{
    /// <summary>What one piece costs in minor units; nothing for stock.</summary>
    public long Price => Offer?.Price.MinorUnits ?? 0;

    /// <summary>All that can be cut in a problem, stock first.</summary>
    public static List<Source> Of(PlanningProblem problem)
    {
        var sources = new List<Source>();
        foreach (var board in problem.Stock.Where(board => board.Status == BoardStatus.Free))
        {
            if (ClearWood.Largest(Face(board.Size), [.. board.Defects.Select(defect => defect.Area)], _ => true) is { } clear)
            {
                sources.Add(new("stock " + board.Id, board.Quantity, board.Kind, board.Species, board.Surface, board.Appearance, board.Size, clear, board, null));
            }
        }

        foreach (var size in problem.Offers.Where(offer => offer.Available != 0).SelectMany(OfferSize.Of))
        {
            var offer = size.Offer;
            sources.Add(new(
                "offer " + offer.Id, offer.Available ?? int.MaxValue, offer.Kind, offer.Species, offer.Surface, offer.Appearance, size.Size, Face(size.Size), null, size));
        }

        return sources;
    }

    private static Rect Face(Dimensions size) => new(Length.Zero, Length.Zero, size.Length, size.Width);
}
