using System.Net;
using System.Net.Http.Headers;
using System.Net.ServerSentEvents;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Host.InProcess;
using Offcuts.Planning;

namespace Offcuts.Host.Tests.Fits;

public sealed class FitEndpointsTests : OwnService
{
    private const string Stream = "text/event-stream";
    private Action<PlanningProblem, PlanLimits, CancellationToken> planning = (_, _, _) => { };
    private string rejected = "none";

    protected override HostSettings Change(HostSettings settings) => settings with
    {
        Solve = (problem, limits, progress, cancellation) =>
        {
            planning(problem, limits, cancellation);
            return Planner.Solve(problem, limits, progress, cancellation);
        },
        Audit = (problem, plan) => problem.Design.Name == rejected ? [new AuditFinding(default, "planted")] : Auditor.Audit(problem, plan),
    };

    [Fact]
    public async Task Designs_are_ranked_by_what_is_still_to_spend()
    {
        await ShopAsync();
        var list = await FitsAsync();

        Assert.Equal(["rail", "long-rail", "kit", "oak-rail"], Designs(list));
        var items = list.GetProperty("items");
        Assert.Equal([0m, 9m, 12.5m, 0m], [.. items.EnumerateArray().Select(item => item.GetProperty("cost").GetDecimal())]);
        var free = items[0];
        Assert.Equal((1, 1m, "nothing", true), (free.GetProperty("place").GetInt32(), free.GetProperty("shareFromStock").GetDecimal(), free.GetProperty("lacks").GetString(), free.GetProperty("sure").GetBoolean()));
        Assert.Equal(1, Assert.Single(free.GetProperty("boards").EnumerateArray()).GetProperty("count").GetInt32());
        Assert.Equal("buy 1 board of 4/4 white ash", items[1].GetProperty("lacks").GetString());
        Assert.Equal("buy 1 Screws", items[2].GetProperty("lacks").GetString());
        Assert.Equal("no wood for 1 rail", items[3].GetProperty("lacks").GetString());
        Assert.Contains("no board and no offer is of a species", items[3].GetProperty("missing")[0].GetProperty("reason").GetString(), StringComparison.Ordinal);
        Assert.True(list.GetProperty("end").GetProperty("finished").GetBoolean());
    }

    [Fact]
    public async Task The_same_comes_as_events_best_first()
    {
        await ShopAsync();
        using var answer = await EventsAsync(Service.Client, "/v1/fits");
        Assert.Equal(Stream, answer.Content.Headers.ContentType!.MediaType);
        var events = await ReadAsync(answer);

        Assert.Equal(["rail", "long-rail", "kit", "oak-rail"], events.Where(told => told.Type == "place").Select(told => told.Data.GetProperty("design").GetString()));
        Assert.Equal("end", events[^1].Type);
        Assert.Equal(4, events[^1].Data.GetProperty("designs").GetInt32());
        var progress = events.Where(told => told.Type == "progress").Select(told => told.Data).ToList();
        Assert.Equal([1, 2, 3, 4], progress.Take(4).Select(far => far.GetProperty("lookedAt").GetInt32()));
        Assert.Equal(events[^1].Data.GetProperty("planned").GetInt32(), progress[^1].GetProperty("planned").GetInt32());
    }

