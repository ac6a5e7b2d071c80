using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

// Designs that leave something open, through the real planner and auditor.
public sealed class BendingEndpointsTests(Service service) : IClassFixture<Service>
{
    internal const string Stock = """
        "stock":[{"id":"A","species":"white-ash","thicknessMm":19,"widthMm":100,"lengthMm":1000,"surface":"surfaced"},
                 {"id":"B","species":"white-ash","thicknessMm":19,"widthMm":60,"lengthMm":1000,"surface":"surfaced"}],
        "offers":[],"shop":{"unit":"millimetre"}
        """;

    private const string Rack = """
        {"name":"Bending rack","formulaUnit":"millimetre",
         "parameters":{"top":{"length":{"fromMm":300,"toMm":900,"stepMm":10,"defaultMm":500}},"inner":{"formula":"top - 2 * 40"},"pegs":{"count":{"from":0,"to":4}}},
         "choices":{"back":["wide","narrow"]},
         "parts":[{"name":"rail","thicknessMm":19,"widthMm":50,"lengthMm":1,"species":["white-ash"],"formulas":{"lengthMm":"inner"}},
                  {"name":"peg","thicknessMm":19,"widthMm":19,"lengthMm":80,"species":["white-ash"],"formulas":{"quantity":"pegs"}},
                  {"name":"back","thicknessMm":19,"widthMm":90,"lengthMm":300,"species":["white-ash"],"when":[{"choice":"back","answer":"wide"}]},
                  {"name":"slat","thicknessMm":19,"widthMm":30,"lengthMm":300,"species":["white-ash"],"when":[{"choice":"back","answer":"narrow"}]}]}
        """;

    [Fact]
    public async Task A_design_keeps_its_parameters_and_its_version()
    {
        var stored = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", Rack), HttpStatusCode.Created);
        var design = stored.GetProperty("design");
        Assert.Equal(420m, design.GetProperty("parts")[0].GetProperty("lengthMm").GetDecimal());
        Assert.Equal("inner", design.GetProperty("parts")[0].GetProperty("formulas").GetProperty("lengthMm").GetString());
        Assert.Equal(0, design.GetProperty("parts")[1].GetProperty("quantity").GetInt32());
        Assert.Equal("top - 2 * 40", design.GetProperty("parameters").GetProperty("inner").GetProperty("formula").GetString());
        // What came back is the same design.
        var again = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", design.GetRawText()), HttpStatusCode.OK);
        Assert.Equal(stored.GetRawText(), again.GetRawText());
        var longer = Rack.Replace("\"toMm\":900", "\"toMm\":910", StringComparison.Ordinal);
        await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", longer), HttpStatusCode.Created);
    }

    [Fact]
    public async Task A_document_and_its_json_are_the_same_design()
    {
        const string Document = """
            name: Bending tray
            unit: in
            parameters: {depth: 8in..16in by 1/8in default 10in, side: depth - 1/2}
            parts:
              - {name: Side, quantity: 2, size: 1/2 x 2..side / 2 x side, species: ash}
              - {name: End, quantity: 2, size: 1/2 x side / 4..6 x 12, species: ash, optional: ends}
            """;
        var stored = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", Document, "application/yaml"), HttpStatusCode.Created);
        var again = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", stored.GetProperty("design").GetRawText()), HttpStatusCode.OK);
        Assert.Equal(stored.GetProperty("version").GetString(), again.GetProperty("version").GetString());
    }

