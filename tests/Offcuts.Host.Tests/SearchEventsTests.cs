using System.Net;
using System.Net.Http.Headers;
using System.Net.ServerSentEvents;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Offcuts.Domain;
using Offcuts.Host.Http;
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

    /// <summary>Only that the service stops ends it: the client goes on waiting.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_service_that_stops_ends_it(bool events)
    {
        using var begun = new SemaphoreSlim(0);
        using var ended = new SemaphoreSlim(0);
        planning = cancellation =>
        {
            begun.Release();
            if (cancellation.WaitHandle.WaitOne(TimeSpan.FromSeconds(15)))
            {
                ended.Release();
            }
        };
        var asking = events ? EventsAsync("/v1/fills", Stock + Pegs) : Service.SendAsync("POST", "/v1/fills", Body(Stock + Pegs));
        Assert.True(await begun.WaitAsync(TimeSpan.FromSeconds(10)));
        Service.Services.GetRequiredService<IHostApplicationLifetime>().StopApplication();

        Assert.True(await ended.WaitAsync(TimeSpan.FromSeconds(10)), "The search was not told that the service stops.");
        using var answer = await asking;
        if (events)
        {
            Assert.DoesNotContain(await ReadAsync(answer), told => told.Type is "end" or "fault");
        }
        else
        {
            Assert.Equal((HttpStatusCode.ServiceUnavailable, "stopping"), (answer.StatusCode, (await Service.ProblemAsync(answer)).GetProperty("code").GetString()));
        }
    }

    /// <summary>What the client can mend is its own business; what it cannot is logged.</summary>
    [Theory]
    [InlineData(true, 0)]
    [InlineData(false, 1)]
    public async Task A_fault_on_the_way_says_what_a_problem_would_and_is_logged_if_it_is_ours(bool ofTheUser, int logged)
    {
        var log = new ErrorLog();
        var context = new DefaultHttpContext { RequestServices = Service.Services };
        context.Response.Body = new MemoryStream();
        await new EventAnswers(log, Service.Services.GetRequiredService<ServiceEnd>()).Of(Failing(), context).ExecuteAsync(context);

        Assert.Equal(logged, log.Errors);
        context.Response.Body.Position = 0;
        var told = new List<string>();
        await foreach (var item in SseParser.Create(context.Response.Body).EnumerateAsync())
        {
            Assert.Equal("fault", item.EventType);
            told.Add(item.Data);
        }

        var problem = JsonDocument.Parse(Assert.Single(told)).RootElement;
        Assert.Equal(ofTheUser ? "invalid" : "internal", problem.GetProperty("code").GetString());
        Assert.Equal(ofTheUser ? ["#/least"] : [], problem.GetProperty("errors").EnumerateArray().Select(fault => fault.GetProperty("pointer").GetString()));

        async IAsyncEnumerable<SseItem<string>> Failing()
        {
            await Task.Yield();
            if (logged >= 0)
            {
                throw ofTheUser ? new OffcutsException(ErrorCode.Invalid, "planted", new InputFault("#/least", "Ask for less.")) : new InvalidOperationException("planted");
            }

            yield break;
        }
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

    private sealed class ErrorLog : ILogger<EventAnswers>
    {
        public int Errors { get; private set; }

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Errors += logLevel >= LogLevel.Error ? 1 : 0;
    }
}
