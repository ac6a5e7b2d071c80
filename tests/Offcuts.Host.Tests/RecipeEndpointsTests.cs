using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

// Resawn blanks, layers and short blanks on the wire, through a plan and its store.
public sealed class RecipeEndpointsTests(Service service) : IClassFixture<Service>
{
    /// <summary>
    /// One species for each part, so that only one board can give it. In inches: two slats of 5/8 from one blank of 8/4, a leg of 1 5/8 from two
    /// of 4/4, and three blocks of 3 in from a blank of 12 in.
    /// </summary>
    private const string Inline = """
        {"offers":[],"shop":{"unit":"inch","shortBlanks":"refuse","resawHeightMm":152.4},
         "stock":[{"id":"A","species":"red oak","thicknessMm":50.8,"widthMm":107.95,"lengthMm":622.3},
                  {"id":"B","species":"white ash","thicknessMm":25.4,"widthMm":76.2,"lengthMm":533.4},
                  {"id":"C","species":"white ash","thicknessMm":25.4,"widthMm":76.2,"lengthMm":533.4},
                  {"id":"D","species":"black walnut","thicknessMm":25.4,"widthMm":57.15,"lengthMm":304.8}],
         "design":{"name":"Three ways","parts":[
            {"name":"slat","thicknessMm":15.875,"widthMm":101.6,"lengthMm":609.6,"quantity":2,"species":["red oak"]},
            {"name":"leg","thicknessMm":41.275,"widthMm":50.8,"lengthMm":508,"layers":2,"species":["white ash"]},
            {"name":"block","thicknessMm":19.05,"widthMm":50.8,"lengthMm":76.2,"quantity":3,"species":["black walnut"]}]}}
        """;

    [Fact]
    public async Task A_plan_says_how_each_blank_becomes_its_pieces()
    {
        var run = await PlanAsync();
        var slat = Piece(run, "slat");
        Assert.Equal((2, "resaw into 2, each 3/4\" thick"), (slat.GetProperty("slices").GetInt32(), slat.GetProperty("steps").GetString()));
        Assert.Equal("""[{"copy":1,"layer":1},{"copy":2,"layer":1}]""", slat.GetProperty("copies").GetRawText());
        Assert.All(["inRow", "layers", "carried"], (string member) => Assert.Equal(JsonValueKind.Null, slat.GetProperty(member).ValueKind));

        var block = Piece(run, "block");
        Assert.Equal(
            (3, "mill as one, then cut into 3 of 3\"", 304.8m),
            (block.GetProperty("copies").GetArrayLength(), block.GetProperty("steps").GetString(), block.GetProperty("lengthMm").GetDecimal()));

        Assert.Equal((2, "glue up 2 layers of 13/16\""), (Piece(run, "leg").GetProperty("layers").GetInt32(), Piece(run, "leg").GetProperty("steps").GetString()));
        Assert.Equal(["laminated", "resawn"], run.GetProperty("plan").GetProperty("warnings").EnumerateArray().Select(Code).Where(code => code is "resawn" or "laminated").Order());
    }

    [Fact]
    public async Task A_plan_lists_the_layers_of_every_laminated_copy()
    {
        var run = await PlanAsync();
        var lamination = Assert.Single(run.GetProperty("plan").GetProperty("laminations").EnumerateArray());
        Assert.Equal(
            ("leg", 1, "white ash", 20.6375m),
            (lamination.GetProperty("part").GetString(), lamination.GetProperty("copy").GetInt32(),
                lamination.GetProperty("speciesName").GetString(), lamination.GetProperty("layerThicknessMm").GetDecimal()));
        var numbers = run.GetProperty("plan").GetProperty("boards").EnumerateArray()
            .Where(board => board.GetProperty("boardId").GetString() is "B" or "C").Select(board => board.GetProperty("number").GetInt32()).Order();
        var layers = lamination.GetProperty("layers").EnumerateArray().ToList();
        Assert.Equal([1, 2], layers.Select(layer => layer.GetProperty("layer").GetInt32()));
        Assert.Equal(numbers, layers.Select(layer => layer.GetProperty("boardNumber").GetInt32()).Order());
    }

