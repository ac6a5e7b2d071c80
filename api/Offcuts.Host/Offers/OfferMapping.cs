using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Offers;

/// <summary>Offers between the wire and the domain.</summary>
internal static class OfferMapping
{
    /// <summary>An entry of a supplier's list, with the id that it has or gets.</summary>
    public static OfferRecord WithId(OfferEntry entry, string supplier, string? supplierName, int index) => new(
        entry.Id ?? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{supplier}/{index + 1}"),
        supplier, entry.Species, entry.ThicknessMm, entry.Name, entry.Kind, entry.Surface, entry.Appearance,
        entry.ByThePiece, entry.ByRunningLength, entry.ByVolume, entry.Available, supplierName, Steps: entry.Steps);

    public static Offer ToOffer(OfferRecord record, SpeciesCatalogue catalogue, string currency, string at, Faults faults)
    {
        faults.Text($"{at}/id", record.Id, 2 * Limits.MaxName, required: true);
        faults.Text($"{at}/supplier", record.Supplier, Limits.MaxName, required: true);
        faults.Text($"{at}/supplierName", record.SupplierName, Limits.MaxName);
        faults.Text($"{at}/name", record.Name, Limits.MaxName);
        var offer = new Offer
        {
            Id = record.Id,
            Supplier = record.Supplier,
            SupplierName = record.SupplierName,
            Name = record.Name,
            Kind = faults.Word<BoardKind>($"{at}/kind", record.Kind),
            Species = faults.Species($"{at}/species", record.Species, catalogue),
            Thickness = faults.Millimetres($"{at}/thicknessMm", record.ThicknessMm),
            Surface = faults.Word<Surface>($"{at}/surface", record.Surface),
            Appearance = faults.Word<Appearance>($"{at}/appearance", record.Appearance),
            Form = ToForm(record, currency, at, faults),
            Steps = ToSteps(record, currency, at, faults),
            Available = record.Available is { } available ? faults.Count($"{at}/available", available, 0, Limits.MaxQuantity) : null,
        };
        faults.AddRules(
            at, () => OfferRules.Check(offer), ("/thickness", "/thicknessMm"), ("/piece", "/byThePiece"), ("/running", "/byRunningLength"),
            ("/random", "/byVolume"), ("/widths", "/widthsMm"), ("/lengths", "/lengthsMm"));
        return offer;
    }

    public static OfferRecord ToRecord(Offer offer, string currency)
    {
        var record = new OfferRecord(
            offer.Id, offer.Supplier, offer.Species, offer.Thickness.Millimetres, offer.Name, Words.Of(offer.Kind),
            Words.Of(offer.Surface), Words.Of(offer.Appearance), Available: offer.Available, SupplierName: offer.SupplierName,
            Steps: offer.Steps.Count == 0 ? null : [.. offer.Steps.Select(step => new PriceStepRecord(step.From, MoneyText.ToDecimal(step.Price, currency)))]);
        return offer.Form switch
        {
            ByThePiece piece => record with
            {
                ByThePiece = new(piece.Width.Millimetres, piece.Length.Millimetres, MoneyText.ToDecimal(piece.PricePerPiece, currency)),
            },
            ByRunningLength running => record with
            {
                ByRunningLength = new(running.Width.Millimetres, Millimetres(running.Lengths), MoneyText.ToDecimal(running.Price, currency), Words.Of(running.Unit)),
            },
            ByVolume volume => record with
            {
                ByVolume = new(Millimetres(volume.Widths), Millimetres(volume.Lengths), MoneyText.ToDecimal(volume.Price, currency), Words.Of(volume.Unit)),
            },
            _ => throw new ArgumentException($"Unknown form of offer {offer.Id}.", nameof(offer)),
        };
    }

    /// <summary>What a supplier asks beyond its prices; null where that is nothing.</summary>
    public static TermsRecord? ToRecord(SupplierTerms terms, string currency) =>
        terms.Any ? new TermsRecord(MoneyText.ToDecimal(terms.Delivery, currency), MoneyText.ToDecimal(terms.MinimumOrder, currency)) : null;

    /// <summary>The terms as they are stored.</summary>
    public static TermsRecord? ReadTerms(string? stored) => stored is null ? null : JsonSerializer.Deserialize(stored, WireJson.Default.TermsRecord);

    /// <summary>What a supplier asks beyond its prices.</summary>
    public static SupplierTerms ToTerms(string supplier, TermsRecord? record, string currency, string at, Faults faults) => record is null ? new SupplierTerms(supplier) : new(supplier)
    {
        Delivery = faults.Money($"{at}/delivery", record.Delivery, currency),
        MinimumOrder = faults.Money($"{at}/minimumOrder", record.MinimumOrder, currency),
    };

    private static List<PriceStep> ToSteps(OfferRecord record, string currency, string at, Faults faults) =>
        [.. faults.Entries($"{at}/steps", record.Steps, Limits.MaxSteps).Select(step => new PriceStep(
            step.Entry.From, faults.Money($"{at}/steps/{step.Index}/price", step.Entry.Price, currency)))];

    private static OfferForm ToForm(OfferRecord record, string currency, string at, Faults faults)
    {
        switch (record)
        {
            case { ByThePiece: { } piece, ByRunningLength: null, ByVolume: null }:
                at += "/byThePiece";
                return new ByThePiece(
                    faults.Millimetres($"{at}/widthMm", piece.WidthMm),
                    faults.Millimetres($"{at}/lengthMm", piece.LengthMm),
                    faults.Money($"{at}/price", piece.Price, currency));
            case { ByThePiece: null, ByRunningLength: { } running, ByVolume: null }:
                at += "/byRunningLength";
                return new ByRunningLength(
                    faults.Millimetres($"{at}/widthMm", running.WidthMm),
                    Sizes($"{at}/lengthsMm", running.LengthsMm, faults),
                    faults.Money($"{at}/price", running.Price, currency),
                    faults.Word<RunningUnit>($"{at}/unit", running.Unit));
            case { ByThePiece: null, ByRunningLength: null, ByVolume: { } volume }:
                at += "/byVolume";
                return new ByVolume(
                    Sizes($"{at}/widthsMm", volume.WidthsMm, faults),
                    Sizes($"{at}/lengthsMm", volume.LengthsMm, faults),
                    faults.Money($"{at}/price", volume.Price, currency),
                    faults.Word<VolumeUnit>($"{at}/unit", volume.Unit));
            default:
                faults.Add(at, "Give exactly one of byThePiece, byRunningLength and byVolume.");
                return new ByThePiece(Length.Zero, Length.Zero, Money.Zero);
        }
    }

    private static List<Length> Sizes(string at, IReadOnlyList<decimal> values, Faults faults)
    {
        if (values.Count is < 1 or > Limits.MaxSizes)
        {
            faults.Add(at, $"There are {values.Count} sizes: give 1 to {Limits.MaxSizes}.");
            return [];
        }

        return [.. values.Select((value, index) => faults.Millimetres($"{at}/{index}", value))];
    }

    private static decimal[] Millimetres(IReadOnlyList<Length> sizes) => [.. sizes.Select(size => size.Millimetres)];
}
