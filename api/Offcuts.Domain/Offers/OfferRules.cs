namespace Offcuts.Domain;

/// <summary>What every offer must keep, wherever it comes from.</summary>
public static class OfferRules
{
    /// <summary>Everything that is wrong with the offer, with pointers such as <c>#/thickness</c>; empty if nothing is.</summary>
    public static IReadOnlyList<InputFault> Check(Offer offer)
    {
        var faults = new FaultList();
        faults.Text("#/id", offer.Id, 2 * Limits.MaxName, required: true);
        faults.Text("#/supplier", offer.Supplier, Limits.MaxName, required: true);
        faults.Text("#/supplierName", offer.SupplierName, Limits.MaxName);
        faults.Text("#/name", offer.Name, Limits.MaxName);
        faults.Text("#/species", offer.Species, Limits.MaxName, required: true);
        faults.Size("#/thickness", "thickness", offer.Thickness);
        if (offer.Available is { } available)
        {
            faults.Count("#/available", available, 0, Limits.MaxQuantity);
        }

        CheckForm(offer, faults);
        CheckSteps(offer, faults);
        return faults.Found;
    }

    private static void CheckForm(Offer offer, FaultList faults)
    {
        switch (offer.Form)
        {
            case ByThePiece piece:
                faults.Size("#/piece", "width", piece.Width);
                faults.Size("#/piece", "length", piece.Length);
                faults.Price("#/piece", piece.PricePerPiece);
                break;
            case ByRunningLength running:
                faults.Size("#/running", "width", running.Width);
                CheckSizes("#/running/lengths", "length", running.Lengths, faults);
                faults.Price("#/running", running.Price);
                break;
            case ByVolume volume:
                CheckSizes("#/random/widths", "width", volume.Widths, faults);
                CheckSizes("#/random/lengths", "length", volume.Lengths, faults);
                faults.Price("#/random", volume.Price);
                break;
            default:
                throw new ArgumentException($"Unknown form of offer {offer.Id}.", nameof(offer));
        }

        if (offer.Kind == BoardKind.Sheet && offer.Form is not ByThePiece)
        {
            faults.Add("#", $"Sheets are sold by the piece: give their size and the price of one.");
        }
    }

    private static void CheckSteps(Offer offer, FaultList faults)
    {
        faults.Count("#/steps", offer.Steps.Count, 0, Limits.MaxSteps);
        var (from, price) = (0m, StepPrices.UnitPrice(offer));
        foreach (var (index, step) in offer.Steps.Index())
        {
            if (step.From <= from || step.From > PriceStep.MostFrom || (offer.Form is ByThePiece && step.From != decimal.Floor(step.From)))
            {
                faults.Add($"#/steps/{index}/from", $"{step.From}: give more than {from} and at most {PriceStep.MostFrom}, whole pieces of what is sold by the piece.");
            }

            if (step.Price < Money.Zero || step.Price >= price)
            {
                faults.Add($"#/steps/{index}/price", $"{step.Price.MinorUnits} minor units: give zero or more and less than the {price.MinorUnits} before it.");
            }

            (from, price) = (step.From, step.Price);
        }
    }

    private static void CheckSizes(string at, string what, IReadOnlyList<Length> sizes, FaultList faults)
    {
        faults.Count(at, sizes.Count, 1, Limits.MaxSizes);
        foreach (var (index, size) in sizes.Index())
        {
            faults.Size($"{at}/{index}", what, size);
        }

        if (sizes.Distinct().Count() < sizes.Count)
        {
            faults.Add(at, $"The same {what} is listed twice: list each once.");
        }
    }
}
