using System.Net;
using Offcuts.Domain;

namespace Offcuts.Host.Tests;

public sealed class ShopEndpointsTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task The_shop_has_defaults_until_it_is_replaced()
    {
        var standard = await service.GetAsync("/v1/shop");
        Assert.Equal(3.175m, standard.GetProperty("kerfMm").GetDecimal());
        Assert.Equal(new Shop().PlanerWidth.Millimetres, standard.GetProperty("planerWidthMm").GetDecimal());

        var put = await service.SendAsync("PUT", "/v1/shop", """{"unit":"millimetre","currency":"EUR","kerfMm":2.8,"keep":{"thicknessMm":10,"widthMm":50,"lengthMm":300}}""");
        var replaced = await Service.ReadAsync(put, HttpStatusCode.OK);
        Assert.Equal(replaced.GetRawText(), (await service.GetAsync("/v1/shop")).GetRawText());
        Assert.Equal(2.8m, replaced.GetProperty("kerfMm").GetDecimal());
        Assert.Equal(standard.GetProperty("jointerWidthMm").GetDecimal(), replaced.GetProperty("jointerWidthMm").GetDecimal());

        // What is read may be sent back as it is.
        await Service.ReadAsync(await service.SendAsync("PUT", "/v1/shop", replaced.GetRawText()), HttpStatusCode.OK);
        Assert.Equal(replaced.GetRawText(), (await service.GetAsync("/v1/shop")).GetRawText());
        await service.SendAsync("PUT", "/v1/shop", "{}");
        Assert.Equal(standard.GetRawText(), (await service.GetAsync("/v1/shop")).GetRawText());
    }

    [Theory]
    [InlineData("""{"unit":"cubit"}""", "#/unit")]
    [InlineData("""{"currency":"usd"}""", "#/currency")]
    [InlineData("""{"kerfMm":-1}""", "#/kerfMm")]
    [InlineData("""{"rough":{"lengthMm":1,"widthMm":1000,"thicknessMm":1}}""", "#/rough/widthMm")]
    [InlineData("""{"planerWidthMm":5000}""", "#/planerWidthMm")]
    [InlineData("""{"narrowestStripMm":100,"widestStripMm":50}""", "#/narrowestStripMm")]
    [InlineData("""{"sheet":{"lengthMm":0,"widthMm":0,"thicknessMm":1}}""", "#/sheet")]
    [InlineData("""{"climate":{"lowHumidityPercent":2,"highHumidityPercent":60,"temperatureCelsius":21}}""", "#/climate/lowHumidityPercent")]
    [InlineData("""{"climate":{"lowHumidityPercent":30,"highHumidityPercent":60,"temperatureCelsius":70}}""", "#/climate/temperatureCelsius")]
    [InlineData("""{"widePanelMm":0}""", "#/widePanelMm")]
    [InlineData("""{"readingDays":0}""", "#/readingDays")]
    [InlineData("""{"keep":{"thicknessMm":1,"widthMm":1}}""", "#/keep")]
    public async Task A_wrong_shop_is_refused_with_the_place_named(string json, string pointer)
    {
        var answer = await service.SendAsync("PUT", "/v1/shop", json);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }

    [Fact]
    public async Task Own_species_stand_beside_the_reference_list()
    {
        var reference = (await service.GetAsync("/v1/species")).GetProperty("items").GetArrayLength();
        Assert.Equal(SpeciesCatalogue.Default.All.Count, reference);
        const string Own = """{"id":"orchard-plum","name":"plum, orchard","aliases":["plum"],"classes":["hardwood"],"specificGravity":0.7}""";
        await Service.ReadAsync(await service.SendAsync("POST", "/v1/species", Own), HttpStatusCode.Created);
        Assert.Equal(HttpStatusCode.Conflict, (await service.SendAsync("POST", "/v1/species", Own)).StatusCode);
        var items = (await service.GetAsync("/v1/species")).GetProperty("items").EnumerateArray().ToList();
        Assert.Equal("orchard-plum", Assert.Single(items, item => item.GetProperty("own").GetBoolean()).GetProperty("id").GetString());

        var board = await service.SendAsync("POST", "/v1/boards", """{"species":"Plum","thicknessMm":25,"widthMm":100,"lengthMm":500}""");
        Assert.Equal("orchard-plum", (await Service.ReadAsync(board, HttpStatusCode.Created)).GetProperty("species").GetString());
    }

    [Theory]
    [InlineData("""{"id":"Big Plum","name":"plum"}""", "#/id")]
    [InlineData("""{"id":"plum","name":" "}""", "#/name")]
    [InlineData("""{"id":"plum","name":"plum","specificGravity":0}""", "#/specificGravity")]
    [InlineData("""{"id":"plum","name":"plum","aliases":[null]}""", "#/aliases/0")]
    public async Task A_wrong_species_is_refused_with_the_place_named(string json, string pointer)
    {
        var answer = await service.SendAsync("POST", "/v1/species", json);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }
}
