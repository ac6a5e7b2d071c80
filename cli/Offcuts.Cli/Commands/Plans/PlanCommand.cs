using System.CommandLine;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts plan</c>.</summary>
internal static class PlanCommand
{
    private static readonly Argument<string> Design = new("DESIGN")
    {
        Description = "A design of the store by its reference, or the path of a design file, or - for standard input",
    };

    private static readonly Option<string> Budget = new("--budget") { Description = "Time to search, for instance 5s or 2m (5s if left out)", HelpName = "TIME" };
    private static readonly Option<int?> Seed = new("--seed") { Description = "Seed of every random choice (1 if left out)", HelpName = "NUMBER", CustomParser = Values.Whole };
    private static readonly Option<string> From = new("--from") { Description = "Start from an earlier plan, by its id or last: keep what still can be, and say what has changed", HelpName = "PLAN" };
    private static readonly Option<string> Sheet = new("--sheet") { Description = "Where to write the cut sheet (an HTML page); DESIGN-ID.html if left out, not written with --json", HelpName = "PATH" };

    public static Verb Create() => new Verb(
        "plan",
        "Plan a design: what to cut from which board, and what to buy",
        "offcuts plan hall-bench",
        "offcuts plan hall-bench.yaml --budget 10s --sheet bench.html",
        "offcuts plan hall-bench --from last",
        "offcuts plan - --json --seed 7")
        .With(Design, Budget, Seed, From, Sheet).Does(PlanAsync);

    private static async Task<int> PlanAsync(Run run)
    {
        var budget = Duration.Milliseconds(run.Get(Budget) ?? "5s", Budget.Name);
        var api = await run.ConnectAsync();
        var from = run.Get(From) is { } given ? await PlanIds.FindAsync(run, api, given) : null;
        var request = new PlanRequest(await ReferenceAsync(run, api), BudgetMs: budget, Seed: run.Get(Seed) ?? 1, From: from);
        var outcome = await PlanRunner.RunAsync(run, api, request);
        return await PlanAnswer.GiveAsync(run, api, outcome, run.Get(Sheet));
    }

    // Only what looks like a path is one: a stored design must not be hidden by a file that happens to have its name.
    private static async Task<string> ReferenceAsync(Run run, IOffcutsApi api)
    {
        var design = run.Get(Design);
        var isFile = design == "-" || design.Contains('/', StringComparison.Ordinal) || design.Contains('\\', StringComparison.Ordinal)
            || Path.GetExtension(design).ToLowerInvariant() is ".yaml" or ".yml" or ".json";
        if (!isFile)
        {
            return design;
        }

        using var document = await Documents.ReadAsync(run, design);
        var stored = await api.StoreDesignAsync(document, run.Cancellation);
        run.Say($"Stored '{stored.Design.Name}' as {stored.Reference}, version {stored.Version}.");
        DefectNotes.Say(run, stored.Design);
        return stored.Version;
    }
}
