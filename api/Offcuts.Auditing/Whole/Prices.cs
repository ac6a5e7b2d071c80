using Offcuts.Domain;

namespace Offcuts.Auditing.Whole;

/// <summary>Rule 16: the price of a bought board is that of the last step which all that is bought of its offer reaches.</summary>
internal sealed class Prices(IReadOnlyList<SourcedCut> cuts)
{
    private const decimal MmPerFoot = 304.8m;
    private const decimal MmPerMetre = 1000m;
    private const decimal CubicMmPerBoardFoot = MmPerFoot * MmPerFoot * 25.4m;
    private const decimal CubicMmPerCubicMetre = MmPerMetre * MmPerMetre * MmPerMetre;

    private readonly Dictionary<string, decimal> amounts = cuts.Where(cut => cut.Offer is not null)
        .GroupBy(cut => cut.Offer!.Offer.Id, StringComparer.Ordinal)
        .ToDictionary(offer => offer.Key, offer => offer.Sum(cut => Amount(cut.Offer!.Offer.Form, cut.Offer.Size)), StringComparer.Ordinal);

    /// <summary>What a bought board costs.</summary>
    public Money Of(SourcedCut cut)
    {
        var (offer, size) = (cut.Offer!.Offer, cut.Offer.Size);
        var unit = UnitOf(offer.Form);
        Money? reached = null;
        foreach (var step in offer.Steps)
        {
            reached = amounts[offer.Id] >= step.From * unit ? step.Price : reached;
        }

        if (reached is not { } price)
        {
            return cut.Offer.Price;
        }

        // Volume is told in units before it is priced, running length is not: the last of 28 digits may decide what is rounded up.
        var exact = offer.Form is ByVolume ? price.MinorUnits * (Amount(offer.Form, size) / unit) : price.MinorUnits * Amount(offer.Form, size) / unit;
        return new Money((long)decimal.Ceiling(exact));
    }

    // Pieces, millimetres or cubic millimetres.
    private static decimal Amount(OfferForm form, Dimensions size) => form switch
    {
        ByRunningLength => size.Length.Millimetres,
        ByVolume => size.Thickness.Millimetres * size.Width.Millimetres * size.Length.Millimetres,
        _ => 1m,
    };

    private static decimal UnitOf(OfferForm form) => form switch
    {
        ByRunningLength running => running.Unit == RunningUnit.Foot ? MmPerFoot : MmPerMetre,
        ByVolume volume => volume.Unit == VolumeUnit.BoardFoot ? CubicMmPerBoardFoot : CubicMmPerCubicMetre,
        _ => 1m,
    };
}
