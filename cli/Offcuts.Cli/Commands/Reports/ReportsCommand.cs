using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Reports;

/// <summary><c>offcuts reports</c>.</summary>
internal static class ReportsCommand
{
    private static readonly Option<string> Chart = new("--chart") { Description = "Write a chart (SVG) to this file instead of the table, or - for standard output", HelpName = "PATH" };

    public static Verb Create() => new Verb("reports", "How well the wood was used, and how the pile grows", "offcuts reports builds", "offcuts reports pile --chart pile.svg")
        .With(
            new Verb("builds", "The yield of each build, the share that came from the rack, and the money that did not have to be spent", "offcuts reports builds", "offcuts reports builds --json").Does(BuildsAsync),
            new Verb("pile", "The wood on the rack over time", "offcuts reports pile", "offcuts reports pile --chart pile.svg").With(Chart).Does(PileAsync));

    private static async Task<int> BuildsAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var builds = await Paging.AllAsync<BuildYieldRecord>(async cursor =>
        {
            var page = await api.ListBuildYieldsAsync(new PageQuery { Limit = Paging.Largest, Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
        if (run.Json)
        {
            run.WriteJson(new BuildYieldPage(builds, null), ClientJson.Default.BuildYieldPage);
            return ExitCode.Ok;
        }

        if (builds.Count == 0)
        {
            run.Say("No plan was accepted yet. Accept one with 'offcuts plans accept PLAN'.");
            return ExitCode.Ok;
        }

        var unit = await run.UnitAsync();
        var table = new Table("PLAN", "DESIGN", "BUILD", ">WOOD USED", ">PARTS", ">YIELD", ">FROM RACK", ">NOT SPENT", ">SPENT");
        foreach (var build in builds)
        {
            table.Add(
                build.PlanId, build.Design.Reference ?? build.Design.Name, build.State.Replace('-', ' '), VolumeText.OfCubicMetres(build.ConsumedM3, unit), VolumeText.OfCubicMetres(build.PartsM3, unit),
                Percent(build.Yield), Percent(build.RackShare), Price.Of(build.NotSpent, build.Currency), Price.Of(build.Spent, build.Currency));
        }

        foreach (var all in builds.GroupBy(build => build.Currency).Where(_ => builds.Count > 1))
        {
            var (used, parts) = (all.Sum(build => build.ConsumedM3), all.Sum(build => build.PartsM3));
            table.Add(
                "all", "", "", VolumeText.OfCubicMetres(used, unit), VolumeText.OfCubicMetres(parts, unit), Percent(used > 0 ? parts / used : null),
                Percent(parts > 0 ? all.Sum(build => build.RackShare * build.PartsM3) / parts : null),
                Price.Of(all.Sum(build => build.NotSpent), all.Key), Price.Of(all.Sum(build => build.Spent), all.Key));
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }

    private static async Task<int> PileAsync(Run run)
    {
        var api = await run.ConnectAsync();
        if (run.Get(Chart) is { } path)
        {
            await Files.WriteOrPrintAsync(run, path, await api.GetPileChartAsync(run.Cancellation));
            return ExitCode.Ok;
        }

        var pile = await api.GetPileAsync(run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(pile, ClientJson.Default.PileRecord);
            return ExitCode.Ok;
        }

        if (pile.Items.Count == 0)
        {
            run.Say("Nothing was ever logged. Begin with 'offcuts boards add'.");
            return ExitCode.Ok;
        }

        var unit = await run.UnitAsync();
        var table = new Table("DAY", ">PIECES", ">WOOD");
        foreach (var point in pile.Items)
        {
            table.Add(
                point.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), point.Boards.ToString(CultureInfo.InvariantCulture), VolumeText.OfCubicMetres(point.VolumeM3, unit));
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }

    private static string Percent(decimal? share) => share is { } known ? string.Create(CultureInfo.InvariantCulture, $"{known * 100:0.#} %") : "-";
}
