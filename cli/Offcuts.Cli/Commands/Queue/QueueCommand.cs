using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Plans;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Queue;

/// <summary><c>offcuts queue</c>.</summary>
internal static class QueueCommand
{
    private static readonly Argument<string> Design = new("DESIGN") { Description = "A design of the store by its reference" };
    private static readonly Argument<string> Entry = new("BUILD") { Description = "The build, by its number in the queue or its design" };
    private static readonly Argument<int> To = new("PLACE") { Description = "Its new place, from 1", CustomParser = given => Values.Whole(given) ?? 0 };
    private static readonly Option<int?> Place = new("--place") { Description = "Its place in the queue, from 1; the last if left out", HelpName = "NUMBER", CustomParser = Values.Whole };
    private static readonly BudgetOption Budget = new("10s");
    private static readonly Option<string> Sheet = SearchOptions.Sheet("plan-ID.html");

    public static Verb Create() => new Verb(
        "queue", "Builds that wait, the most important first, and a plan for all of them together; what is built leaves by itself", "offcuts queue add hall-bench", "offcuts queue plan")
        .With(
            new Verb("list", "List the builds that wait", "offcuts queue list", "offcuts queue list --json").Does(ListAsync),
            new Verb("add", "Add a design to the queue", "offcuts queue add hall-bench", "offcuts queue add step-stool --place 1").With(Design, Place).Does(AddAsync),
            new Verb("move", "Move a build to another place", "offcuts queue move hall-bench 1", "offcuts queue move 3 2").With(Entry, To).Does(MoveAsync),
            new Verb("remove", "Take a build out of the queue", "offcuts queue remove hall-bench", "offcuts queue remove 2").With(Entry).Does(RemoveAsync),
            new Verb(
                "plan",
                "Plan all builds of the queue together: one stock, one order for each supplier; where wood does not suffice, the first is served first",
                "offcuts queue plan", "offcuts queue plan --budget 30s --json")
                .With(Budget, SearchOptions.Seed, SearchOptions.From, SearchOptions.Without, Sheet).Does(PlanAsync));

    private static async Task<int> ListAsync(Run run) => Show(run, await (await run.ConnectAsync()).GetQueueAsync(run.Cancellation));

    private static async Task<int> AddAsync(Run run)
    {
        var api = await run.ConnectAsync();
        return Show(run, await api.AddToQueueAsync(new QueueEntry(run.Get(Design), run.Get(Place)), run.Cancellation));
    }

    private static async Task<int> MoveAsync(Run run)
    {
        var api = await run.ConnectAsync();
        return Show(run, await api.MoveInQueueAsync(await FindAsync(run, api), new QueueMove(run.Get(To)), run.Cancellation));
    }

    private static async Task<int> RemoveAsync(Run run)
    {
        var api = await run.ConnectAsync();
        await api.RemoveFromQueueAsync(await FindAsync(run, api), run.Cancellation);
        return Show(run, await api.GetQueueAsync(run.Cancellation));
    }

    private static async Task<int> PlanAsync(Run run)
    {
        var budget = Budget.Milliseconds(run);
        var api = await run.ConnectAsync();
        var queue = (await api.GetQueueAsync(run.Cancellation)).Items;
        if (queue.FirstOrDefault(build => build.Name is null) is { } gone)
        {
            throw new CliException("not-found", $"There is no design '{gone.Design}' any more. Take it out of the queue with 'offcuts queue remove {gone.Design}'.");
        }

        if (queue.Count == 0)
        {
            throw new CliException("invalid", "The queue is empty. Add builds with 'offcuts queue add DESIGN'.");
        }

        var from = await SearchOptions.FromAsync(run, api);
        if (queue.FirstOrDefault(build => build.Plan is not null && build.Plan != from) is { } held)
        {
            run.Say($"Mind: {held.Design} is planned again, though plan {held.Plan} for it is accepted and holds its boards. With --from {held.Plan} they count as free; 'offcuts queue remove {held.Position}' leaves it out.");
        }

        var request = new PlanRequest(
            queue.Count == 1 ? queue[0].Design : null, BudgetMs: budget, Seed: SearchOptions.SeedOf(run), From: from, Without: await Without.ReadAsync(run, api),
            Designs: queue.Count == 1 ? null : [.. queue.Select(build => build.Design)]);
        return await PlanAnswer.GiveAsync(run, api, await PlanRunner.RunAsync(run, api, request), run.Get(Sheet));
    }

    private static async Task<long> FindAsync(Run run, IOffcutsApi api)
    {
        var (given, queue) = (run.Get(Entry), (await api.GetQueueAsync(run.Cancellation)).Items);
        return queue.FirstOrDefault(build => build.Position.ToString(CultureInfo.InvariantCulture) == given || build.Design == given)?.Id
            ?? throw new CliException("not-found", $"There is no build '{given}' in the queue. See 'offcuts queue list'.");
    }

    private static int Show(Run run, QueueRecord queue)
    {
        if (run.Json)
        {
            run.WriteJson(queue, ClientJson.Default.QueueRecord);
            return ExitCode.Ok;
        }

        if (queue.Items.Count == 0)
        {
            run.Say("The queue is empty. Add builds with 'offcuts queue add DESIGN'.");
            return ExitCode.Ok;
        }

        var table = new Table(">PLACE", "DESIGN", "NAME", "ADDED", "ACCEPTED AS");
        foreach (var build in queue.Items)
        {
            table.Add(
                build.Position.ToString(CultureInfo.InvariantCulture), build.Design, build.Name ?? "(no such design any more)",
                build.AddedAt.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), build.Plan is { } plan ? $"plan {plan}" : "");
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }
}
