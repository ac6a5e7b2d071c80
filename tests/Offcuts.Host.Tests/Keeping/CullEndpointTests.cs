using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

public sealed class CullEndpointTests : OwnService
{
    [Fact]
    public async Task What_may_go_is_suggested_with_its_reasons_and_nothing_is_changed()
    {
        Assert.Equal(0, (await Service.GetAsync("/v1/cull")).GetProperty("items").GetArrayLength());
        await AddAsync("white-ash", 19.05m, 100, 900);
        await AddAsync("white-ash", 19.05m, 100, 200);
        await AddAsync("black-walnut", 19.05m, 100, 900);
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/board-imports", """
            boards:
              - {species: white ash, size: 3/4in x 4in x 30in, surface: surfaced, logged: 2020-01-01, place: loft}
            """, "application/yaml"), HttpStatusCode.Created);
        var journal = (await Service.GetAsync("/v1/journal")).GetProperty("items").GetArrayLength();

        var withoutDesigns = await Service.GetAsync("/v1/cull");
        Assert.Equal((0, 2), (withoutDesigns.GetProperty("designs").GetInt32(), withoutDesigns.GetProperty("suggested").GetInt32()));
        await Service.ReadAsync(await Service.SendAsync(
            "POST", "/v1/designs", """{"name":"Rail","parts":[{"name":"rail","thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}"""), HttpStatusCode.Created);

        var cull = await Service.GetAsync("/v1/cull");
        Assert.Equal(
            ["breaks-rule,fits-nothing", "old", "fits-nothing"],
            cull.GetProperty("items").EnumerateArray().OrderByDescending(item => item.GetProperty("reasons").GetArrayLength())
                .ThenBy(item => item.GetProperty("board").GetProperty("species").GetString() == "black-walnut").Select(Codes));
        var walnut = cull.GetProperty("items").EnumerateArray().Single(item => item.GetProperty("board").GetProperty("species").GetString() == "black-walnut");
        Assert.Equal("no part of the saved design can be cut from it", walnut.GetProperty("reasons")[0].GetProperty("text").GetString());
        Assert.Equal(0.00171450m, walnut.GetProperty("volumeM3").GetDecimal());
        Assert.Equal(
            cull.GetProperty("items").EnumerateArray().Sum(item => item.GetProperty("worth").GetDecimal()), cull.GetProperty("worth").GetDecimal());

        Assert.Equal(1, (await Service.GetAsync("/v1/cull?top=1")).GetProperty("items").GetArrayLength());
        Assert.Equal(2, (await Service.GetAsync("/v1/cull?freeM3=0.001")).GetProperty("items").GetArrayLength());
        Assert.Equal(2, (await Service.GetAsync("/v1/cull?olderThanDays=36500")).GetProperty("suggested").GetInt32());
        Assert.Equal(journal, (await Service.GetAsync("/v1/journal")).GetProperty("items").GetArrayLength());
    }

    [Fact]
    public async Task Designs_that_cannot_be_read_any_more_are_named_and_the_others_count()
    {
        await AddAsync("white-ash", 19.05m, 100, 900);
        foreach (var (name, price) in new[] { ("Old rail", "0.50"), ("Rail", "1") })
        {
            await Service.ReadAsync(
                await Service.SendAsync("POST", "/v1/designs", $$"""
                    {"name":"{{name}}","parts":[{"name":"rail","thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"]}],
                     "items":[{"name":"screws","quantity":1,"unitPrice":{{price}}}]}
                    """),
                HttpStatusCode.Created);
        }

        Assert.Equal(0, (await Service.GetAsync("/v1/cull")).GetProperty("unreadable").GetArrayLength());

        // There is no half yen.
        await Service.ReadAsync(await Service.SendAsync("PUT", "/v1/shop", """{"currency":"JPY"}"""), HttpStatusCode.OK);
        var cull = await Service.GetAsync("/v1/cull");
        Assert.Equal("old-rail", Assert.Single(cull.GetProperty("unreadable").EnumerateArray()).GetString());
        Assert.Equal((1, 0), (cull.GetProperty("designs").GetInt32(), cull.GetProperty("suggested").GetInt32()));
    }

    [Fact]
    public async Task A_place_beyond_its_limit_is_told_with_how_much()
    {
        await AddAsync("white-ash", 20, 100, 900, "bin");
        await AddAsync("white-ash", 20, 100, 1000, "bin");
        await AddAsync("white-ash", 20, 100, 1000, "rack");
        await Service.SendAsync("PUT", "/v1/places/bin", """{"limitM3":0.003}""");
        await Service.SendAsync("PUT", "/v1/shop", """{"unit":"millimetre"}""");
        var item = Assert.Single((await Service.GetAsync("/v1/cull")).GetProperty("items").EnumerateArray());
        Assert.Equal(900, item.GetProperty("board").GetProperty("lengthMm").GetDecimal());
        Assert.Equal(
            "bin holds 0.0038 m³, 0.0008 m³ more than its limit, and this is worth least there", item.GetProperty("reasons")[0].GetProperty("text").GetString());
    }

    [Theory]
    [InlineData("?top=0", "?top")]
    [InlineData("?top=many", "?top")]
    [InlineData("?freeM3=-1", "?freeM3")]
    [InlineData("?freeM3=0", "?freeM3")]
    [InlineData("?olderThanDays=99999", "?olderThanDays")]
    [InlineData("?place=bin", "?place")]
    public async Task Wrong_parameters_are_told(string query, string pointer)
    {
        var answer = await Service.SendAsync("GET", $"/v1/cull{query}");
        Assert.Equal((HttpStatusCode.BadRequest, pointer), (answer.StatusCode, await Service.PointerAsync(answer)));
    }

    private static string Codes(JsonElement item) => string.Join(',', item.GetProperty("reasons").EnumerateArray().Select(reason => reason.GetProperty("code").GetString()));

    private async Task AddAsync(string species, decimal thickness, decimal width, decimal length, string? place = null) => await Service.ReadAsync(
        await Service.SendAsync("POST", "/v1/boards", FormattableString.Invariant(
            $$"""{"species":"{{species}}","thicknessMm":{{thickness}},"widthMm":{{width}},"lengthMm":{{length}},"surface":"surfaced"{{(place is null ? "" : $",\"place\":\"{place}\"")}}}""")),
        HttpStatusCode.Created);
}
