using System.Globalization;
using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests;

// Through the real planner and auditor.
public sealed class PlanEndpointsTests(Service service) : IClassFixture<Service>
{
    internal const string Shelf = """
        {"name":"Shelf","parts":[{"name":"board","thicknessMm":19.05,"widthMm":100,"lengthMm":600,"quantity":2,"species":["white-ash"]}],
         "panels":[{"name":"back","thicknessMm":19.05,"widthMm":250,"lengthMm":500,"species":["white-ash"]}],
         "items":[{"name":"hooks","unitPrice":1.25,"quantity":4,"supplier":"Hill Yard"},{"name":"oil","unitPrice":9}]}
        """;

    internal const string Inline = $$"""
        {"stock":[{"id":"A","species":"white ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400}],
         "offers":[{"id":"hill-yard/ash","supplier":"hill-yard","species":"white-ash","thicknessMm":25.4,"name":null,"kind":"solid","surface":"rough","appearance":"clear",
                    "byVolume":{"widthsMm":[152.4],"lengthsMm":[2438.4],"price":6.2,"unit":"board-foot"} }],
         "shop":{},"design":{{Shelf}} }
        """;

    [Fact]
    public async Task A_plan_places_every_part_names_what_to_buy_and_says_how_good_it_is()
    {
        var answer = await service.SendAsync("POST", "/v1/plans", $$"""{"inline":{{Inline}},"budgetMs":3000,"seed":7}""", prefer: "wait=15");
        var run = await Service.ReadAsync(answer, HttpStatusCode.Created);
        Assert.Equal("done", run.GetProperty("state").GetString());
        Assert.Equal(run.GetRawText(), (await service.GetAsync(answer.Headers.Location!.ToString())).GetRawText());

        var plan = run.GetProperty("plan");
        Assert.Empty(plan.GetProperty("missing").EnumerateArray());
        var pieces = plan.GetProperty("boards").EnumerateArray().SelectMany(board => board.GetProperty("pieces").EnumerateArray()).ToList();
        Assert.Equal(2, pieces.Count(piece => piece.GetProperty("kind").GetString() == "part"));
        Assert.Contains(pieces, piece => piece.GetProperty("kind").GetString() == "strip");
        Assert.Equal("back", Assert.Single(plan.GetProperty("glueUps").EnumerateArray()).GetProperty("panel").GetString());

        // 250 mm wide at least needs more than the one board: a purchase, and the lists of both places add up.
        var lists = plan.GetProperty("shoppingLists").EnumerateArray().ToList();
        Assert.Equal("hill-yard", lists[0].GetProperty("supplier").GetString());
        Assert.Equal("Hill Yard", lists[0].GetProperty("supplierName").GetString());
        var bought = lists[0].GetProperty("wood")[0];
        Assert.Equal(("white ash", "board-foot", 6.2m), (
            bought.GetProperty("speciesName").GetString(), bought.GetProperty("rate").GetProperty("unit").GetString(),
            bought.GetProperty("rate").GetProperty("price").GetDecimal()));
        Assert.All(plan.GetProperty("boards").EnumerateArray(), board => Assert.Equal("white ash", board.GetProperty("speciesName").GetString()));
        Assert.Equal(JsonValueKind.Null, lists[^1].GetProperty("supplier").ValueKind);
        Assert.Equal(plan.GetProperty("totalCost").GetDecimal(), lists.Sum(list => list.GetProperty("total").GetDecimal()));
        Assert.Equal(5m + 9m, plan.GetProperty("itemCost").GetDecimal());
        Assert.Equal(7, plan.GetProperty("run").GetProperty("seed").GetInt32());
        Assert.True(plan.GetProperty("woodBound").GetDecimal() <= plan.GetProperty("woodCost").GetDecimal());

        // More may come back of the bought board than the owned one was worth: then both are below zero.
        var used = plan.GetProperty("worthConsumed").GetDecimal() - plan.GetProperty("worthReturned").GetDecimal();
        var least = plan.GetProperty("worthBound").GetDecimal();
        Assert.True(least <= used, $"{least}, {used}");
        Assert.Equal(used - least, plan.GetProperty("worthGap").GetDecimal());
    }

