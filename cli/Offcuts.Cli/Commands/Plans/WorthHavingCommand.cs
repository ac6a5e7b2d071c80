using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts plans worth-having</c>.</summary>
internal static class WorthHavingCommand
{
    private static readonly BudgetOption Budget = new("6s", most: SearchOptions.MostWhileWaiting);

    /// <summary>The verb.</summary>
    /// <param name="id">The argument that names the plan.</param>
    public static Verb Create(Argument<string> id) => new Verb(
        "worth-having",
        "What one more offcut would save of what a plan spends, by size: what to look for before you buy",
        "offcuts plans worth-having last", "offcuts plans worth-having last --budget 20s --json")
        .With(id, Budget).Does(run => RunAsync(run, id));

    private static async Task<int> RunAsync(Run run, Argument<string> id)
    {
        var budget = Budget.Milliseconds(run);
        var api = await run.ConnectAsync();
        var plan = await PlanIds.FindAsync(run, api, run.Get(id));
        run.Say("Planning with one board more, several times ...");
        var list = await api.GetWorthHavingAsync(plan, budget, run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(list, ClientJson.Default.WorthHavingList);
            return ExitCode.Ok;
        }

        if (list.Items.Count == 0)
        {
            run.Say("The plan buys no wood, so no offcut would save anything.");
            return ExitCode.Ok;
        }

        var worth = list.Items.Where(board => board.Saves > 0).ToList();
        if (worth.Count == 0)
        {
            run.Say(list.Items.Count == 1 ? "The one size that was tried was not found to save anything." : string.Create(CultureInfo.InvariantCulture, $"Of {list.Items.Count} sizes that were tried none was found to save anything."));
            return ExitCode.Ok;
        }

        var unit = await run.UnitAsync();
        var table = new Table("SPECIES", ">SIZE", "SURFACE", ">SAVES");
        foreach (var board in worth)
        {
            table.Add(
                board.SpeciesName, Lengths.Text(board.Size, unit), board.Kind == "sheet" ? "sheet" : board.Surface.Replace('-', ' '), Price.Of(board.Saves, list.Currency));
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }
}
