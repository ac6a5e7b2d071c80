using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>A free board in stock or one size of an offer, as something that might give a part.</summary>
internal sealed record Source(
    BoardKind Kind, string Species, Surface Surface, Appearance Appearance, Dimensions Size, bool IsClear, bool IsUnlimited)
{
    public static IEnumerable<Source> Of(PlanningProblem problem) =>
        problem.Stock.Where(board => board.Status == BoardStatus.Free)
            .Select(board => new Source(board.Kind, board.Species, board.Surface, board.Appearance, board.Size, board.Defects.Count == 0, false))
            .Concat(problem.Offers.Where(offer => offer.Available != 0).SelectMany(offer => OfferSize.Of(offer).Select(size =>
                new Source(offer.Kind, offer.Species, offer.Surface, offer.Appearance, size.Size, true, offer.Available is null))));

    /// <summary>Why this cannot give one such blank; too few if it can.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="species">The species accepted.</param>
    /// <param name="appearance">The least appearance accepted.</param>
    /// <param name="thickness">Finished thickness.</param>
    /// <param name="length">What the blank takes along the board.</param>
    /// <param name="width">What it takes across the board.</param>
    /// <param name="blankWidth">Its own width, for the machines.</param>
    public MissingReason Refuses(
        Shop shop, IReadOnlyList<string> species, Appearance appearance, Length thickness, Length length, Length width, Length blankWidth) =>
        !species.Contains(Species) ? MissingReason.NoSuchSpecies
        : Appearance > appearance ? MissingReason.NotGoodEnough
        : !Milling.SuitsThickness(shop, Kind, Surface, Size.Thickness, thickness) ? MissingReason.WrongThickness
        : Milling.WidestBlank(shop, Kind, Surface, Size.Thickness, thickness) is { } widest && blankWidth > widest ? MissingReason.TooWideForMachines
        : length > Size.Length ? MissingReason.TooShort
        : width > Size.Width ? MissingReason.TooNarrow
        : MissingReason.TooFew;
}
