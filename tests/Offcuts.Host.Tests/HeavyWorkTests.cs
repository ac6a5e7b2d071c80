using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Offcuts.Auditing;
using Offcuts.Host.Http;
using Offcuts.Planning;

namespace Offcuts.Host.Tests;

// Requests that keep the processors busy: how many at once, and that none of them lets a plan out that was not audited.
public sealed class HeavyWorkTests : OwnService, IDisposable
{
    private const string Wood = """
        "stock":[],"offers":[{"id":"y/a","supplier":"y","species":"white-ash","thicknessMm":25,"name":null,"kind":"solid","surface":"rough","appearance":"clear",
         "byThePiece":{"widthMm":100,"lengthMm":1400,"price":9}}],"shop":{"unit":"millimetre"}
        """;

    private const string Rails = """{"name":"Rails","parts":[{"name":"rail","quantity":3,"thicknessMm":20,"widthMm":60,"lengthMm":600,"species":["white-ash"]}]}""";

    private const string Bending = """
        {"name":"Rail","parameters":{"top":{"length":{"fromMm":400,"toMm":600,"stepMm":100}}},
         "parts":[{"name":"rail","thicknessMm":20,"widthMm":60,"lengthMm":400,"species":["white-ash"],"formulas":{"lengthMm":"top"}}]}
        """;

    private readonly ManualResetEventSlim free = new(initialState: true);
    private readonly SemaphoreSlim begun = new(0);
    private bool rejecting;

    // After the service, which may still use them.
    public void Dispose()
    {
        free.Dispose();
        begun.Dispose();
    }

    protected override HostSettings Change(HostSettings settings) => settings with
    {
        HeavyPatience = TimeSpan.FromSeconds(4),
        Solve = (problem, limits, progress, cancellation) =>
        {
            begun.Release();
            free.Wait(TimeSpan.FromSeconds(15), cancellation);
            return Planner.Solve(problem, limits, progress, cancellation);
        },
        Audit = (problem, plan) => rejecting ? [new AuditFinding(AuditRule.OnBoard, "planted")] : Auditor.Audit(problem, plan),
    };

