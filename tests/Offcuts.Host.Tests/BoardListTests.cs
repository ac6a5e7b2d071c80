using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

public sealed class BoardListTests : OwnService
{
    [Fact]
    public async Task Boards_are_found_by_length_band_and_age()
    {
        await Service.SendAsync("POST", "/v1/board-imports", "species,thickness,width,length,unit,logged\nash,1,6,20,in,2023-05-01\nash,1,6,30,in,2025-12-31\nash,1,6,40,in,2026-01-01\n", "text/csv");
        Assert.Equal([762m], await LengthsAsync("minLengthMm=508.1&maxLengthMm=1015.9"));
        Assert.Equal([508m, 762m, 1016m], await LengthsAsync("minLengthMm=508&maxLengthMm=1016"));
        Assert.Equal([508m, 762m], await LengthsAsync("loggedBefore=2026-01-01"));
        Assert.Equal([508m], await LengthsAsync("loggedBefore=2025-12-31"));
    }

    [Theory]
    [InlineData("thickness")]
    [InlineData("width")]
    [InlineData("length")]
    [InlineData("species")]
    [InlineData("place")]
    [InlineData("batch")]
    [InlineData("age")]
    public async Task A_sorted_list_has_each_board_once_over_its_pages_though_others_come_and_go(string by)
    {
        var dice = new Random(by.Length);
        var before = await LogAsync(60, dice);
        foreach (var sort in new[] { by, $"-{by}" })
        {
            var seen = new List<JsonElement>();
            var path = $"/v1/boards?sort={sort}&limit=7";
            while (path is not null)
            {
                var answer = await Service.Client.GetAsync(new Uri(path, UriKind.Relative));
                seen.AddRange((await Service.ReadAsync(answer, HttpStatusCode.OK)).GetProperty("items").EnumerateArray());
                path = answer.Headers.TryGetValues("Link", out var links) ? links.Single().Split('<', '>')[1] : null;
                await LogAsync(1, dice);
            }

            var ids = seen.Select(board => board.GetProperty("id").GetString()!).ToList();
            Assert.Distinct(ids);
            Assert.All(before, id => Assert.Contains(id, ids));
            var keys = seen.Select(board => Key(board, by)).ToList();
            Assert.Equal(keys.Order(StringComparer.Ordinal), (sort[0] == '-') == (by == "age") ? keys : Enumerable.Reverse(keys));
        }
    }

    [Fact]
    public async Task Totals_are_added_up_by_what_is_asked_and_priced_as_plans_are()
    {
        const string Offer = """{"offers":[{"species":"white ash","thicknessMm":25.4,"byVolume":{"widthsMm":[152.4],"lengthsMm":[2438.4],"price":6.2,"unit":"board-foot"}}]}""";
        await Service.SendAsync("PUT", "/v1/price-lists/riverbend", Offer);
        // 1 x 8 x 96 in are 5 1/3 board feet of which nothing is too short or too narrow: 5 1/3 x 6.20.
        await Service.SendAsync("POST", "/v1/board-imports", "species,quantity,thickness,width,length,unit,place,status\nash,3,1,8,96,in,rack 2,free\ncherry,1,1,8,96,in,,free\nash,1,1,8,96,in,rack 2,gone\n", "text/csv");

        var totals = await Service.GetAsync("/v1/boards/totals");
        Assert.Equal("species", totals.GetProperty("by").GetString());
        Assert.Equal(
            ["black cherry 1 32.00", "white ash 3 99.18"],
            totals.GetProperty("items").EnumerateArray().Select(item => $"{item.GetProperty("name").GetString()} {item.GetProperty("boards")} {item.GetProperty("worth").GetDecimal():0.00}"));
        Assert.Equal(4, totals.GetProperty("total").GetProperty("boards").GetInt32());
        // A board foot is 0.002359737216 cubic metres.
        Assert.Equal(decimal.Round(4 * 16 / 3m * 0.002359737216m, 9), totals.GetProperty("total").GetProperty("volumeM3").GetDecimal());

        var band = Assert.Single((await Service.GetAsync("/v1/boards/totals?by=length&species=ash")).GetProperty("items").EnumerateArray());
        Assert.Equal((2438.4m, JsonValueKind.Null), (band.GetProperty("fromMm").GetDecimal(), band.GetProperty("toMm").ValueKind));
        Assert.Equal(1, (await Service.GetAsync("/v1/boards/totals?status=gone")).GetProperty("total").GetProperty("boards").GetInt32());
        Assert.Empty((await Service.GetAsync("/v1/boards/totals?place=loft")).GetProperty("items").EnumerateArray());
    }

    [Theory]
    [InlineData("/v1/boards?sort=price", "?sort")]
    [InlineData("/v1/boards?sort=", "?sort")]
    [InlineData("/v1/boards?loggedBefore=yesterday", "?loggedBefore")]
    [InlineData("/v1/boards?maxLengthMm=long", "?maxLengthMm")]
    [InlineData("/v1/boards/totals?by=price", "?by")]
    [InlineData("/v1/boards/totals?sort=length", "?sort")]
    [InlineData("/v1/boards/totals?limit=5", "?limit")]
    public async Task What_cannot_be_asked_is_refused_with_the_place_named(string path, string pointer)
    {
        var answer = await Service.SendAsync("GET", path);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }

    [Fact]
    public async Task The_cursor_of_one_order_is_no_place_in_another()
    {
        await LogAsync(3, new Random(1));
        var plain = (await Service.GetAsync("/v1/boards?limit=1")).GetProperty("next").GetString();
        var sorted = (await Service.GetAsync("/v1/boards?limit=1&sort=place")).GetProperty("next").GetString();
        foreach (var path in new[] { $"/v1/boards?sort=place&cursor={plain}", $"/v1/boards?cursor={sorted}", $"/v1/boards?sort=place&cursor={sorted}A" })
        {
            Assert.Equal("?cursor", await Service.PointerAsync(await Service.SendAsync("GET", path)));
        }
    }

    private static string Key(JsonElement board, string by) => by switch
    {
        "age" => board.GetProperty("loggedAt").GetDateTimeOffset().ToString("O", System.Globalization.CultureInfo.InvariantCulture),
        "place" or "batch" => board.GetProperty(by).GetString() is { } name ? $"0{name}" : "1",
        "species" => board.GetProperty("species").GetString()!,
        _ => board.GetProperty($"{by}Mm").GetDecimal().ToString("00000.000000", System.Globalization.CultureInfo.InvariantCulture),
    };

    private async Task<IEnumerable<decimal>> LengthsAsync(string query) =>
        (await Service.GetAsync($"/v1/boards?{query}")).GetProperty("items").EnumerateArray().Select(board => board.GetProperty("lengthMm").GetDecimal());

    private async Task<List<string>> LogAsync(int count, Random dice)
    {
        string[] species = ["white-ash", "cherry", "black-walnut"];
        string?[] names = [null, "rack 2", "Rack: 3", "Brücke"];
        var items = Enumerable.Range(0, count).Select(_ => new
        {
            species = species[dice.Next(3)],
            thicknessMm = dice.Next(10, 13),
            widthMm = dice.Next(95, 105),
            lengthMm = dice.Next(990, 1010),
            place = names[dice.Next(4)],
            batch = names[dice.Next(4)],
        });
        var made = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/board-imports", JsonSerializer.Serialize(new { items })), HttpStatusCode.Created);
        return [.. made.GetProperty("items").EnumerateArray().Select(board => board.GetProperty("id").GetString()!)];
    }
}
