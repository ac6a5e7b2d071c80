using System.CommandLine;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts plan</c>.</summary>
internal static class PlanCommand
{
    private static readonly Option<string> Budget = new("--budget") { Description = "Time to search, for instance 5s or 2m (5s if left out)", HelpName = "TIME" };
    private static readonly Option<int?> Seed = new("--seed") { Description = "Seed of every random choice (1 if left out)", HelpName = "NUMBER", CustomParser = Values.Whole };
    private static readonly Option<string> From = new("--from") { Description = "Start from an earlier plan, by its id or last: keep what still can be, and say what has changed", HelpName = "PLAN" };
    private static readonly Option<string> Sheet = new("--sheet") { Description = "Where to write the cut sheet (an HTML page); DESIGN-ID.html if left out, not written with --json", HelpName = "PATH" };

    private static readonly Option<string[]> Missing = Without.Option();

    public static Verb Create() => new Verb(
        "plan",
        "Plan a design: what to cut from which board, and what to buy",
        "offcuts plan hall-bench",
        "offcuts plan hall-bench.yaml --budget 10s --sheet bench.html",
        "offcuts plan side-table --with top=28in --choose shelf=yes",
        "offcuts plan hall-bench --from last",
        "offcuts plan hall-bench --from last --without 8ft",
        "offcuts plan - --json --seed 7")
        .With([DesignArgument.Design, .. OpenOptions.All, Budget, Seed, From, Missing, Sheet]).Does(PlanAsync);

    private static async Task<int> PlanAsync(Run run)
    {
        var budget = Duration.Milliseconds(run.Get(Budget) ?? "5s", Budget.Name);
        var api = await run.ConnectAsync();
        var from = run.Get(From) is { } given ? await PlanIds.FindAsync(run, api, given) : null;
        var design = await DesignArgument.ReferenceAsync(run, api);
        var request = new PlanRequest(
            design, BudgetMs: budget, Seed: run.Get(Seed) ?? 1, From: from, With: await OpenOptions.ValuesAsync(run, api, design), Choose: OpenOptions.Answers(run),
            Without: await Without.ReadAsync(run, api, Missing));
        var outcome = await PlanRunner.RunAsync(run, api, request);
        return await PlanAnswer.GiveAsync(run, api, outcome, run.Get(Sheet));
    }
}
