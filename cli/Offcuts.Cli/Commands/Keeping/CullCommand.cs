using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Boards;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Keeping;

/// <summary><c>offcuts cull</c>.</summary>
internal static class CullCommand
{
    private static readonly Option<string> Free = new("--free") { Description = "Suggest no more than makes so much space, for instance 0.2m3 or 40 bd ft", HelpName = "VOLUME" };
    private static readonly Option<int?> Top = new("--top") { Description = "Suggest at most so many", HelpName = "COUNT", CustomParser = Values.Whole };
    private static readonly Option<string> OlderThan = new("--older-than") { Description = "From what age on a board has lain for long: 3y, 18 months, 400 days; 2y if left out", HelpName = "AGE" };

    public static Verb Create() => new Verb(
        "cull",
        "What may be let go: pieces that the keep rule does not keep, that fit no saved design, that have lain for long or fill a place beyond its limit",
        "offcuts cull",
        "offcuts cull --free 0.2m3",
        "offcuts cull --top 10 --older-than 3y")
        .With(Free, Top, OlderThan).Does(CullAsync);

    private static async Task<int> CullAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var cull = await api.GetCullAsync(new CullQuery { Top = run.Get(Top), FreeM3 = Space(run, unit), OlderThanDays = Days(run) }, run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(cull, ClientJson.Default.CullRecord);
            return ExitCode.Ok;
        }

        Write(cull, unit, run);
        return ExitCode.Ok;
    }

    private static void Write(CullRecord cull, DisplayUnit unit, Run run)
    {
        foreach (var item in cull.Items)
        {
            var board = item.Board;
            var count = item.Quantity == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"{item.Quantity} of ");
            var place = board.Place is null ? "" : $", {board.Place}";
            run.Terminal.Out.WriteLine(SafeText.Of(
                $"{board.Id,-5}{count}{BoardView.Species(board)}, {BoardView.Size(board, unit)}{place}: {VolumeText.OfCubicMetres(item.VolumeM3, unit)}, worth {Price.Of(item.Worth, cull.Currency)}"));
            foreach (var reason in item.Reasons)
            {
                run.Terminal.Out.WriteLine(SafeText.Of($"     - {reason.Text}"));
            }
        }

        if (cull.Unreadable.Count > 0)
        {
            run.Say($"These saved designs cannot be read any more, so wood for them may be among this; 'offcuts plan' says why: {string.Join(", ", cull.Unreadable)}.");
        }

        if (cull.Items.Count == 0)
        {
            run.Say("Nothing to let go: everything is worth keeping by the rule, of use for a design, and has its place.");
            return;
        }

        var others = cull.Suggested > cull.Items.Count ? string.Create(CultureInfo.InvariantCulture, $" {cull.Suggested - cull.Items.Count} more might go.") : "";
        run.Say($"Together {VolumeText.OfCubicMetres(cull.VolumeM3, unit)}, worth {Price.Of(cull.Worth, cull.Currency)} to the shop.{others} "
            + "Nothing was changed: 'offcuts boards edit ID --status gone' lets a board go, 'offcuts boards remove ID' forgets it.");
        if (cull.Designs == 0)
        {
            run.Say("There are no saved designs, so nothing is said of what fits none.");
        }
    }

    private static decimal? Space(Run run, DisplayUnit unit) => run.Get(Free) is not { } text ? null
        : VolumeReading.TryParse(text, unit, out var cubicMetres, out var error) ? cubicMetres
        : throw CliException.Invalid($"{Free.Name}: {error}");

    private static int? Days(Run run)
    {
        var today = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
        return run.Get(OlderThan) is not { } age ? null
            : AgeReading.TryParse(age, today, out var since, out var error) ? today.DayNumber - since.DayNumber
            : throw CliException.Invalid($"{OlderThan.Name}: {error}");
    }
}
