using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Offers;

/// <summary>Offers as a person reads them.</summary>
internal static class OfferView
{
    /// <summary>A list.</summary>
    public static void Write(IReadOnlyList<OfferRecord> offers, ShopRecord shop, DisplayUnit unit, Terminal terminal)
    {
        var table = new Table("SUPPLIER", "LISTED AS", "SPECIES", ">THICK", "SURFACE", ">WIDTHS", ">LENGTHS", ">PRICE", "PER", ">LEFT");
        foreach (var offer in offers)
        {
            var (widths, lengths, price, per) = Form(offer);
            table.Add(
                offer.SupplierName ?? offer.Supplier, offer.Name ?? offer.Id, offer.SpeciesName ?? offer.Species, Thickness(offer), offer.Kind == "sheet" ? "sheet" : offer.Surface,
                Range(widths), Range(lengths), $"{Price.Of(price, shop.Currency)}{(offer.Steps is { Count: > 0 } ? " *" : "")}", per.Replace('-', ' '),
                offer.Available?.ToString(CultureInfo.InvariantCulture) ?? "any");
        }

        table.Write(terminal);
        foreach (var offer in offers.Where(offer => offer.Steps is { Count: > 0 }))
        {
            var steps = string.Join(", ", offer.Steps!.Select(step => string.Create(CultureInfo.InvariantCulture, $"{Price.Of(step.Price, shop.Currency)} from {step.From:0.####} on")));
            terminal.Out.WriteLine(SafeText.Of($"* {offer.Name ?? offer.Id}: {steps} ({Form(offer).Per.Replace('-', ' ')})"));
        }

        string Thickness(OfferRecord offer) => YardText.Thickness(
            offer.Kind == "sheet" ? BoardKind.Sheet : BoardKind.Solid, offer.Surface == "rough" ? Surface.Rough : Surface.Surfaced,
            Length.FromMillimetres(offer.ThicknessMm), unit);

        string Text(decimal millimetres) => LengthText.Format(Length.FromMillimetres(millimetres), unit);

        string Range(IReadOnlyList<decimal> sizes) => sizes.Count switch
        {
            0 => "",
            1 => Text(sizes[0]),
            _ => $"{Text(sizes.Min())} to {Text(sizes.Max())}",
        };
    }

    private static (IReadOnlyList<decimal> Widths, IReadOnlyList<decimal> Lengths, decimal Price, string Per) Form(OfferRecord offer) => offer switch
    {
        { ByThePiece: { } piece } => ([piece.WidthMm], [piece.LengthMm], piece.Price, "piece"),
        { ByRunningLength: { } running } => ([running.WidthMm], running.LengthsMm, running.Price, running.Unit),
        { ByVolume: { } volume } => (volume.WidthsMm, volume.LengthsMm, volume.Price, volume.Unit),
        _ => throw new CliException("failed", $"The offer {offer.Id} is sold in a form that this program does not know: it is older than the server."),
    };
}
