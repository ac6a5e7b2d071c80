using Offcuts.Documents;
using Xunit;

namespace Offcuts.Domain.Tests;

public class PriceListDocumentTests
{
    private const string List = """
        supplier: Mill & Son
        unit: in
        currency: USD
        offers:
          - species: ash
            thickness: 8/4
            random: {widths: [5, 6 1/2], lengths: [6ft, 8ft], price per board foot: 7.20}
            available: 3
          - name: Pine 1x8
            species: white pine
            thickness: 3/4
            surface: surfaced
            appearance: sound knots
            running: {width: 7 1/4, lengths: [6ft, 2.4m], price per foot: 1.95}
          - species: birch plywood
            thickness: 18mm
            piece: {size: 4ft x 8ft, price: 96}
          - species: ash
            thickness: 8/4
            random: {widths: [150mm], lengths: [2m], price per cubic metre: 2100.00}
        """;

    [Fact]
    public void Reads_every_form_of_offer()
    {
        var list = Parse(List);
        Assert.Equal("Mill & Son", list.Supplier);
        Assert.All(list.Offers, offer => Assert.Equal("Mill & Son", offer.Supplier));
        var (ash, pine, sheet, metric) = (list.Offers[0], list.Offers[1], list.Offers[2], list.Offers[3]);

        Assert.Equal((Length.FromInches(2), Surface.Rough, BoardKind.Solid, 3), (ash.Thickness, ash.Surface, ash.Kind, ash.Available));
        var random = Assert.IsType<ByVolume>(ash.Form);
        Assert.Equal([Length.FromInches(5), Length.FromInches(6, 1, 2)], random.Widths);
        Assert.Equal((new Money(720), VolumeUnit.BoardFoot), (random.Price, random.Unit));

        Assert.Equal((Surface.Surfaced, Appearance.SoundKnots, "Pine 1x8"), (pine.Surface, pine.Appearance, pine.Name));
        var running = Assert.IsType<ByRunningLength>(pine.Form);
        Assert.Equal([Length.FromInches(72), Length.FromMillimetres(2400)], running.Lengths);
        Assert.Equal((new Money(195), RunningUnit.Foot), (running.Price, running.Unit));

        Assert.Equal((BoardKind.Sheet, Surface.Surfaced, 18m), (sheet.Kind, sheet.Surface, sheet.Thickness.Millimetres));
        Assert.Equal(new ByThePiece(Length.FromInches(48), Length.FromInches(96), new Money(9600)), sheet.Form);
        Assert.Equal(VolumeUnit.CubicMetre, Assert.IsType<ByVolume>(metric.Form).Unit);
    }

    [Fact]
    public void Ids_are_unique_and_the_same_each_time()
    {
        string[] expected = ["mill-son/white-ash-8-4", "mill-son/pine-1x8", "mill-son/birch-plywood-18mm", "mill-son/white-ash-8-4-2"];
        Assert.Equal(expected, Parse(List).Offers.Select(offer => offer.Id));
        Assert.Equal(expected, Parse(List).Offers.Select(offer => offer.Id));
    }

