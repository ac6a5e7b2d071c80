using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

public sealed class FindEndpointTests : OwnService
{
    [Fact]
    public async Task A_piece_is_found_as_it_is_said_with_what_is_left_over_and_where_it_lies()
    {
        var ids = await LogAsync("1 x 6 x 60 ash, rack 2\n1 x 6 x 21 ash, loft\n1 x 6 x 21 walnut\n3/4 x 6 x 60 ash");
        await Service.SendAsync("PUT", "/v1/places/loft", """{"reach":"buried"}""");

        var found = await FindAsync("text=ash 3/4 x 5 x 20");
        Assert.Equal("white ash, 3/4 x 5 x 20 in finished", found.GetProperty("understood").GetString());
        var items = found.GetProperty("items").EnumerateArray().ToList();
        Assert.Equal([ids[0], ids[1]], items.Select(item => item.GetProperty("board").GetProperty("id").GetString()!));
        Assert.Equal(["easy", "buried"], items.Select(item => item.GetProperty("reach").GetString()!));
        Assert.Equal((2, 3L), (found.GetProperty("boards").GetInt32(), found.GetProperty("gives").GetInt64()));
        // 60 in less a blank of 20 1/2 in and a kerf of 1/8 in.
        Assert.Equal(39.375m * 25.4m, Assert.Single(items[0].GetProperty("leftovers").EnumerateArray()).GetProperty("lengthMm").GetDecimal());
        Assert.Empty(found.GetProperty("nearest").EnumerateArray());

        // The same by sizes, and in other orders of words; what is said restricts.
        Assert.Equal(Bare(found), Bare(await FindAsync("species=white-ash&thicknessMm=19.05&widthMm=127&lengthMm=508")));
        Assert.Equal(Bare(found), Bare(await FindAsync("text=20 long, 3/4 thick, 5 wide, wh ash")));
        Assert.Equal([ids[1]], Ids(await FindAsync("text=ash 3/4 x 5 x 20, loft")));
        Assert.Equal([ids[1]], Ids(await FindAsync("text=ash 3/4 x 5 x 20&place=loft")));
        Assert.Equal([ids[0]], Ids(await FindAsync("text=ash 3/4 x 5 x 20&limit=1")));
        Assert.Equal(2, (await FindAsync("text=2 @ 3/4 x 5 x 20 ash")).GetProperty("items")[0].GetProperty("cut").GetInt32());
    }

    [Fact]
    public async Task Where_none_gives_it_the_nearest_are_told_with_what_they_lack()
    {
        var ids = await LogAsync("1 x 6 x 36 walnut, rack 2\n3/4 x 6 x 60 walnut");
        var found = await FindAsync("text=walnut 3/4 x 5 x 36");
        Assert.Empty(found.GetProperty("items").EnumerateArray());
        var near = found.GetProperty("nearest").EnumerateArray().ToList();
        // 1/2 in of 36 1/2 in is a smaller share than 3/16 in of 15/16 in.
        Assert.Equal(ids, near.Select(item => item.GetProperty("board").GetProperty("id").GetString()!));
        Assert.Equal("too short by 1/2\" (takes 36 1/2\", has 36\")", near[0].GetProperty("text").GetString());
        var lack = Assert.Single(near[1].GetProperty("lacks").EnumerateArray());
        Assert.Equal(("wrong-thickness", 0.9375m * 25.4m, 19.05m), (lack.GetProperty("reason").GetString(), lack.GetProperty("neededMm").GetDecimal(), lack.GetProperty("hasMm").GetDecimal()));
        Assert.Empty((await FindAsync("text=cherry 3/4 x 5 x 36")).GetProperty("nearest").EnumerateArray());
    }

    [Fact]
    public async Task What_a_plan_holds_is_not_found()
    {
        var id = (await LogAsync("1 x 6 x 48 ash"))[0];
        const string Rail = """{"budgetMs":2000,"inline":{"offers":[],"design":{"name":"Rail","parts":[{"name":"rail","thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}}}""";
        var plan = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/plans", Rail, prefer: "wait=15"), HttpStatusCode.Created);
        Assert.Equal([id], Ids(await FindAsync("text=ash 3/4 x 2 x 20")));
        await Service.ReadAsync(await Service.SendAsync("POST", $"/v1/plans/{plan.GetProperty("id").GetString()}/acceptance"), HttpStatusCode.OK);
        Assert.Empty(Ids(await FindAsync("text=ash 3/4 x 2 x 20")));
    }

    [Theory]
    [InlineData("text=ash 3/4 x 5", "?text")]
    [InlineData("text=wallnut 3/4 x 5 x 36", "?text")]
    [InlineData("text=ash 3/4 x 5 x ~36", "?text")]
    [InlineData("text=ash 3/4 x 5 x 36, split 3in end", "?text")]
    [InlineData("text=rack 2", "?text")]
    [InlineData("text=", "?text")]
    [InlineData("text=ash 3/4 x 5 x 36&species=ash", "?species")]
    [InlineData("species=white-ash&thicknessMm=19&widthMm=100", "?lengthMm")]
    [InlineData("species=white-ash&thicknessMm=0&widthMm=100&lengthMm=100", "?thicknessMm")]
    [InlineData("text=ash 3/4 x 5 x 36&quantity=0", "?quantity")]
    [InlineData("text=ash 3/4 x 5 x 36&grain=any", "?grain")]
    [InlineData("text=ash 3/4 x 5 x 36&limit=501", "?limit")]
    [InlineData("text=ash 3/4 x 5 x 36&size=1", "?size")]
    public async Task What_is_no_piece_is_refused_with_the_place_named(string query, string pointer)
    {
        var answer = await Service.Client.GetAsync(new Uri($"/v1/boards/find?{query}", UriKind.Relative));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }

    private Task<JsonElement> FindAsync(string query) => Service.GetAsync($"/v1/boards/find?{query}");

    private static string Bare(JsonElement found) => found.GetProperty("items").GetRawText();

    private static IEnumerable<string> Ids(JsonElement found) =>
        found.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("board").GetProperty("id").GetString()!);

    private async Task<List<string>> LogAsync(string lines)
    {
        var logged = await Service.ReadAsync(await Service.SendAsync("POST", "/v1/board-lines", JsonSerializer.Serialize(new { text = lines })), HttpStatusCode.Created);
        return [.. logged.GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("board").GetProperty("id").GetString()!)];
    }
}
