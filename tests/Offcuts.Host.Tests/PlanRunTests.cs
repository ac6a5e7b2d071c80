using System.Net;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning;

namespace Offcuts.Host.Tests;

// How runs queue, end early and fail: with a search that waits for its cancellation.
public sealed class PlanRunTests : OwnService
{
    private const string Request = $$"""{"inline":{{PlanEndpointsTests.Inline}},"budgetMs":60000}""";
    private bool rejecting;
    private bool failing;

    protected override HostSettings Change(HostSettings settings) => settings with { PlanQueueLength = 2, Solve = Solve, Audit = Audit };

    [Fact]
    public async Task A_run_is_accepted_shows_its_best_plan_so_far_and_keeps_it_when_cancelled()
    {
        var answer = await Service.SendAsync("POST", "/v1/plans", Request);
        await Service.ReadAsync(answer, HttpStatusCode.Accepted);
        Assert.Equal(TimeSpan.FromSeconds(1), answer.Headers.RetryAfter!.Delta);
        var place = answer.Headers.Location!.ToString();
        var planning = await UntilAsync(place, run => run.GetProperty("plan").ValueKind != JsonValueKind.Null);
        Assert.Equal("planning", planning.GetProperty("state").GetString());
        Assert.Equal(planning.GetProperty("plan").GetProperty("woodCost").GetDecimal(), planning.GetProperty("progress").GetProperty("woodCost").GetDecimal());

        var cancelled = await Service.ReadAsync(await Service.SendAsync("POST", place + "/cancellation"), HttpStatusCode.OK);
        Assert.Equal("cancelled", cancelled.GetProperty("state").GetString());
        Assert.NotEqual(JsonValueKind.Null, cancelled.GetProperty("plan").ValueKind);
        var again = await Service.ReadAsync(await Service.SendAsync("POST", place + "/cancellation"), HttpStatusCode.OK);
        Assert.Equal(cancelled.GetRawText(), again.GetRawText());
    }

    [Fact]
    public async Task One_run_at_a_time_and_a_full_queue_says_when_to_come_back()
    {
        var first = await PlaceAsync(HttpStatusCode.Accepted);
        var second = await PlaceAsync(HttpStatusCode.Accepted);
        await UntilAsync(first, run => run.GetProperty("state").GetString() == "planning");
        Assert.Equal("queued", (await Service.GetAsync(second)).GetProperty("state").GetString());

        var full = await Service.SendAsync("POST", "/v1/plans", Request);
        Assert.Equal(HttpStatusCode.TooManyRequests, full.StatusCode);
        Assert.True(full.Headers.RetryAfter!.Delta > TimeSpan.Zero);
        Assert.Equal("/problems/too-many-requests", (await Service.ProblemAsync(full)).GetProperty("type").GetString());

        Assert.Equal("cancelled", (await Service.ReadAsync(await Service.SendAsync("POST", second + "/cancellation"), HttpStatusCode.OK)).GetProperty("state").GetString());
        await Service.SendAsync("POST", first + "/cancellation");
        Assert.Equal(JsonValueKind.Null, (await Service.GetAsync(second)).GetProperty("plan").ValueKind);
    }

    [Fact]
    public async Task A_plan_that_the_auditor_rejects_is_never_shown_but_kept_to_look_into()
    {
        rejecting = true;
        var place = await PlaceAsync(HttpStatusCode.Accepted);
        var failed = await UntilAsync(place, run => run.GetProperty("state").GetString() == "failed");
        Assert.Equal(JsonValueKind.Null, failed.GetProperty("plan").ValueKind);
        var failure = failed.GetProperty("failure");
        Assert.Equal("/problems/plan-rejected", failure.GetProperty("type").GetString());
        Assert.Equal(HttpStatusCode.OK, (await Service.Client.GetAsync(failure.GetProperty("type").GetString())).StatusCode);

        var file = Path.Combine(Path.GetDirectoryName(Service.DatabasePath)!, failure.GetProperty("reproduction").GetString()!);
        var kept = JsonDocument.Parse(await File.ReadAllTextAsync(file)).RootElement;
        Assert.Equal("planted", kept.GetProperty("findings")[0].GetProperty("detail").GetString());
        Assert.NotEmpty(kept.GetProperty("plan").GetProperty("boards").EnumerateArray());
        Assert.Equal("A", kept.GetProperty("problem").GetProperty("stock")[0].GetProperty("id").GetString());
    }

    [Fact]
    public async Task A_planner_that_throws_fails_its_run_and_not_the_queue()
    {
        failing = true;
        var failed = await UntilAsync(await PlaceAsync(HttpStatusCode.Accepted), run => run.GetProperty("state").GetString() == "failed");
        Assert.Equal("internal", failed.GetProperty("failure").GetProperty("code").GetString());
        failing = false;
        await UntilAsync(await PlaceAsync(HttpStatusCode.Accepted), run => run.GetProperty("state").GetString() == "planning");
    }

