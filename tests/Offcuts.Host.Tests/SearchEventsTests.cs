using System.Net;
using System.Net.Http.Headers;
using System.Net.ServerSentEvents;
using System.Text.Json;
using Offcuts.Planning;

namespace Offcuts.Host.Tests;

// How far searches are, as events on the way to their answers.
public sealed class SearchEventsTests : OwnService
{
    private const string Stock = """
        "budgetMs":6000,"inline":{"stock":[{"id":"A","species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400}],"offers":[],"shop":{},
        """;

    private const string Pegs = """
        "design":{"name":"Pegs","parts":[{"name":"peg","quantity":2,"thicknessMm":19.05,"widthMm":60,"lengthMm":300,"species":["white-ash"]}]}
        """;

    private const string Both = """
        "builds":["Peg","Rail"],"design":{"name":"Both","parts":[
         {"name":"Peg: peg","thicknessMm":19.05,"widthMm":60,"lengthMm":300,"species":["white-ash"]},{"name":"Rail: rail","thicknessMm":19.05,"widthMm":60,"lengthMm":500,"species":["white-ash"]}]}
        """;

    private const string Rail = """
        "design":{"name":"Rail","parameters":{"top":{"length":{"fromMm":400,"toMm":1500,"stepMm":25}}},
         "parts":[{"name":"rail","quantity":2,"thicknessMm":19.05,"widthMm":60,"lengthMm":400,"species":["white-ash"],"formulas":{"lengthMm":"top - 20"}}]}
        """;

    private Action<CancellationToken> planning = _ => { };

    protected override HostSettings Change(HostSettings settings) => settings with
    {
        Solve = (problem, limits, progress, cancellation) =>
        {
            planning(cancellation);
            return Planner.Solve(problem, limits, progress, cancellation);
        },
    };

    [Theory]
    [InlineData("/v1/stretches", "\"parameter\":\"top\"," + Stock + Rail, "values")]
    [InlineData("/v1/fills", Stock + Pegs, "values")]
    [InlineData("/v1/mixes", Stock + Both, "tried")]
    public async Task Progress_comes_before_the_same_answer(string path, string asked, string told)
    {
        var events = await ReadAsync(await EventsAsync(path, asked));
        var progress = events.SkipLast(1).ToList();
        Assert.NotEmpty(progress);
        Assert.All(progress, far => Assert.Equal("progress", far.Type));
        Assert.True(progress[^1].Data.GetProperty(told).GetInt32() > 0);
        var tried = progress.ConvertAll(far => far.Data.GetProperty("tried").GetInt32());
        Assert.Equal(tried.Order(), tried);
        Assert.Equal("end", events[^1].Type);
        var whole = await Service.ReadAsync(await Service.SendAsync("POST", path, Body(asked)), HttpStatusCode.OK);
        Assert.True(whole.GetProperty("sure").GetBoolean());
        foreach (var member in whole.EnumerateObject().Where(member => member.Name is "best" or "sure" or "designs" or "buildsWorthAtMost" or "openCount"))
        {
            Assert.Equal(member.Value.GetRawText(), events[^1].Data.GetProperty(member.Name).GetRawText());
        }
    }

    [Fact]
    public async Task What_cannot_be_is_refused_before_events_and_a_fault_on_the_way_is_one()
    {
        using var refused = await EventsAsync("/v1/fills", "\"budgetMs\":1,\"inline\":{" + Pegs + "}");
        Assert.Equal((HttpStatusCode.BadRequest, "#/budgetMs"), (refused.StatusCode, await Service.PointerAsync(refused)));
        planning = _ => throw new InvalidOperationException("planted");
        var fault = (await ReadAsync(await EventsAsync("/v1/fills", Stock + Pegs)))[^1];
        Assert.Equal(("fault", "internal"), (fault.Type, fault.Data.GetProperty("code").GetString()));
        Assert.Equal(HttpStatusCode.InternalServerError, (await Service.SendAsync("POST", "/v1/fills", Body(Stock + Pegs))).StatusCode);
    }

    [Fact]
    public async Task Whoever_stops_listening_ends_it_and_the_next_has_its_turn()
    {
        using var begun = new SemaphoreSlim(0);
        using var ended = new SemaphoreSlim(0);
        planning = cancellation =>
        {
            begun.Release();
            // Longer than the service waits: only who left ends it.
            if (cancellation.WaitHandle.WaitOne(TimeSpan.FromSeconds(20)))
            {
                ended.Release();
            }
        };
        using (var answer = await EventsAsync("/v1/fills", Stock + Pegs))
        {
            Assert.True(await begun.WaitAsync(TimeSpan.FromSeconds(10)));
        }

        Assert.True(await ended.WaitAsync(TimeSpan.FromSeconds(10)), "The search was not told that nobody listens any more.");
        planning = _ => { };
        Assert.Equal(HttpStatusCode.OK, (await Service.SendAsync("POST", "/v1/mixes", Body(Stock + Both))).StatusCode);
    }

    private static string Body(string asked) => "{" + asked + (asked.Contains(Stock, StringComparison.Ordinal) ? "}}" : "}");

    private async Task<HttpResponseMessage> EventsAsync(string path, string asked)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new StringContent(Body(asked), new MediaTypeHeaderValue("application/json")) };
        request.Headers.Accept.ParseAdd("text/event-stream");
        return await Service.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
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
