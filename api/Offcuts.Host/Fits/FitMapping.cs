using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Plans;
using Offcuts.Planning.Fitting;
using Offcuts.Storage;

namespace Offcuts.Host.Fits;

/// <summary>Rankings from the domain to the wire.</summary>
internal sealed class FitMapping(FitStock stock, FitQuestion question, SpeciesCatalogue catalogue)
{
    private readonly string currency = stock.Shop.Shop.Currency;
    private readonly FitText text = new(stock.Shop.Shop, stock.Shop.Offers, catalogue.NameOf);
    private readonly Dictionary<string, Offer> offers = stock.Shop.Offers.ToDictionary(offer => offer.Id, StringComparer.Ordinal);

    public FitRecord ToRecord(FitPlace place)
    {
        var (design, outcome, figures) = (place.Design.Design, place.Outcome, place.Figures);
        // Names and sizes of all that comes close, not only of what the design can use.
        var problem = stock.Shop with { Design = design };
        var purchases = StepPrices.Priced([.. outcome.Purchases.Select(ToPurchase)]);
        return new FitRecord(
            place.Number, place.Design.Reference, design.Name, place.Design.Version,
            InCurrency(outcome.Cost), InCurrency(outcome.WoodCost), InCurrency(outcome.WoodBound), InCurrency(outcome.ItemCost),
            decimal.Round(figures.ShareFromStock, 4), CubicMetres(figures.BoardFeetFromStock), InCurrency(new Money((long)decimal.Floor(figures.Eaten))),
            place.IsSure, text.Lacks(outcome, design),
            [.. outcome.Uses.Select(use => new FitBoardRecord(use.BoardId, use.Count, CubicMetres(use.BoardFeet)))],
            [.. purchases.Select(purchase => ResultMapping.ToRecord(purchase, purchases, currency, catalogue))],
            [.. outcome.Missing.Select(missing => new MissingRecord(
                missing.Name, missing.Quantity, Words.Of(missing.Reason), PlanText.Of(missing, problem), missing.Closest,
                missing.Needed?.Millimetres, missing.Has?.Millimetres))],
            design.Tags.Count > 0 ? design.Tags : null, design.Hours);
    }

    public static FitProgressRecord ToRecord(FitProgress progress) =>
        new(progress.Designs, progress.LookedAt, progress.Remembered, progress.Planned);

    public FitEnd ToRecord(FitSummary summary) => new(
        Words.Of(question.Order), currency, summary.Progress.Designs, summary.Progress.Remembered, summary.Progress.Planned,
        summary.Filtered, summary.TooDear, summary.EatNone, summary.Failed, summary.IsFinished);

    private Purchase ToPurchase(FitPurchase purchase) =>
        new(OfferSize.Of(offers[purchase.OfferId]).First(size => size.Size == purchase.Size), purchase.Count);

    private decimal InCurrency(Money money) => MoneyText.ToDecimal(money, currency);

    /// <summary>A volume of the wire.</summary>
    public static decimal CubicMetres(decimal boardFeet) => decimal.Round(boardFeet * BoardMeasure.CubicMetresPerBoardFoot, 9);
}