    [Fact]
    public async Task Nothing_is_planned_again_until_a_board_changes_that_a_design_can_touch()
    {
        var boards = await ShopAsync();
        Assert.InRange(Planned(await FitsAsync()), 4, 8);
        await Service.StopAsync();
        await Service.StartAsync(Change);
        Assert.Equal(0, Planned(await FitsAsync()));
        Assert.Equal(0, Planned(await FitsAsync("?tags=&limit=2")));

        // Cherry is nothing to any of them, and where a board lies to no plan.
        await AddAsync("black-cherry", 600);
        await EditAsync(boards[0], """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":1000,"place":"elsewhere"}""");
        Assert.Equal(0, Planned(await FitsAsync()));

        // Nor can more ash make cheaper what costs nothing or was bought for want of length; the order of the pile looks at each anew.
        await AddAsync("white-ash", 900);
        Assert.Equal(0, Planned(await FitsAsync()));
        Assert.NotEqual(0, Planned(await FitsAsync("?order=pile")));

        // A board that the plans count on is cut short: both that use it are planned again, and now must buy.
        foreach (var board in (await Service.GetAsync("/v1/boards?species=white-ash")).GetProperty("items").EnumerateArray())
        {
            await EditAsync(board.GetProperty("id").GetString()!, """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":350}""");
        }

        var list = await FitsAsync();
        Assert.InRange(Planned(list), 1, 8);
        Assert.Equal(9m, list.GetProperty("items").EnumerateArray().Single(item => item.GetProperty("design").GetString() == "rail").GetProperty("cost").GetDecimal());
    }

    [Fact]
    public async Task Filters_leave_designs_out()
    {
        await ShopAsync();
        Assert.Equal(["kit"], Designs(await FitsAsync("?tags=gift,%20Small")));
        var cheap = await FitsAsync("?maxCost=8.99&maxHours=4");
        Assert.Equal(["rail"], Designs(cheap));
        Assert.Equal((1, 2), (cheap.GetProperty("end").GetProperty("filtered").GetInt32(), cheap.GetProperty("end").GetProperty("tooDear").GetInt32()));
        Assert.Equal(["rail", "long-rail"], Designs(await FitsAsync("?limit=2")));
    }

    [Fact]
    public async Task The_pile_may_be_a_species_or_a_place()
    {
        await ShopAsync();
        await AddAsync("white-oak", 800, place: "loft");
        await StoreAsync("""{"name":"Oak peg","parts":[{"name":"peg","thicknessMm":19.05,"widthMm":60,"lengthMm":300,"species":["white-oak"]}]}""");
        Assert.Equal("oak-rail", Designs(await FitsAsync("?species=white%20oak"))[0]);
        var loft = await FitsAsync("?place=loft");
        Assert.Equal("pile", loft.GetProperty("order").GetString());
        Assert.Equal(["oak-rail", "oak-peg"], Designs(loft));
        Assert.Equal(3, loft.GetProperty("end").GetProperty("eatNone").GetInt32());
        Assert.True(loft.GetProperty("items")[0].GetProperty("eaten").GetDecimal() > loft.GetProperty("items")[1].GetProperty("eaten").GetDecimal());
    }

    [Theory]
    [InlineData("?order=best", "?order")]
    [InlineData("?order=cheapest&species=white-ash", "?order")]
    [InlineData("?species=plastic", "?species")]
    [InlineData("?maxHours=-1", "?maxHours")]
    [InlineData("?maxCost=1.234", "?maxCost")]
    [InlineData("?limit=0", "?limit")]
    [InlineData("?limit=2001", "?limit")]
    [InlineData("?budgetMs=99", "?budgetMs")]
    [InlineData("?tag=gift", "?tag")]
    public async Task A_wrong_query_is_refused_with_the_place_named_also_before_events(string query, string pointer)
    {
        Assert.Equal(pointer, await Service.PointerAsync(await Service.SendAsync("GET", "/v1/fits" + query)));
        using var answer = await EventsAsync(Service.Client, "/v1/fits" + query);
        Assert.Equal((HttpStatusCode.BadRequest, pointer), (answer.StatusCode, await Service.PointerAsync(answer)));
    }