    [Fact]
    public async Task Recipes_outlive_the_store()
    {
        // Pictures are made from what is stored.
        var run = await PlanAsync();
        var id = run.GetProperty("id").GetString();
        Assert.Equal(run.GetRawText(), (await service.GetAsync($"/v1/plans/{id}")).GetRawText());
        var sheet = (await service.Client.GetStringAsync($"/v1/plans/{id}/cut-sheet")).Replace('\u00A0', ' ');
        Assert.Contains("Layers in order: board and piece", sheet, StringComparison.Ordinal);
        Assert.All(
            ["slat #1..#2", "resaw into 2, each 3/4\" thick", "block #1..#3", "mill as one, then cut into 3 of 3\"", "leg #1 layer 1", "leg #1 layer 2"],
            (string words) => Assert.Contains(words, WebUtility.HtmlDecode(sheet), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Sentences_of_a_stored_design_are_told_in_the_unit_of_the_day_they_are_read()
    {
        var inline = JsonDocument.Parse(Inline).RootElement;
        await service.SendAsync("POST", "/v1/designs", inline.GetProperty("design").GetRawText());
        var request = $$"""{"design":"three-ways","budgetMs":3000,"inline":{"offers":[],"shop":{{inline.GetProperty("shop").GetRawText()}},"stock":{{inline.GetProperty("stock").GetRawText()}} } }""";
        var made = await Service.ReadAsync(await service.SendAsync("POST", "/v1/plans", request, prefer: "wait=15"), HttpStatusCode.Created);
        Assert.Equal("resaw into 2, each 3/4\" thick", Piece(made, "slat").GetProperty("steps").GetString());

        await service.SendAsync("PUT", "/v1/shop", """{"unit":"millimetre"}""");
        var place = $"/v1/plans/{made.GetProperty("id").GetString()}";
        var read = await service.GetAsync(place);
        Assert.Equal("resaw into 2, each ~19.1 mm thick", Piece(read, "slat").GetProperty("steps").GetString());
        Assert.Contains("finished ~15.9 x 101.6 x 609.6 mm", (await service.Client.GetStringAsync(place + "/cut-sheet")).Replace('\u00A0', ' '), StringComparison.Ordinal);

        await service.SendAsync("PUT", "/v1/shop", """{"unit":"inch"}""");
        Assert.Equal(made.GetRawText(), (await service.GetAsync(place)).GetRawText());
    }

    [Theory]
    [InlineData("\"refuse\"", "\"never\"", "#/inline/shop/shortBlanks")]
    [InlineData("\"resawHeightMm\":152.4", "\"resawHeightMm\":-1", "#/inline/shop/resawHeightMm")]
    [InlineData("\"layers\":2", "\"layers\":0", "#/inline/design/parts/1/layers")]
    [InlineData("\"layers\":2", "\"layers\":99", "#/inline/design/parts/1/layers")]
    public async Task What_cannot_be_is_refused_with_the_place_named(string right, string wrong, string pointer)
    {
        var answer = await service.SendAsync("POST", "/v1/plans", $$"""{"inline":{{Inline.Replace(right, wrong, StringComparison.Ordinal)}}}""");
        Assert.Equal((HttpStatusCode.BadRequest, pointer), (answer.StatusCode, await Service.PointerAsync(answer)));
    }

    private static string? Code(JsonElement warning) => warning.GetProperty("code").GetString();

    private static JsonElement Piece(JsonElement run, string name) => run.GetProperty("plan").GetProperty("boards").EnumerateArray()
        .SelectMany(board => board.GetProperty("pieces").EnumerateArray()).First(piece => piece.GetProperty("name").GetString() == name);

    private async Task<JsonElement> PlanAsync()
    {
        var answer = await service.SendAsync("POST", "/v1/plans", $$"""{"inline":{{Inline}},"budgetMs":3000}""", prefer: "wait=15");
        var run = await Service.ReadAsync(answer, HttpStatusCode.Created);
        Assert.True(run.GetProperty("state").GetString() == "done", run.GetRawText());
        Assert.Empty(run.GetProperty("plan").GetProperty("missing").EnumerateArray());
        return run;
    }
}