    [Fact]
    public async Task A_failure_that_cannot_be_recorded_does_not_end_the_queue()
    {
        failing = true;
        Execute("CREATE TRIGGER planted BEFORE UPDATE ON plan_runs WHEN NEW.state = 'failed' BEGIN SELECT RAISE(ABORT, 'planted'); END");
        var lost = await PlaceAsync(HttpStatusCode.Accepted);
        var next = await PlaceAsync(HttpStatusCode.Accepted);
        await UntilAsync(lost, run => run.GetProperty("state").GetString() == "planning");
        await UntilAsync(next, run => run.GetProperty("state").GetString() == "planning");
        Execute("DROP TRIGGER planted");
        await UntilAsync(await PlaceAsync(HttpStatusCode.Accepted), run => run.GetProperty("state").GetString() == "failed");

        void Execute(string sql)
        {
            using var connection = new SqliteConnection($"Data Source={Service.DatabasePath}");
            connection.Execute(sql);
        }
    }

    [Fact]
    public async Task A_run_that_has_not_ended_or_has_no_plan_is_none_to_start_from()
    {
        var place = await PlaceAsync(HttpStatusCode.Accepted);
        var id = place.Split('/')[^1];
        await UntilAsync(place, run => run.GetProperty("state").GetString() == "planning");
        Assert.Contains("still planning", await RefusedAsync(id), StringComparison.Ordinal);
        await Service.SendAsync("POST", place + "/cancellation");
        failing = true;
        var failed = await PlaceAsync(HttpStatusCode.Accepted);
        await UntilAsync(failed, run => run.GetProperty("state").GetString() == "failed");
        Assert.Contains("no plan to start from", await RefusedAsync(failed.Split('/')[^1]), StringComparison.Ordinal);

        async Task<string?> RefusedAsync(string from)
        {
            var answer = await Service.SendAsync("POST", "/v1/plans", RestartEndpointsTests.Request(["A", "B"], from));
            Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
            return (await Service.ProblemAsync(answer)).GetProperty("detail").GetString();
        }
    }

    [Fact]
    public async Task A_service_that_stops_leaves_its_runs_interrupted()
    {
        var first = await PlaceAsync(HttpStatusCode.Accepted);
        await UntilAsync(first, run => run.GetProperty("plan").ValueKind != JsonValueKind.Null);
        var second = await PlaceAsync(HttpStatusCode.Accepted);
        await Service.StopAsync();
        await Service.StartAsync(Change);
        var interrupted = await Service.GetAsync(first);
        Assert.Equal("interrupted", interrupted.GetProperty("state").GetString());
        Assert.NotEqual(JsonValueKind.Null, interrupted.GetProperty("plan").ValueKind);
        Assert.Equal("interrupted", (await Service.GetAsync(second)).GetProperty("state").GetString());
    }

    [Fact]
    public async Task A_run_whose_process_was_killed_is_interrupted_at_the_next_start()
    {
        var place = await PlaceAsync(HttpStatusCode.Accepted);
        await UntilAsync(place, run => run.GetProperty("plan").ValueKind != JsonValueKind.Null);
        await Service.StopAsync();
        using (var connection = new SqliteConnection($"Data Source={Service.DatabasePath}"))
        {
            // As a killed process leaves it. No process has this number: it is above the kernel's limit of 2^22.
            connection.Execute("UPDATE plan_runs SET state = 'planning', finished_at = NULL, owner = '4194305 0'");
        }

        await Service.StartAsync(Change);
        Assert.Equal("interrupted", (await Service.GetAsync(place)).GetProperty("state").GetString());
    }

    [Fact]
    public async Task A_run_of_another_living_process_is_left_alone()
    {
        var place = await PlaceAsync(HttpStatusCode.Accepted);
        await UntilAsync(place, run => run.GetProperty("plan").ValueKind != JsonValueKind.Null);
        await Service.StopAsync();
        using (var connection = new SqliteConnection($"Data Source={Service.DatabasePath}"))
        {
            connection.Execute("UPDATE plan_runs SET state = 'planning', finished_at = NULL");
        }

        await Service.StartAsync(Change);
        Assert.Equal("planning", (await Service.GetAsync(place)).GetProperty("state").GetString());
        Assert.Equal(HttpStatusCode.Conflict, (await Service.SendAsync("POST", place + "/cancellation")).StatusCode);
    }

    private Plan Solve(PlanningProblem problem, PlanLimits limits, Action<PlanProgress>? progress, CancellationToken cancellationToken)
    {
        if (failing)
        {
            throw new InvalidOperationException("Planted.");
        }

        var plan = Planner.Solve(problem, limits with { Budget = TimeSpan.FromSeconds(2) }, null, CancellationToken.None);
        progress!(new PlanProgress(plan.Run.Elapsed, plan.WoodCost, plan.WoodBound, plan));
        cancellationToken.WaitHandle.WaitOne(TimeSpan.FromSeconds(30));
        return plan with { Run = plan.Run with { Finished = false } };
    }

    private IReadOnlyList<AuditFinding> Audit(PlanningProblem problem, Plan plan) =>
        rejecting ? [new AuditFinding(AuditRule.OnBoard, "planted")] : Auditor.Audit(problem, plan);

    private async Task<string> PlaceAsync(HttpStatusCode expected)
    {
        var answer = await Service.SendAsync("POST", "/v1/plans", Request);
        await Service.ReadAsync(answer, expected);
        return answer.Headers.Location!.ToString();
    }

    private async Task<JsonElement> UntilAsync(string place, Func<JsonElement, bool> isSo)
    {
        for (var attempt = 0; attempt < 200; attempt++)
        {
            var run = await Service.GetAsync(place);
            if (isSo(run))
            {
                return run;
            }

            await Task.Delay(50);
        }

        throw new TimeoutException($"{await Service.Client.GetStringAsync(place)} never came to it.");
    }
}
