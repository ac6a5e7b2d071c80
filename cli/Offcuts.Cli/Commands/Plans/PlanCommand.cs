using System.CommandLine;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts plan</c>.</summary>
internal static class PlanCommand
{
    private static readonly BudgetOption Budget = new("5s");
    private static readonly Option<string> Sheet = SearchOptions.Sheet("DESIGN-ID.html");

    public static Verb Create() => new Verb(
        "plan",
        "Plan a design: what to cut from which board, and what to buy",
        "offcuts plan hall-bench",
        "offcuts plan hall-bench.yaml --budget 10s --sheet bench.html",
        "offcuts plan side-table --with top=28in --choose shelf=yes",
        "offcuts plan hall-bench --from last",
        "offcuts plan hall-bench --from last --without 8ft",
        "offcuts plan - --json --seed 7")
        .With([DesignArgument.Design, .. OpenOptions.All, Budget, SearchOptions.Seed, SearchOptions.From, SearchOptions.Without, Sheet]).Begins(run => DesignArgument.IsFile(run.Get(DesignArgument.Design))).Does(PlanAsync);

    private static async Task<int> PlanAsync(Run run)
    {
        var budget = Budget.Milliseconds(run);
        var api = await run.ConnectAsync();
        var from = await SearchOptions.FromAsync(run, api);
        var design = await DesignArgument.ReferenceAsync(run, api);
        var request = new PlanRequest(
            design, BudgetMs: budget, Seed: SearchOptions.SeedOf(run), From: from, With: await OpenOptions.ValuesAsync(run, api, design), Choose: OpenOptions.Answers(run),
            Without: await Without.ReadAsync(run, api));
        var outcome = await PlanRunner.RunAsync(run, api, request);
        return await PlanAnswer.GiveAsync(run, api, outcome, run.Get(Sheet));
    }
}
