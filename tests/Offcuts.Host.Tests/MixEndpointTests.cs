using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

// Mixes of designs, through the real planner and auditor.
public sealed class MixEndpointTests(Service service) : IClassFixture<Service>
{
    private const string Stock = """
        "inline":{"stock":[{"id":"A","kind":"sheet","species":"birch-plywood","thicknessMm":18,"widthMm":300,"lengthMm":1000,"quantity":2,"surface":"surfaced"}],
         "offers":[],"shop":{"unit":"millimetre","kerfMm":3,"factoryEdgeTrimMm":0,"sheet":{"thicknessMm":0,"widthMm":0,"lengthMm":0}}}
        """;

    [Fact]
    public async Task The_best_mix_of_stored_designs_is_found_and_proved()
    {
        await StoreAsync("Mix half", 490);
        await StoreAsync("Mix third", 330);
        var answer = await MixAsync($$"""{"designs":[{"design":"mix-half"},{"design":"mix-third","least":1}],{{Stock}} }""");

        // By hand: a sheet takes two of 490 and a kerf (983), three of 330 and two kerfs (996), or one of each (823) with nothing more beside them.
        Assert.True(answer.GetProperty("sure").GetBoolean());
        Assert.Equal([0, 6], answer.GetProperty("designs").EnumerateArray().Select(design => design.GetProperty("copies").GetInt32()));
        var best = answer.GetProperty("best");
        Assert.Equal(6, best.GetProperty("pieces").GetInt32());
        Assert.Equal(answer.GetProperty("buildsWorthAtMost").GetDecimal(), best.GetProperty("buildsWorth").GetDecimal());
        Assert.Equal(6 * 0.018m * 0.3m * 0.33m, best.GetProperty("buildsM3").GetDecimal(), 6);
        Assert.Equal((2, 2), (best.GetProperty("free").GetProperty("boards").GetInt32(), best.GetProperty("cut").GetProperty("boards").GetInt32()));
        Assert.Equal(0.018m * 0.3m * 2, best.GetProperty("cut").GetProperty("volumeM3").GetDecimal(), 6);
        Assert.Equal(0, best.GetProperty("back").GetProperty("boards").GetInt32());
        Assert.Equal(6 * 0.018m * 0.3m * 0.33m, best.GetProperty("boards").EnumerateArray().Sum(board => board.GetProperty("partsM3").GetDecimal()), 6);

        var most = await MixAsync($$"""{"designs":[{"design":"mix-half"},{"design":"mix-third","most":3}],{{Stock}} }""");
        Assert.Equal([2, 3], most.GetProperty("designs").EnumerateArray().Select(design => design.GetProperty("copies").GetInt32()));
        var tagged = await MixAsync($$"""{"tags":["mixed"],{{Stock}} }""");
        Assert.Equal(["mix-half", "mix-third"], tagged.GetProperty("designs").EnumerateArray().Select(design => design.GetProperty("reference").GetString()));
        Assert.Equal([0, 6], tagged.GetProperty("designs").EnumerateArray().Select(design => design.GetProperty("copies").GetInt32()));
        var none = await MixAsync($$"""{"designs":[{"design":"mix-half","least":5},{"design":"mix-third"}],{{Stock}} }""");
        Assert.True(none.GetProperty("sure").GetBoolean());
        Assert.Equal(JsonValueKind.Null, none.GetProperty("best").ValueKind);
    }

    [Theory]
    [InlineData("\"designs\":[{\"design\":\"mix-a\"}]", "#/designs")]
    [InlineData("\"budgetMs\":2000", "#/designs")]
    [InlineData("\"designs\":[{\"design\":\"mix-a\"},{\"design\":\"mix-a\"}]", "#/designs/1")]
    [InlineData("\"designs\":[{\"design\":\"mix-a\",\"least\":3,\"most\":2},{\"design\":\"mix-b\"}]", "#/designs/0/most")]
    [InlineData("\"designs\":[{\"design\":\"mix-a\",\"least\":-1},{\"design\":\"mix-b\"}]", "#/designs/0/least")]
    [InlineData("\"designs\":[{\"design\":\"mix-a\"},{\"design\":\"mix-b\"}],\"tags\":[\"x\"]", "#/tags")]
    [InlineData("\"tags\":[\"nobody has this\"]", "#/tags")]
    [InlineData("\"tags\":[]", "#/tags")]
    [InlineData("\"designs\":[{\"design\":\"mix-a\"},{\"design\":\"mix-b\"}],\"budgetMs\":1", "#/budgetMs")]
    public async Task A_question_that_cannot_be_is_refused(string asked, string pointer)
    {
        await StoreAsync("Mix a", 400, "other");
        await StoreAsync("Mix b", 300, "other");
        var answer = await service.SendAsync("POST", "/v1/mixes", $$"""{ {{asked}} }""");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }

    [Fact]
    public async Task Builds_that_are_not_there_are_named()
    {
        var answer = await service.SendAsync("POST", "/v1/mixes", """{"designs":[{"design":"nobody"},{"design":"no one"}]}""");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        const string Inline = """
            "inline":{"stock":[],"shop":{},"builds":["Peg","Rail"],"design":{"name":"Both","parts":[
             {"name":"Peg: peg","thicknessMm":19,"widthMm":60,"lengthMm":300,"species":["white-ash"]},{"name":"Rail: rail","thicknessMm":19,"widthMm":60,"lengthMm":500,"species":["white-ash"]}]}}
            """;
        var build = await service.SendAsync("POST", "/v1/mixes", $$"""{"designs":[{"design":"Pegs"}],{{Inline}} }""");
        Assert.Equal(HttpStatusCode.BadRequest, build.StatusCode);
        Assert.Equal("#/designs/0/design", await Service.PointerAsync(build));
        var twice = await service.SendAsync("POST", "/v1/mixes", $$"""{"designs":[{"design":"Peg","most":1},{"design":"Peg","most":3}],{{Inline}} }""");
        Assert.Equal("#/designs/1", await Service.PointerAsync(twice));
        var tagged = await service.SendAsync("POST", "/v1/mixes", $$"""{"tags":["gift"],{{Inline}} }""");
        Assert.Equal((HttpStatusCode.BadRequest, "#/tags"), (tagged.StatusCode, await Service.PointerAsync(tagged)));
        var empty = await MixAsync($$"""{ {{Inline}} }""");
        Assert.True(empty.GetProperty("sure").GetBoolean());
        Assert.Equal(JsonValueKind.Null, empty.GetProperty("best").ValueKind);
    }

    private async Task StoreAsync(string name, int length, string tag = "mixed") => await service.SendAsync("POST", "/v1/designs", $$"""
        {"name":"{{name}}","tags":["{{tag}}"],"parts":[{"name":"shelf","thicknessMm":18,"widthMm":300,"lengthMm":{{length}},"species":["birch-plywood"]}]}
        """);

    private async Task<JsonElement> MixAsync(string asked) => await Service.ReadAsync(await service.SendAsync("POST", "/v1/mixes", asked), HttpStatusCode.OK);
}
