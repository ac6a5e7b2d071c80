using System.Net;

namespace Offcuts.Host.Tests;

public sealed class OfferEndpointsTests(Service service) : IClassFixture<Service>
{
    private const string Two = """
        {"offers":[{"species":"white ash","thicknessMm":25.4,"byVolume":{"widthsMm":[152.4],"lengthsMm":[2438.4],"price":6.2,"unit":"board-foot"}},
         {"id":"riverbend/ply","species":"birch plywood","kind":"sheet","thicknessMm":12.7,"surface":"surfaced","byThePiece":{"widthMm":1219.2,"lengthMm":2438.4,"price":71},"available":4}]}
        """;

    [Fact]
    public async Task A_price_list_replaces_the_suppliers_offers()
    {
        var first = await Service.ReadAsync(await service.SendAsync("PUT", "/v1/price-lists/riverbend", Two), HttpStatusCode.Created);
        Assert.Equal(first.GetRawText(), (await service.GetAsync("/v1/price-lists/riverbend")).GetRawText());
        Assert.Equal("riverbend/1", first.GetProperty("offers")[0].GetProperty("id").GetString());
        Assert.Equal("white-ash", first.GetProperty("offers")[0].GetProperty("species").GetString());
        var list = Assert.Single((await service.GetAsync("/v1/price-lists")).GetProperty("items").EnumerateArray());
        Assert.Equal(2, list.GetProperty("offers").GetInt32());
        Assert.Single((await service.GetAsync("/v1/offers?kind=sheet&maxThicknessMm=12.7")).GetProperty("items").EnumerateArray());
        Assert.Empty((await service.GetAsync("/v1/offers?minThicknessMm=25.5")).GetProperty("items").EnumerateArray());

        var page = await service.Client.GetAsync("/v1/offers?limit=1");
        var next = page.Headers.GetValues("Link").Single().Split('<', '>')[1];
        Assert.Equal("riverbend/ply", (await service.GetAsync(next)).GetProperty("items")[0].GetProperty("id").GetString());

        var taken = await service.SendAsync("PUT", "/v1/price-lists/hill-yard", Two);
        Assert.Equal(HttpStatusCode.Conflict, taken.StatusCode);
        Assert.Equal("#/offers/1/id", await Service.PointerAsync(taken));
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("GET", "/v1/price-lists/hill-yard")).StatusCode);

        await Service.ReadAsync(await service.SendAsync("PUT", "/v1/price-lists/riverbend", Two), HttpStatusCode.OK);
        Assert.Equal(HttpStatusCode.NoContent, (await service.SendAsync("DELETE", "/v1/price-lists/riverbend")).StatusCode);
        Assert.Empty((await service.GetAsync("/v1/offers")).GetProperty("items").EnumerateArray());
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("DELETE", "/v1/price-lists/riverbend")).StatusCode);
    }

    [Theory]
    [InlineData("\"unit\":\"board-foot\"", "\"unit\":\"foot\"", "#/offers/0/byVolume/unit")]
    [InlineData("\"widthsMm\":[152.4]", "\"widthsMm\":[]", "#/offers/0/byVolume/widthsMm")]
    [InlineData("\"widthsMm\":[152.4]", "\"widthsMm\":[152.4,152.4]", "#/offers/0/byVolume/widthsMm")]
    [InlineData("\"price\":71", "\"price\":-71", "#/offers/1/byThePiece/price")]
    [InlineData("\"byThePiece\"", "\"byRunningLength\":null,\"byThePiece\":null,\"byVolume\"", "#/offers/1/byVolume/widthMm")]
    [InlineData("riverbend/ply", "riverbend/1", "#/offers/1/id")]
    [InlineData("\"available\":4", "\"available\":-1", "#/offers/1/available")]
    public async Task A_wrong_price_list_is_refused_with_the_place_named(string right, string wrong, string pointer)
    {
        var answer = await service.SendAsync("PUT", "/v1/price-lists/riverbend", Two.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }

    [Fact]
    public async Task A_document_names_its_supplier_and_its_path_may_not_contradict_it()
    {
        const string Document = """
            supplier: Stony Ford Lumber
            offers:
              - species: cherry
                thickness: 4/4
                random: {widths: [6in], lengths: [8ft], price per board foot: 7.50}
            """;
        var stored = await service.SendAsync("POST", "/v1/price-lists", Document, "application/yaml");
        var list = await Service.ReadAsync(stored, HttpStatusCode.Created);
        Assert.Equal("/v1/price-lists/stony-ford-lumber", stored.Headers.Location!.ToString());
        Assert.Equal("stony-ford-lumber", list.GetProperty("supplier").GetString());
        Assert.Equal("Stony Ford Lumber", list.GetProperty("supplierName").GetString());
        var known = (await service.GetAsync("/v1/price-lists")).GetProperty("items").EnumerateArray()
            .Single(item => item.GetProperty("supplier").GetString() == "stony-ford-lumber");
        Assert.Equal("Stony Ford Lumber", known.GetProperty("supplierName").GetString());
        Assert.Equal("Stony Ford Lumber", (await service.GetAsync("/v1/price-lists/stony-ford-lumber")).GetProperty("supplierName").GetString());
        var elsewhere = await service.SendAsync("PUT", "/v1/price-lists/stony-ford", Document, "application/yaml");
        Assert.Equal("#/supplier", await Service.PointerAsync(elsewhere));
        await service.SendAsync("DELETE", "/v1/price-lists/stony-ford-lumber");
    }

    [Fact]
    public async Task Species_are_told_by_name_and_found_by_any_of_their_names()
    {
        await service.SendAsync("PUT", "/v1/price-lists/name-yard", """{"supplier":"Name-Yard","offers":[{"species":"black-walnut","thicknessMm":25.4,"byThePiece":{"widthMm":100,"lengthMm":900,"price":9}}]}""");

        var offer = Assert.Single((await service.GetAsync("/v1/offers?species=Walnut&supplier=name-yard")).GetProperty("items").EnumerateArray());
        Assert.Equal(("black-walnut", "black walnut", "Name-Yard"), (
            offer.GetProperty("species").GetString(), offer.GetProperty("speciesName").GetString(), offer.GetProperty("supplierName").GetString()));
        Assert.Equal("?species", await Service.PointerAsync(await service.SendAsync("GET", "/v1/offers?species=walnt")));
        Assert.Equal("?species", await Service.PointerAsync(await service.SendAsync("GET", "/v1/boards?species=walnt")));
        await service.SendAsync("DELETE", "/v1/price-lists/name-yard");
    }

    [Fact]
    public async Task A_supplier_that_no_path_can_name_is_refused() =>
        Assert.Equal(HttpStatusCode.BadRequest, (await service.SendAsync("PUT", "/v1/price-lists/River%20Bend", Two)).StatusCode);
}
