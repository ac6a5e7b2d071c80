using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts plans</c>.</summary>
internal static class PlansCommand
{
    private static readonly Argument<string> Id = new("PLAN") { Description = "The plan's id" };
    private static readonly Argument<int> Number = new("NUMBER") { Description = "The board's number in the plan, from 1" };
    private static readonly Option<string> Design = new("--design") { Description = "Only plans of this design", HelpName = "DESIGN" };
    private static readonly Option<string> State = new("--state") { Description = "queued, planning, done, cancelled, failed, interrupted", HelpName = "WORD", CompletionSources = { "queued", "planning", "done", "cancelled", "failed", "interrupted" } };
    private static readonly Option<string> Output = new("--output", "-o") { Description = "File to write to instead of standard output", HelpName = "PATH" };

    public static Verb Create() => new Verb("plans", "Plans made so far, their cut sheets and diagrams", "offcuts plans list")
        .With(
            new Verb("list", "List plans, newest first", "offcuts plans list", "offcuts plans list --design hall-bench --state done --json")
                .With(Design, State).Does(ListAsync),
            new Verb("show", "Show a plan", "offcuts plans show 3K7M9", "offcuts plans show 3K7M9 --json").With(Id).Does(ShowAsync),
            new Verb("sheet", "Write a plan's cut sheet, an HTML page to print", "offcuts plans sheet 3K7M9 -o bench.html")
                .With(Id, Output).Does(run => WriteAsync(run, api => api.GetCutSheetAsync(run.Get(Id), run.Cancellation))),
            new Verb("diagram", "Write the cutting diagram of one board as SVG", "offcuts plans diagram 3K7M9 2 -o board-2.svg")
                .With(Id, Number, Output).Does(run => WriteAsync(run, api => api.GetDiagramAsync(run.Get(Id), run.Get(Number), run.Cancellation))),
            new Verb("cancel", "End a run on a server early; its best plan so far is kept", "offcuts plans cancel 3K7M9").With(Id).Does(CancelAsync),
            new Verb("problem", "Write all that a plan was made from, as JSON", "offcuts plans problem 3K7M9 > problem.json").With(Id).Does(ProblemAsync));

    private static async Task<int> ListAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var plans = await Paging.AllAsync<PlanSummary>(async cursor =>
        {
            var query = new PlanQuery { Design = run.Get(Design), State = run.Get(State), Limit = Paging.Largest, Cursor = cursor };
            var page = await api.ListPlansAsync(query, run.Cancellation);
            return (page.Items, page.Next);
        });
        if (run.Json)
        {
            run.WriteJson(new PlanPage(plans, null), ClientJson.Default.PlanPage);
            return ExitCode.Ok;
        }

        if (plans.Count == 0)
        {
            run.Say("No plans match. Make one with 'offcuts plan DESIGN'.");
            return ExitCode.Ok;
        }

        var table = new Table("PLAN", "DESIGN", "STATE", "ASKED FOR", "RESULT", ">COST", ">GAP");
        foreach (var plan in plans)
        {
            table.Add(
                plan.Id, plan.Design.Reference ?? plan.Design.Name, plan.State, plan.RequestedAt.ToString("yyyy-MM-dd HH:mm'Z'", CultureInfo.InvariantCulture),
                plan.Status, plan.TotalCost is { } cost ? Price.Of(cost, plan.Currency!) : "",
                plan.Gap is { } gap ? string.Create(CultureInfo.InvariantCulture, $"{gap * 100:0.#} %") : "");
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }

    private static async Task<int> ShowAsync(Run run)
    {
        var record = await (await run.ConnectAsync()).GetPlanAsync(run.Get(Id), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(record, ClientJson.Default.PlanRecord);
        }
        else if (record.Plan is { } plan)
        {
            new PlanView(run.Terminal, await run.UnitAsync(), plan).Write(record);
        }
        else
        {
            run.Terminal.Out.WriteLine(SafeText.Of($"{record.Design.Name}  (plan {record.Id}): {record.State}, no plan{(record.Failure is { } failure ? $": {failure.Detail}" : " yet")}"));
        }

        return record.Plan?.Missing.Count > 0 ? ExitCode.Incomplete : ExitCode.Ok;
    }

    private static async Task<int> WriteAsync(Run run, Func<IOffcutsApi, Task<string>> fetch)
    {
        var text = await fetch(await run.ConnectAsync());
        if (run.Get(Output) is { } path and not "-")
        {
            await File.WriteAllTextAsync(path, text, run.Cancellation);
            run.Say($"Written to {Path.GetFullPath(path)}");
        }
        else
        {
            await run.Terminal.Out.WriteAsync(text);
        }

        return ExitCode.Ok;
    }

    private static async Task<int> CancelAsync(Run run)
    {
        var record = await (await run.ConnectAsync()).CancelPlanAsync(run.Get(Id), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(record, ClientJson.Default.PlanRecord);
        }
        else
        {
            run.Say($"Plan {record.Id}: {record.State}.");
        }

        return ExitCode.Ok;
    }

    private static async Task<int> ProblemAsync(Run run)
    {
        var problem = await (await run.ConnectAsync()).GetPlanProblemAsync(run.Get(Id), run.Cancellation);
        run.WriteJson(problem, ClientJson.Default.InlineProblem);
        return ExitCode.Ok;
    }
}