    [Fact]
    public async Task The_problem_of_a_plan_sent_back_gives_the_same_plan()
    {
        var first = await PlanAsync($$"""{"inline":{{Inline}},"budgetMs":10000}""");
        var problem = await service.GetAsync($"/v1/plans/{first.GetProperty("id").GetString()}/problem");
        var second = await PlanAsync($$"""{"inline":{{problem.GetRawText()}},"budgetMs":10000}""");
        Assert.True(first.GetProperty("plan").GetProperty("run").GetProperty("finished").GetBoolean());
        foreach (var member in new[] { "boards", "purchases", "glueUps", "woodCost", "worthConsumed", "worthReturned", "worthBound", "worthGap" })
        {
            Assert.Equal(first.GetProperty("plan").GetProperty(member).GetRawText(), second.GetProperty("plan").GetProperty(member).GetRawText());
        }
    }

    [Fact]
    public async Task A_plan_stays_tied_to_what_was_stored_when_it_was_asked_for()
    {
        await service.SendAsync("POST", "/v1/designs", Shelf);
        var board = await Service.ReadAsync(await service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":140,"lengthMm":3000}"""), HttpStatusCode.Created);
        var id = board.GetProperty("id").GetString();
        await service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":140,"lengthMm":3000,"status":"used"}""");
        var run = await PlanAsync("""{"design":"shelf"}""");
        Assert.Equal("shelf", run.GetProperty("design").GetProperty("reference").GetString());
        await service.SendAsync("DELETE", $"/v1/boards/{id}");
        await service.SendAsync("DELETE", "/v1/designs/shelf");

        var place = $"/v1/plans/{run.GetProperty("id").GetString()}";
        Assert.Equal(run.GetRawText(), (await service.GetAsync(place)).GetRawText());
        var stock = (await service.GetAsync(place + "/problem")).GetProperty("stock");
        Assert.Equal(id, Assert.Single(stock.EnumerateArray()).GetProperty("id").GetString());
        var listed = (await service.GetAsync("/v1/plans?design=shelf&state=done")).GetProperty("items");
        Assert.Equal(run.GetProperty("id").GetString(), Assert.Single(listed.EnumerateArray()).GetProperty("id").GetString());
    }

    [Fact]
    public async Task What_cannot_be_had_is_missing_with_its_reason()
    {
        var run = await PlanAsync($$"""{"inline":{"stock":[],"offers":[],"shop":{},"design":{{Shelf}} } }""");
        var plan = run.GetProperty("plan");
        Assert.Equal("incomplete", plan.GetProperty("status").GetString());
        var missing = plan.GetProperty("missing").EnumerateArray().ToDictionary(part => part.GetProperty("name").GetString()!);
        Assert.Equal(2, missing["board"].GetProperty("quantity").GetInt32());
        Assert.Equal("no-such-species", missing["back"].GetProperty("code").GetString());
        Assert.Contains("cannot be made", missing["back"].GetProperty("reason").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_faults_of_all_that_is_given_inline_are_told_at_once()
    {
        const string Wrong = """
            {"inline":{"shop":{"kerfMm":-1},
              "design":{"name":"x","parts":[{"name":"p","thicknessMm":0,"widthMm":1,"lengthMm":1,"species":["cherry"]}]},
              "stock":[{"id":"A","species":"oakk","thicknessMm":1,"widthMm":1,"lengthMm":1}]}}
            """;
        var answer = await service.SendAsync("POST", "/v1/plans", Wrong);
        var pointers = (await Service.ProblemAsync(answer)).GetProperty("errors").EnumerateArray().Select(fault => fault.GetProperty("pointer").GetString());
        Assert.Equal(["#/inline/shop/kerfMm", "#/inline/design/parts/0/thicknessMm", "#/inline/stock/0/species"], pointers);
    }

    [Theory]
    [InlineData("""{}""", "#/design")]
    [InlineData("""{"design":"x","budgetMs":99}""", "#/budgetMs")]
    [InlineData("""{"design":"x","budgetMs":300001}""", "#/budgetMs")]
    [InlineData("""{"design":"x","seed":-1}""", "#/seed")]
    [InlineData("""{"inline":{"design":{"name":"x","parts":[{"name":"p","thicknessMm":1,"widthMm":1,"lengthMm":1,"species":["cherry"]}]},"stock":[{"id":"A","species":"oakk","thicknessMm":1,"widthMm":1,"lengthMm":1}]}}""", "#/inline/stock/0/species")]
    [InlineData("""{"inline":{"design":{"name":"x","parts":[{"name":"p","thicknessMm":1,"widthMm":1,"lengthMm":1}]}}}""", "#/inline/design/parts/0/species")]
    [InlineData("""{"inline":{"design":{"name":"x","parts":[{"name":"p","thicknessMm":1,"widthMm":1,"lengthMm":1,"species":["cherry"]}]},"shop":{"kerfMm":-1}}}""", "#/inline/shop/kerfMm")]
    public async Task A_wrong_request_is_refused_before_it_is_queued(string json, string pointer)
    {
        var answer = await service.SendAsync("POST", "/v1/plans", json);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(pointer, await Service.PointerAsync(answer));
    }

    [Fact]
    public async Task A_plan_has_a_cut_sheet_and_a_diagram_of_each_board()
    {
        var run = await PlanAsync($$"""{"inline":{{Inline}}}""");
        var place = $"/v1/plans/{run.GetProperty("id").GetString()}";
        var sheet = await service.Client.GetAsync(place + "/cut-sheet");
        Assert.Equal("text/html", sheet.Content.Headers.ContentType!.MediaType);
        Assert.Contains("Shelf", await sheet.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        var boards = run.GetProperty("plan").GetProperty("boards").GetArrayLength();
        for (var number = 1; number <= boards; number++)
        {
            var diagram = await service.Client.GetAsync(string.Create(CultureInfo.InvariantCulture, $"{place}/diagrams/{number}"));
            Assert.Equal("image/svg+xml", diagram.Content.Headers.ContentType!.MediaType);
            Assert.Equal("svg", System.Xml.Linq.XDocument.Parse(await diagram.Content.ReadAsStringAsync()).Root!.Name.LocalName);
        }

        foreach (var path in new[] { "/diagrams/0", "/diagrams/99", "/diagrams/one" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("GET", place + path)).StatusCode);
        }
    }

    [Fact]
    public async Task What_is_not_there_is_not_found()
    {
        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("POST", "/v1/plans", """{"design":"no-such"}""")).StatusCode);
        foreach (var path in new[] { "", "/problem", "/cut-sheet", "/diagrams/1" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("GET", "/v1/plans/nosuchid" + path)).StatusCode);
        }

        Assert.Equal(HttpStatusCode.NotFound, (await service.SendAsync("POST", "/v1/plans/nosuchid/cancellation")).StatusCode);
    }

    [Fact]
    public async Task Rates_come_from_the_cheapest_offer_of_each_species()
    {
        var run = await PlanAsync($$"""{"inline":{{Inline}}}""");
        var problem = await service.GetAsync(string.Create(CultureInfo.InvariantCulture, $"/v1/plans/{run.GetProperty("id").GetString()}/problem"));
        var rates = problem.GetProperty("rates");

        // 152.4 x 2438.4 x 25.4 mm is 6 in x 8 ft x 1 in: 4 board feet, 24.80 in all.
        Assert.Equal(6.20m, rates.GetProperty("perBoardFoot").GetProperty("white-ash").GetDecimal());
        Assert.Equal(6.00m, rates.GetProperty("otherwise").GetDecimal());
    }

    private async Task<JsonElement> PlanAsync(string request)
    {
        var run = await Service.ReadAsync(await service.SendAsync("POST", "/v1/plans", request, prefer: "wait=20"), HttpStatusCode.Created);
        Assert.True(run.GetProperty("state").GetString() == "done", run.GetRawText());
        return run;
    }
}