    [Fact]
    public async Task Whoever_stops_listening_ends_it_and_the_next_has_its_turn()
    {
        await ShopAsync();
        using var begun = new SemaphoreSlim(0);
        using var ended = new SemaphoreSlim(0);
        planning = (_, _, cancellation) =>
        {
            begun.Release();
            // Longer than the service waits: only who left ends it.
            if (cancellation.WaitHandle.WaitOne(TimeSpan.FromSeconds(20)))
            {
                ended.Release();
            }
        };
        using (var answer = await EventsAsync(Service.Client, "/v1/fits"))
        {
            Assert.True(await begun.WaitAsync(TimeSpan.FromSeconds(10)));
        }

        Assert.True(await ended.WaitAsync(TimeSpan.FromSeconds(10)), "The ranking was not told that nobody listens any more.");
        planning = (_, _, _) => { };
        Assert.Equal(4, Designs(await FitsAsync()).Count);
    }

    [Fact]
    public async Task A_plan_that_the_auditor_rejects_gives_no_place_nor_does_a_design_on_which_the_planner_fails()
    {
        await ShopAsync();
        rejected = "Kit";
        planning = (problem, _, _) =>
        {
            if (problem.Design.Name == "Rail")
            {
                throw new InvalidOperationException("planted");
            }
        };
        var list = await FitsAsync();
        Assert.Equal(["long-rail", "oak-rail"], Designs(list));
        Assert.Equal(["kit", "rail"], list.GetProperty("end").GetProperty("failed").EnumerateArray().Select(name => name.GetString()).Order());

        using var answer = await EventsAsync(Service.Client, "/v1/fits?order=pile&species=white-ash");
        Assert.Equal("end", (await ReadAsync(answer))[^1].Type);
    }

    [Fact]
    public async Task A_fault_on_the_way_is_an_event_and_without_events_a_problem()
    {
        await ShopAsync();
        planning = (_, _, _) =>
        {
            using var database = new SqliteConnection($"Data Source={Service.DatabasePath}");
            database.Open();
            using var broken = database.CreateCommand();
            broken.CommandText = "DROP TABLE IF EXISTS fit_outcomes";
            broken.ExecuteNonQuery();
        };
        using var answer = await EventsAsync(Service.Client, "/v1/fits");
        var fault = (await ReadAsync(answer))[^1];
        Assert.Equal(("fault", "internal"), (fault.Type, fault.Data.GetProperty("code").GetString()));
        Assert.Equal(HttpStatusCode.InternalServerError, (await Service.SendAsync("GET", "/v1/fits")).StatusCode);
    }

    [Fact]
    public async Task A_client_in_the_same_process_sees_places_before_the_ranking_is_done()
    {
        var path = Path.Combine(Path.GetDirectoryName(Service.DatabasePath)!, "inside.db");
        using var held = new ManualResetEventSlim();
        await using (var inside = new InProcessService(
            new HostSettings
            {
                DatabasePath = path,
                Solve = (problem, limits, progress, cancellation) =>
                {
                    if (problem.Design.Name != "Rail")
                    {
                        held.Wait(cancellation);
                    }

                    return Planner.Solve(problem, limits, progress, cancellation);
                },
            },
            TextWriter.Null))
        {
            await inside.StartAsync(CancellationToken.None);
            using var client = new HttpClient(inside.CreateHandler()) { BaseAddress = new Uri("http://offcuts") };
            await ShopAsync(client);
            using var answer = await EventsAsync(client, "/v1/fits");
            var seen = new List<string>();
            await foreach (var told in SseParser.Create(await answer.Content.ReadAsStreamAsync()).EnumerateAsync())
            {
                seen.Add(told.EventType);
                if (told.EventType == "place")
                {
                    Assert.DoesNotContain("end", seen);
                    held.Set();
                }
            }

            Assert.Equal((4, "end"), (seen.Count(type => type == "place"), seen[^1]));

            // One that is left alone ends with the service, which does not wait for its search.
            held.Reset();
            await client.DeleteAsync(new Uri("/v1/designs/kit", UriKind.Relative));
            await EventsAsync(client, "/v1/fits?order=pile&species=white-ash");
        }

        SqliteConnection.ClearAllPools();
    }

