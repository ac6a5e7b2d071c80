using System.CommandLine;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts plans shopping</c>: the list to take along, and what to buy where a yard lacks something.</summary>
internal static class ShoppingCommand
{
    private static readonly BudgetOption Budget = new("5s", "With --without: time to plan again");

    /// <summary>The verb.</summary>
    /// <param name="id">The argument that names the plan.</param>
    public static Verb Create(Argument<string> id) => new Verb(
        "shopping",
        "What to buy for a plan, a list for each supplier; with --without it is planned again and says what that costs more",
        "offcuts plans shopping last", "offcuts plans shopping last --json", "offcuts plans shopping last --without 8ft")
        .With(id, SearchOptions.Without, Budget).Does(run => RunAsync(run, id));

    private static async Task<int> RunAsync(Run run, Argument<string> id)
    {
        var budget = Budget.Milliseconds(run);
        var api = await run.ConnectAsync();
        var plan = await PlanIds.FindAsync(run, api, run.Get(id));
        var shopping = await api.GetShoppingAsync(plan, run.Cancellation);
        if (await Without.ReadAsync(run, api) is { } without)
        {
            var again = await PlanAgainAsync(run, api, shopping, without, budget);
            var other = await api.GetShoppingAsync(again.Id, run.Cancellation);
            if (!run.Json)
            {
                Compare(run, shopping, other);
            }

            Write(run, other);
            run.Say($"This only tells what would be: last is still what it was. To build so: 'offcuts plans accept {again.Id}'.");
            return PlanAnswer.PlanOf(run, again).Missing.Count > 0 ? ExitCode.Incomplete : ExitCode.Ok;
        }

        Write(run, shopping);
        return ExitCode.Ok;
    }

    private static async Task<PlanRecord> PlanAgainAsync(Run run, IOffcutsApi api, ShoppingRecord shopping, IReadOnlyList<UnavailableRecord> without, int budget)
    {
        // A design that came with its request is known to nobody else, nor is what it was planned from.
        var problem = shopping.Design.Reference is null ? await api.GetPlanProblemAsync(shopping.Plan, run.Cancellation) : null;
        var (values, answers) = problem is null ? await OpenOptions.OfPlanAsync(run, api, shopping.Plan) : (null, null);
        var request = new PlanRequest(
            problem is null ? shopping.Design.Version : null, problem, budget, From: shopping.Plan, With: values, Choose: answers, Without: without, Purpose: "what-if");
        var record = await PlanRunner.RunAsync(run, api, request);
        PlanAnswer.PlanOf(run, record);
        return record;
    }

    private static void Compare(Run run, ShoppingRecord before, ShoppingRecord now)
    {
        var more = now.Total - before.Total;
        var (then, today) = (Price.Of(before.Total, before.Currency), Price.Of(now.Total, now.Currency));
        run.Terminal.Out.WriteLine(SafeText.Of(
            more == 0 ? $"Without that it costs as much as plan {before.Plan}: {today}."
            : more > 0 ? $"Without that it costs {today} instead of {then}: {Price.Of(more, now.Currency)} more."
            : $"Without that it costs {today} instead of {then}: {Price.Of(-more, now.Currency)} less, because prices or the rack have changed since plan {before.Plan}, or the search found better."));
        run.Terminal.Out.WriteLine();
    }

    private static void Write(Run run, ShoppingRecord shopping)
    {
        if (run.Json)
        {
            run.WriteJson(shopping, ClientJson.Default.ShoppingRecord);
        }
        else
        {
            CounterView.Write(shopping, run.Terminal);
        }
    }
}
