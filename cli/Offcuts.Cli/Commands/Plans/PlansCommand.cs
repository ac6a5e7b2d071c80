using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts plans</c>.</summary>
internal static class PlansCommand
{
    private static readonly Argument<string> Id = new("PLAN") { Description = "The plan's id, or last for the newest but for those that only tell what would be" };
    private static readonly Argument<int> Number = new("NUMBER") { Description = "The board's number in the plan, from 1", CustomParser = given => Values.Whole(given) ?? 0 };
    private static readonly Option<string> Design = new("--design") { Description = "Only plans of this design", HelpName = "DESIGN" };
    private static readonly Option<string> State = new("--state") { Description = "queued, planning, done, cancelled, failed, interrupted", HelpName = "WORD", CompletionSources = { "queued", "planning", "done", "cancelled", "failed", "interrupted" } };
    private static readonly Option<string> Output = new("--output", "-o") { Description = "File to write to instead of standard output", HelpName = "PATH" };

    public static Verb Create() => new Verb("plans", "Plans made so far: their cut sheets, and what becomes of them", "offcuts plans list", "offcuts plans accept last")
        .With(
            new Verb("list", "List plans, newest first", "offcuts plans list", "offcuts plans list --design hall-bench --state done --json")
                .With(Design, State).Does(ListAsync),
            new Verb("show", "Show a plan", "offcuts plans show 3K7M9", "offcuts plans show 3K7M9 --json").With(Id).Does(ShowAsync),
            ShoppingCommand.Create(Id),
            WorthHavingCommand.Create(Id),
            new Verb("sheet", "Write a plan's cut sheet, an HTML page to print", "offcuts plans sheet 3K7M9 -o bench.html")
                .With(Id, Output).Does(run => WriteAsync(run, (api, id) => api.GetCutSheetAsync(id, run.Cancellation))),
            new Verb("diagram", "Write the cutting diagram of one board as SVG", "offcuts plans diagram 3K7M9 2 -o board-2.svg", "offcuts plans diagram last 1 -o board-1.svg")
                .With(Id, Number, Output).Does(run => WriteAsync(run, (api, id) => api.GetDiagramAsync(id, run.Get(Number), run.Cancellation))),
            BuildCommands.Accept(Id), BuildCommands.Close(Id), BuildCommands.Release(Id),
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

        var table = new Table("PLAN", "DESIGN", "STATE", "ASKED FOR", "RESULT", ">COST", ">GAP", "BUILD");
        foreach (var plan in plans)
        {
            table.Add(
                plan.Id, plan.Design.Reference ?? plan.Design.Name, plan.State, plan.RequestedAt.ToString("yyyy-MM-dd HH:mm'Z'", CultureInfo.InvariantCulture),
                plan.Status, plan.TotalCost is { } cost ? Price.Of(cost, plan.Currency!) : "",
                Gap(plan.Gap), plan.Build?.Replace('-', ' ') ?? (plan.Purpose == "what-if" ? "what if" : null));
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }

    /// <summary>A plan's gap for a list; <c>-</c> where there is no plan, or where nothing is known of what it has to cost.</summary>
    internal static string Gap(decimal? known) =>
        known is { } gap and < 1 ? string.Create(CultureInfo.InvariantCulture, $"{gap * 100:0.#} %") : "-";

    private static async Task<int> ShowAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var record = await api.GetPlanAsync(await PlanAsync(run, api), run.Cancellation);
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

    private static async Task<int> WriteAsync(Run run, Func<IOffcutsApi, string, Task<string>> fetch)
    {
        var api = await run.ConnectAsync();
        var text = await fetch(api, await PlanAsync(run, api));
        await Files.WriteOrPrintAsync(run, run.Get(Output), text);
        return ExitCode.Ok;
    }

    private static Task<string> PlanAsync(Run run, IOffcutsApi api) => PlanIds.FindAsync(run, api, run.Get(Id));

    private static async Task<int> CancelAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var record = await api.CancelPlanAsync(await PlanAsync(run, api), run.Cancellation);
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
        var api = await run.ConnectAsync();
        var problem = await api.GetPlanProblemAsync(await PlanAsync(run, api), run.Cancellation);
        run.WriteJson(problem, ClientJson.Default.InlineProblem);
        return ExitCode.Ok;
    }
}
