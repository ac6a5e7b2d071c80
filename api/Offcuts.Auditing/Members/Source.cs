using Offcuts.Auditing.Boards;
using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>A free board in stock or one size of an offer, as something that might give a part.</summary>
internal sealed record Source(
    BoardKind Kind, string Species, Surface Surface, Appearance Appearance, Dimensions Size, Warp Warp, Ends Ends, bool IsClear, bool IsUnlimited, OneBatch.Origin Batch)
{
    public static IEnumerable<Source> Of(PlanningProblem problem) =>
        problem.Stock.Where(board => board.Status == BoardStatus.Free)
            .Select(board => new Source(board.Kind, board.Species, board.Surface, board.Appearance, board.Size, board.Warp, board.Ends, board.Defects.Count == 0, false, new OneBatch.Origin(board.Batch, null)))
            .Concat(problem.Offers.Where(offer => offer.Available != 0).SelectMany(offer => OfferSize.Of(offer).Select(size =>
                new Source(offer.Kind, offer.Species, offer.Surface, offer.Appearance, size.Size, default, default, true, offer.Available is null, new OneBatch.Origin(null, offer.Id)))));

    /// <summary>Why this cannot give one such blank; too few if it can.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="asked">What the part or panel asks of its wood.</param>
    /// <param name="species">The species accepted.</param>
    /// <param name="length">What the blank takes along the board.</param>
    /// <param name="width">What it takes across the board, if this were straight.</param>
    /// <param name="turned">Whether its own width lies along the board.</param>
    public MissingReason Refuses(
        Shop shop, Asked asked, IReadOnlyList<string> species, Length length, Length width, bool turned)
    {
        var (left, right, edge) = EndTrims.Of(shop, Kind, Surface, Ends);
        return !species.Contains(Species) ? MissingReason.NoSuchSpecies
            : Appearance > asked.Appearance ? MissingReason.NotGoodEnough
            : !Milling.SuitsThickness(shop, Kind, Surface, Size.Thickness, asked.Thickness, asked.MostThickness, Length.Zero) ? MissingReason.WrongThickness
            : !Pass(Length.Zero, turned ? length : width) ? MissingReason.TooWideForMachines
            : length > Size.Length - left - right ? MissingReason.TooShort
            : width > Size.Width - (edge * 2) ? MissingReason.TooNarrow
            : IsTooWarped() ? MissingReason.TooWarped
            : MissingReason.TooFew;

        bool Pass(Length warp, Length own) =>
            Milling.WidestBlank(shop, Kind, Surface, Size.Thickness, asked.Thickness, asked.MostThickness, warp) is not { } widest || own <= widest;

        bool IsTooWarped()
        {
            var warping = new Warping(Kind, Warp, Size);
            var wide = width + warping.Edge(length);
            var warp = warping.Face(length, wide);
            return wide > Size.Width - (edge * 2) || !Milling.SuitsThickness(shop, Kind, Surface, Size.Thickness, asked.Thickness, asked.MostThickness, warp)
                || !Pass(warp, turned ? length : wide);
        }
    }
}