    [Fact]
    public async Task A_plan_says_which_values_and_answers_it_was_made_with()
    {
        var run = await PlanAsync("""{"top":700,"pegs":2}""", """{"back":"narrow"}""");
        var made = run.GetProperty("madeWith");
        Assert.Equal("""{"top":700,"inner":620}""", made.GetProperty("lengthsMm").GetRawText());
        Assert.Equal("""{"pegs":2}""", made.GetProperty("numbers").GetRawText());
        Assert.Equal("""{"back":"narrow"}""", made.GetProperty("choices").GetRawText());
        Assert.Equal(JsonValueKind.Null, made.GetProperty("compared").ValueKind);
        Assert.Equal(["peg", "peg", "rail", "slat"], Pieces(run));
        var problem = await service.GetAsync($"/v1/plans/{run.GetProperty("id").GetString()}/problem");
        Assert.Equal(620m, problem.GetProperty("design").GetProperty("parts")[0].GetProperty("lengthMm").GetDecimal());
        Assert.False(problem.GetProperty("design").TryGetProperty("parameters", out _));
        var sheet = await service.Client.GetStringAsync($"/v1/plans/{run.GetProperty("id").GetString()}/cut-sheet");
        Assert.Contains("Made with top = 700 mm, inner = 620 mm, pegs = 2, back = narrow.", sheet.Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Theory]
    // Both backs come from the rack: the first is preferred. With a long rail the wide back does not fit beside it any more.
    [InlineData("""{"top":500}""", "wide")]
    [InlineData("""{"top":900,"pegs":4}""", "wide")]
    public async Task What_is_not_said_is_the_answer_that_costs_least(string with, string expected)
    {
        var run = await PlanAsync(with, null);
        var made = run.GetProperty("madeWith");
        Assert.Equal(expected, made.GetProperty("choices").GetProperty("back").GetString());
        Assert.Equal(2, made.GetProperty("compared").GetProperty("ways").GetInt32());
        Assert.True(made.GetProperty("compared").GetProperty("sure").GetBoolean());
        Assert.Contains(expected == "wide" ? "back" : "slat", Pieces(run));
    }

    [Fact]
    public async Task The_way_with_fewer_missing_parts_is_taken_before_the_preferred()
    {
        var narrow = Rack.Replace("\"widthMm\":90", "\"widthMm\":190", StringComparison.Ordinal);
        var run = await PlanAsync("""{"top":500}""", null, narrow);
        Assert.Equal("narrow", run.GetProperty("madeWith").GetProperty("choices").GetProperty("back").GetString());
        Assert.Empty(run.GetProperty("plan").GetProperty("missing").EnumerateArray());
    }

    [Theory]
    [InlineData("""{"topp":700}""", "null", "#/with/topp", "Did you mean top?")]
    [InlineData("""{"top":705}""", "null", "#/with/top", "give 700 mm or 710 mm")]
    [InlineData("""{"top":1000}""", "null", "#/with/top", "outside")]
    [InlineData("""{"pegs":1.5}""", "null", "#/with/pegs", "a count")]
    [InlineData("""{"inner":500}""", "null", "#/with/inner", "no parameter 'inner'")]
    [InlineData("null", """{"bak":"wide"}""", "#/choose/bak", "Did you mean back?")]
    [InlineData("null", """{"back":"wied"}""", "#/choose/back", "Did you mean wide?")]
    public async Task A_value_or_answer_that_cannot_be_is_refused(string with, string choose, string pointer, string why)
    {
        var answer = await service.SendAsync("POST", "/v1/plans", $$"""{"with":{{with}},"choose":{{choose}},"inline":{ {{Stock}},"design":{{Rack}} } }""");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var error = (await Service.ProblemAsync(answer)).GetProperty("errors")[0];
        Assert.Equal(pointer, error.GetProperty("pointer").GetString());
        Assert.Contains(why, error.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"formula\":\"top - 2 * 40\"", "\"formula\":\"top - 2 * innr\"", "#/parameters/inner")]
    [InlineData("{\"formula\":\"top - 2 * 40\"}", "{}", "#/parameters/inner")]
    [InlineData("\"stepMm\":10", "\"stepMm\":0", "#/parameters/top/length/stepMm")]
    [InlineData("\"defaultMm\":500", "\"defaultMm\":505", "#/parameters/top")]
    [InlineData("\"lengthMm\":\"inner\"", "\"lengtMm\":\"inner\"", "#/parts/0/formulas/lengtMm")]
    [InlineData("\"answer\":\"wide\"", "\"answer\":\"wider\"", "#/parts/2/when")]
    [InlineData("[\"wide\",\"narrow\"]", "[\"wide\"]", "#/choices/back")]
    public async Task A_wrong_design_is_refused_with_the_place_named(string right, string wrong, string pointer)
    {
        Assert.Contains(right, Rack, StringComparison.Ordinal);
        var answer = await service.SendAsync("POST", "/v1/designs", Rack.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }

    [Fact]
    public async Task The_largest_value_that_needs_no_purchase_is_found_and_proved()
    {
        // A peg of 80 mm beside the wide back of 300 mm on the board of 1000 mm, and the rail alone on the other: by hand the rail may have all of it.
        var answer = await StretchAsync("\"parameter\":\"top\"");
        Assert.True(answer.GetProperty("sure").GetBoolean());
        Assert.Equal((900m, "within"), (answer.GetProperty("best").GetProperty("lengthMm").GetDecimal(), answer.GetProperty("best").GetProperty("verdict").GetString()));
        Assert.Equal(0m, answer.GetProperty("best").GetProperty("woodCost").GetDecimal());
        Assert.Equal(61, answer.GetProperty("values").GetInt32());

        // With a rail twice over there is one long piece on each board; the wide back leaves 700 mm less kerf beside it, the slat lies beside a rail.
        var twice = Rack.Replace("\"lengthMm\":1,", "\"lengthMm\":1,\"quantity\":3,", StringComparison.Ordinal);
        var tight = await StretchAsync("\"parameter\":\"top\",\"choose\":{\"back\":\"wide\"}", twice);
        Assert.True(tight.GetProperty("sure").GetBoolean());
        var best = tight.GetProperty("best").GetProperty("lengthMm").GetDecimal();
        Assert.InRange(best, 400, 800);
        var next = tight.GetProperty("neighbours").EnumerateArray().First(value => value.GetProperty("lengthMm").GetDecimal() == best + 10);
        Assert.Equal("out", next.GetProperty("verdict").GetString());
    }

    [Theory]
    [InlineData("\"parameter\":\"tops\"", "#/parameter")]
    [InlineData("\"parameter\":\"top\",\"goal\":\"longest\"", "#/goal")]
    [InlineData("\"parameter\":\"top\",\"goal\":\"nearest\"", "#/wish")]
    [InlineData("\"parameter\":\"top\",\"wish\":500", "#/wish")]
    [InlineData("\"parameter\":\"top\",\"with\":{\"top\":500}", "#/with/top")]
    [InlineData("\"parameter\":\"top\",\"spend\":-1", "#/spend")]
    [InlineData("\"parameter\":\"top\",\"budgetMs\":1", "#/budgetMs")]
    public async Task A_question_that_cannot_be_is_refused(string asked, string pointer)
    {
        var answer = await service.SendAsync("POST", "/v1/stretches", $$"""{ {{asked}},"inline":{ {{Stock}},"design":{{Rack}} } }""");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }

    private static IEnumerable<string> Pieces(JsonElement run) => run.GetProperty("plan").GetProperty("boards").EnumerateArray()
        .SelectMany(board => board.GetProperty("pieces").EnumerateArray()).Where(piece => piece.GetProperty("kind").GetString() == "part")
        .Select(piece => piece.GetProperty("name").GetString()!).Order(StringComparer.Ordinal);

    private async Task<JsonElement> PlanAsync(string with, string? choose, string design = Rack)
    {
        var request = $$"""{"budgetMs":4000,"with":{{with}},"choose":{{choose ?? "null"}},"inline":{ {{Stock}},"design":{{design}} } }""";
        var run = await Service.ReadAsync(await service.SendAsync("POST", "/v1/plans", request, prefer: "wait=20"), HttpStatusCode.Created);
        Assert.True(run.GetProperty("state").GetString() == "done", run.GetRawText());
        return run;
    }

    private async Task<JsonElement> StretchAsync(string asked, string design = Rack) => await Service.ReadAsync(
        await service.SendAsync("POST", "/v1/stretches", $$"""{ {{asked}},"inline":{ {{Stock}},"design":{{design}} } }"""), HttpStatusCode.OK);
}
