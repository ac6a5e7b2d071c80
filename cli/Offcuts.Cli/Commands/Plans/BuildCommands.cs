using System.CommandLine;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts plans accept</c>, <c>release</c> and <c>close</c>: what becomes of a plan.</summary>
internal static class BuildCommands
{
    private static readonly Argument<int?> Number = new("BOARD")
    {
        Description = "The number in the plan of the board that is cut; all that are not closed yet if left out",
        Arity = ArgumentArity.ZeroOrOne,
        CustomParser = Values.Whole,
    };

    public static Verb Accept(Argument<string> plan) => new Verb(
        "accept", "Accept a plan: its boards are held for it and no other plan sees them", "offcuts plans accept last", "offcuts plans accept 3k7m9dxt")
        .With(plan).Does(run => ChangeAsync(run, plan, (api, id) => api.AcceptPlanAsync(id, run.Cancellation)));

    public static Verb Release(Argument<string> plan) => new Verb(
        "release", "Give back the boards that a plan holds and has not cut", "offcuts plans release last")
        .With(plan).Does(run => ChangeAsync(run, plan, (api, id) => api.ReleasePlanAsync(id, run.Cancellation)));

    public static Verb Close(Argument<string> plan) => new Verb(
        "close",
        "Say that boards of an accepted plan are cut: they are used, and their leftovers are logged",
        "offcuts plans close last",
        "offcuts plans close last 2 --leftover \"1 = 5 x 30\" --because \"split end cut off\"",
        "offcuts plans close last 3 --leftover 1=gone --add \"3/4 x 1 1/2 x 20\" --place \"offcut bin\"")
        .With(plan, Number).With(CloseOptions.All).Does(run => CloseAsync(run, plan));

    private static async Task<int> ChangeAsync(Run run, Argument<string> plan, Func<IOffcutsApi, string, Task<PlanRecord>> change)
    {
        var api = await run.ConnectAsync();
        var record = await change(api, await PlanIds.FindAsync(run, api, run.Get(plan)));
        if (run.Json)
        {
            run.WriteJson(record, ClientJson.Default.PlanRecord);
        }
        else if (record.Build is { } build)
        {
            BuildView.Write(record, build, run.Terminal);
        }
        else
        {
            run.Say($"Plan {record.Id} holds no boards any more.");
        }

        return ExitCode.Ok;
    }

    private static async Task<int> CloseAsync(Run run, Argument<string> plan)
    {
        var api = await run.ConnectAsync();
        var id = await PlanIds.FindAsync(run, api, run.Get(plan));
        var before = await api.GetPlanAsync(id, run.Cancellation);
        var record = await api.CloseBoardsAsync(id, await EntryAsync(run, before), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(record, ClientJson.Default.PlanRecord);
            return ExitCode.Ok;
        }

        BuildView.Write(record, record.Build!, run.Terminal);
        await BuildView.WriteLeftoversAsync(run, api, before.Build, record.Build!);
        return ExitCode.Ok;
    }

    private static async Task<ClosingEntry> EntryAsync(Run run, PlanRecord plan)
    {
        if (run.Find(Number) is { } number)
        {
            return new ClosingEntry([CloseOptions.Read(run, plan.Plan?.Boards.FirstOrDefault(board => board.Number == number), number, await run.UnitAsync(), plan.Plan)]);
        }

        return CloseOptions.IsAnyGiven(run)
            ? throw CliException.Usage("Name the board that this is about, for instance 'offcuts plans close last 2 --leftover 1=gone'.")
            : new ClosingEntry();
    }
}