    [Fact]
    public async Task Searches_are_answered_one_at_a_time_and_looks_beside_them()
    {
        await StoreAsync();
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/designs", Rails.Replace("Rails", "Posts", StringComparison.Ordinal)), HttpStatusCode.Created);
        var plan = await PlanAsync();
        free.Reset();
        var ranking = Streamed();
        Assert.True(await begun.WaitAsync(TimeSpan.FromSeconds(10)), "The ranking never began to plan.");

        await Task.WhenAll(new[]
        {
            ("GET", "/v1/fits", null),
            ("GET", $"/v1/plans/{plan}/worth-having", null),
            ("POST", "/v1/fills", """{"design":"rails"}"""),
            ("POST", "/v1/mixes", """{"designs":[{"design":"rails"},{"design":"posts"}]}"""),
            ("POST", "/v1/stretches", $$"""{"parameter":"top","inline":{ {{Wood}},"design":{{Bending}} } }"""),
        }.Select(async asked =>
        {
            var (method, path, body) = asked;
            var refused = await Service.SendAsync(method, path, body);
            Assert.Equal((path, HttpStatusCode.TooManyRequests, TimeSpan.FromSeconds(5)), (path, refused.StatusCode, refused.Headers.RetryAfter!.Delta!.Value));
            Assert.Equal("/problems/too-many-requests", (await Service.ProblemAsync(refused)).GetProperty("type").GetString());
        }));

        foreach (var look in new[] { "/v1/boards/find?text=20mm%20x%2060mm%20x%20600mm%20white%20ash", "/v1/cull", "/v1/boards" })
        {
            Assert.Equal(HttpStatusCode.OK, (await Service.SendAsync("GET", look)).StatusCode);
        }

        // A turn lasts until the last event of a stream, and no longer.
        free.Set();
        using (var answer = await ranking)
        {
            Assert.Contains("event: end", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.OK, (await Service.SendAsync("GET", "/v1/fits")).StatusCode);
    }

    [Fact]
    public async Task A_request_waits_for_its_turn_for_a_moment()
    {
        await StoreAsync();
        free.Reset();
        var first = Service.SendAsync("GET", "/v1/fits");
        Assert.True(await begun.WaitAsync(TimeSpan.FromSeconds(10)));
        var second = Service.SendAsync("GET", "/v1/fits");
        Assert.True(SpinWait.SpinUntil(() => Turns.Waiting == 1, TimeSpan.FromSeconds(3)), "The second request did not wait.");
        free.Set();
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), ((await first).StatusCode, (await second).StatusCode));
        Assert.Equal(0, Turns.Waiting);
    }

    /// <summary>A turn is for what is to be worked out: what is wrong is refused without one.</summary>
    [Fact]
    public async Task What_is_wrong_is_refused_though_others_have_their_turn()
    {
        await StoreAsync();
        var plan = await PlanAsync();
        free.Reset();
        var ranking = Streamed();
        Assert.True(await begun.WaitAsync(TimeSpan.FromSeconds(10)), "The ranking never began to plan.");
        foreach (var (method, path, body) in new[]
        {
            ("GET", "/v1/fits?order=nonsense", null),
            ("GET", $"/v1/plans/{plan}/worth-having?budgetMs=1", null),
            ("POST", "/v1/fills", """{"design":"rails","budgetMs":1}"""),
            ("POST", "/v1/mixes", """{"designs":[{"design":"rails"},{"design":"rails"}]}"""),
            ("POST", "/v1/stretches", """{"design":"""),
        })
        {
            Assert.Equal((path, HttpStatusCode.BadRequest), (path, (await Service.SendAsync(method, path, body)).StatusCode));
        }

        free.Set();
        (await ranking).Dispose();
    }

    [Fact]
    public async Task Who_sends_slowly_keeps_nobody_waiting()
    {
        await StoreAsync();
        var rest = new TaskCompletionSource();
        using var slow = new SlowContent("""{"design":"ra""", """ils"}""", rest.Task);
        var sending = Service.Client.PostAsync(new Uri("/v1/fills", UriKind.Relative), slow);
        await slow.Begun;

        // Longer than it takes to read what was sent; a turn that the slow one had would be refused to the other after its patience.
        await Task.Delay(300);
        Assert.Equal(HttpStatusCode.OK, (await Service.SendAsync("GET", "/v1/fits")).StatusCode);
        rest.SetResult();
        Assert.Equal(HttpStatusCode.OK, (await sending).StatusCode);
    }

    [Fact]
    public async Task What_would_be_worth_having_is_audited_too()
    {
        var plan = await PlanAsync();
        Assert.Equal(9m, (await Service.GetAsync($"/v1/plans/{plan}/worth-having?budgetMs=3000")).GetProperty("items")[0].GetProperty("saves").GetDecimal());
        rejecting = true;
        await RefusedAsync("GET", $"/v1/plans/{plan}/worth-having?budgetMs=3000", null);
    }

    [Fact]
    public async Task A_question_whose_plan_the_auditor_rejects_says_where_it_is_kept()
    {
        rejecting = true;
        await RefusedAsync("POST", "/v1/fills", $$"""{"inline":{"stock":[{"id":"A","species":"white-ash","thicknessMm":25,"widthMm":100,"lengthMm":2000}],"design":{{Rails}} } }""");
    }

    private HeavyWork Turns => Service.Services.GetRequiredService<HeavyWork>();

    private async Task RefusedAsync(string method, string path, string? body)
    {
        var answer = await Service.SendAsync(method, path, body);
        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        var problem = await Service.ProblemAsync(answer);
        Assert.Equal(("/problems/plan-rejected", "The auditor rejected a plan"), (problem.GetProperty("type").GetString(), problem.GetProperty("title").GetString()));
        var kept = Assert.Single(Directory.GetFiles(Path.Combine(Path.GetDirectoryName(Service.DatabasePath)!, "rejected-plans")));
        Assert.Contains(Path.GetFileName(kept), problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal("planted", JsonDocument.Parse(await File.ReadAllTextAsync(kept)).RootElement.GetProperty("findings")[0].GetProperty("detail").GetString());
    }

    private async Task StoreAsync()
    {
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/boards", """{"species":"white-ash","thicknessMm":25.4,"widthMm":100,"lengthMm":2000}"""), HttpStatusCode.Created);
        await Service.ReadAsync(await Service.SendAsync("POST", "/v1/designs", Rails), HttpStatusCode.Created);
    }

    private async Task<string> PlanAsync()
    {
        var run = await Service.ReadAsync(
            await Service.SendAsync("POST", "/v1/plans", $$"""{"budgetMs":3000,"inline":{ {{Wood}},"design":{{Rails}} } }""", prefer: "wait=15"), HttpStatusCode.Created);
        Assert.Equal("done", run.GetProperty("state").GetString());
        while (await begun.WaitAsync(0))
        {
            // Only what begins from here on counts.
        }

        return run.GetProperty("id").GetString()!;
    }

    private async Task<HttpResponseMessage> Streamed()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/v1/fits");
        request.Headers.Accept.ParseAdd("text/event-stream");
        return await Service.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
    }

    // A body of which the rest comes when it is let.
    private sealed class SlowContent : HttpContent
    {
        private readonly TaskCompletionSource begun = new();
        private readonly (string First, string Last) parts;
        private readonly Task rest;

        public SlowContent(string first, string last, Task rest)
        {
            (parts, this.rest) = ((first, last), rest);
            Headers.ContentType = new MediaTypeHeaderValue("application/json");
        }

        public Task Begun => begun.Task;

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            await stream.WriteAsync(Encoding.UTF8.GetBytes(parts.First));
            await stream.FlushAsync();
            begun.SetResult();
            await rest;
            await stream.WriteAsync(Encoding.UTF8.GetBytes(parts.Last));
        }

        protected override bool TryComputeLength(out long length)
        {
            length = Encoding.UTF8.GetByteCount(parts.First + parts.Last);
            return true;
        }
    }
}