    [Theory]
    [InlineData("price per board foot: 7.20", "price per board foot: 7.20, price per cubic metre: 3", "#/offers/0/random/price%20per%20cubic%20metre", 7, "exactly one of")]
    [InlineData(", price per board foot: 7.20", "", "#/offers/0/random", 7, "exactly one of")]
    [InlineData("price per board foot: 7.20", "price per bord foot: 7.20", "#/offers/0/random", 7, "exactly one of")]
    [InlineData("widths: [5, 6 1/2], ", "", "#/offers/0/random", 7, "'widths' is missing")]
    [InlineData("widths: [5, 6 1/2]", "widths: []", "#/offers/0/random/widths", 7, "1 to 100")]
    [InlineData("widths: [5, 6 1/2]", "widths: [5, 5]", "#/offers/0/random/widths", 7, "listed twice")]
    [InlineData("available: 3", "available: many", "#/offers/0/available", 8, "whole number")]
    [InlineData("piece: {size: 4ft x 8ft, price: 96}", "amount: 3", "#/offers/2", 15, "exactly one of piece, running, random")]
    [InlineData("    piece: {", "    random: {widths: [4], lengths: [8], price per board foot: 1}\n    piece: {", "#/offers/2/random", 17, "exactly one of piece, running, random")]
    [InlineData("size: 4ft x 8ft", "size: 4ft", "#/offers/2/piece/size", 17, "1 of 2 numbers")]
    [InlineData("thickness: 3/4", "thickness: 5/4", "#/offers/1/thickness", 11, "1 1/16\"")]
    [InlineData("species: white pine", "species: softwood", "#/offers/1/species", 10, "is a class")]
    [InlineData("species: birch plywood", "species: birch plywood\n    kind: solid", "#/offers/2/kind", 16, "sheet material")]
    [InlineData("species: white pine", "species: white pine\n    kind: sheet", "#/offers/1/kind", 11, "solid wood")]
    [InlineData("currency: USD", "currency: EUR", "#/currency", 3, "counts in USD")]
    [InlineData("supplier: Mill & Son", "supplier: \"&\"", "#/supplier", 1, "letter from a to z")]
    public void Names_the_place_of_each_fault(string good, string bad, string pointer, int line, string saying)
    {
        var at = List.IndexOf(good, StringComparison.Ordinal);
        Assert.True(at >= 0);
        var problem = Assert.Throws<OffcutsException>(() => Parse(List.Remove(at, good.Length).Insert(at, bad)));
        Assert.Contains(problem.Faults, fault =>
            fault.Pointer == pointer && fault.Line == line && fault.Detail.Contains(saying, StringComparison.Ordinal));
    }

    [Fact]
    public void Reads_terms_and_price_steps()
    {
        var plain = Parse(List);
        Assert.Equal((false, 0), (plain.Terms.Any, plain.Offers[0].Steps.Count));
        var list = Parse(List.Replace("offers:", "delivery: 45\nminimum order: 150.50 USD\noffers:", StringComparison.Ordinal)
            .Replace("    available: 3", "    available: 3\n    steps:\n      - {from: 50, price: 6.90}\n      - {from: 100.5, price: 6.50}", StringComparison.Ordinal));
        Assert.Equal((new Money(4500), new Money(15050)), (list.Terms.Delivery, list.Terms.MinimumOrder));
        Assert.Equal([new PriceStep(50, new Money(690)), new PriceStep(100.5m, new Money(650))], list.Offers[0].Steps);
    }

    [Theory]
    [InlineData("from: 50, price: 7.20", "price", "less than")]
    [InlineData("from: 0, price: 6.90", "from", "more than 0")]
    [InlineData("from: many, price: 6.90", "from", "not a number")]
    public void Names_a_price_step_that_cannot_be(string step, string key, string saying)
    {
        var problem = Assert.Throws<OffcutsException>(() => Parse(List.Replace("    available: 3", $"    steps: [{{{step}}}]", StringComparison.Ordinal)));
        Assert.Contains(problem.Faults, fault => fault.Pointer.EndsWith($"/0/{key}", StringComparison.Ordinal) && fault.Detail.Contains(saying, StringComparison.Ordinal));
    }

    [Fact]
    public void Sheets_are_sold_by_the_piece()
    {
        const string Text = "supplier: A\noffers:\n- {species: mdf, thickness: 18mm, running: {width: 600mm, lengths: [2m], price per metre: 5}}";
        var problem = Assert.Throws<OffcutsException>(() => Parse(Text));
        Assert.Contains("by the piece", Assert.Single(problem.Faults).Detail, StringComparison.Ordinal);
    }

    private static PriceList Parse(string text) => PriceListDocument.Parse(text, DisplayUnit.Inch, SpeciesCatalogue.Default);
}