    [Fact]
    public async Task A_board_says_what_it_could_become()
    {
        var boards = await ShopAsync();
        var uses = await Service.GetAsync($"/v1/boards/{boards[0]}/uses");
        Assert.Equal(boards[0], uses.GetProperty("board").GetProperty("id").GetString());
        Assert.Equal(["kit", "rail"], uses.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("design").GetString()));
        var part = uses.GetProperty("items")[1].GetProperty("parts")[0];
        Assert.Equal(("rail", "part", 1, 1), (
            part.GetProperty("name").GetString(), part.GetProperty("kind").GetString(), part.GetProperty("wanted").GetInt32(), part.GetProperty("count").GetInt32()));
        Assert.False(part.TryGetProperty("stripWidthMm", out _));
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("GET", "/v1/boards/ZZZ/uses")).StatusCode);
    }

    // Ash on the rack, longer ash at the yard for 9.00 a board, no oak; four designs.
    private async Task<List<string>> ShopAsync(HttpClient? client = null)
    {
        List<string> ids = [await AddAsync("white-ash", 1000, client: client), await AddAsync("white-ash", 420, client: client)];
        await PostAsync("/v1/price-lists", """{"supplier":"Yard","offers":[{"species":"white-ash","thicknessMm":25.4,"byThePiece":{"widthMm":100,"lengthMm":2000,"price":9}}]}""", client);
        foreach (var design in new[]
        {
            """{"name":"Rail","hours":2,"parts":[{"name":"rail","thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}""",
            """{"name":"Long rail","hours":3,"parts":[{"name":"rail","thicknessMm":19.05,"widthMm":60,"lengthMm":1500,"species":["white-ash"]}],"items":[]}""",
            """{"name":"Oak rail","hours":4,"parts":[{"name":"rail","thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-oak"]}]}""",
            """{"name":"Kit","tags":["small","gift"],"parts":[{"name":"slip","thicknessMm":19.05,"widthMm":40,"lengthMm":350,"species":["white-ash"]}],"items":[{"name":"Screws","unitPrice":12.5}]}""",
        })
        {
            await StoreAsync(design, client);
        }

        return ids;
    }

    private async Task<string> AddAsync(string species, int length, string place = "rack", HttpClient? client = null) => (await PostAsync(
        "/v1/boards", $$"""{"species":"{{species}}","thicknessMm":25.4,"widthMm":100,"lengthMm":{{length}},"place":"{{place}}"}""", client)).GetProperty("id").GetString()!;

    private Task<JsonElement> StoreAsync(string design, HttpClient? client = null) => PostAsync("/v1/designs", design, client);

    private async Task EditAsync(string board, string json) => await Service.ReadAsync(await Service.SendAsync("PUT", $"/v1/boards/{board}", json), HttpStatusCode.OK);

    private async Task<JsonElement> PostAsync(string path, string json, HttpClient? client)
    {
        using var content = new StringContent(json, new MediaTypeHeaderValue("application/json"));
        var answer = await (client ?? Service.Client).PostAsync(new Uri(path, UriKind.Relative), content);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonDocument.Parse(text).RootElement;
    }

    private Task<JsonElement> FitsAsync(string query = "") => Service.GetAsync("/v1/fits" + query);

    private static List<string?> Designs(JsonElement list) => [.. list.GetProperty("items").EnumerateArray().Select(item => item.GetProperty("design").GetString())];

    private static int Planned(JsonElement list) => list.GetProperty("end").GetProperty("planned").GetInt32();

    private static async Task<HttpResponseMessage> EventsAsync(HttpClient client, string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Accept.ParseAdd(Stream);
        return await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
    }

    private static async Task<List<(string Type, JsonElement Data)>> ReadAsync(HttpResponseMessage answer)
    {
        var events = new List<(string, JsonElement)>();
        await foreach (var told in SseParser.Create(await answer.Content.ReadAsStreamAsync()).EnumerateAsync())
        {
            events.Add((told.EventType, JsonDocument.Parse(told.Data).RootElement));
        }

        return events;
    }
}
