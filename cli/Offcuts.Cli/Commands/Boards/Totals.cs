using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards totals</c>.</summary>
internal static class Totals
{
    private static readonly Option<string> By = new("--by")
    {
        Description = "Add up by species (if left out), thickness, length (in bands), place, batch or age",
        HelpName = "WORD",
        CompletionSources = { "species", "thickness", "length", "place", "batch", "age" },
    };

    public static Verb Create() => new Verb(
        "totals",
        "Add up the boards that are there: how many, their volume, and what they are worth by the rates of plans",
        "offcuts boards totals",
        "offcuts boards totals --by length --species walnut",
        "offcuts boards totals --by place --older-than 2y")
        .With([By, .. Filter.All])
        .Does(TotalAsync);

    private static async Task<int> TotalAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var totals = await api.GetBoardTotalsAsync(Filter.In(new TotalsQuery { By = run.Get(By) }, run, unit), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(totals, ClientJson.Default.BoardTotalsRecord);
        }
        else if (totals.Items.Count > 0)
        {
            Write(totals, unit, run.Terminal);
        }
        else
        {
            run.Say("No boards match.");
        }

        return ExitCode.Ok;
    }

    private static void Write(BoardTotalsRecord totals, DisplayUnit unit, Terminal terminal)
    {
        var table = new Table(totals.By.ToUpperInvariant(), ">BOARDS", ">VOLUME", ">WORTH");
        foreach (var total in totals.Items.Append(totals.Total))
        {
            table.Add(
                total.Name, total.Boards.ToString(CultureInfo.InvariantCulture), VolumeText.OfCubicMetres(total.VolumeM3, unit),
                Price.Of(total.Worth, totals.Currency));
        }

        table.Write(terminal);
    }
}
