using System.Globalization;
using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards history</c>.</summary>
internal static class History
{
    public static Verb Create() => new Verb(
        "history", "Tell where a board came from, which plan cut it and what became of it", "offcuts boards history K7M", "offcuts boards history K7M --json")
        .With(BoardOptions.Id).Does(ShowAsync);

    private static async Task<int> ShowAsync(Run run)
    {
        var history = await (await run.ConnectAsync()).GetBoardHistoryAsync(run.Get(BoardOptions.Id), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(history, ClientJson.Default.BoardHistory);
            return ExitCode.Ok;
        }

        var table = new Table(">LINE", "WHEN", "WHAT", "PLAN");
        foreach (var item in history.Items)
        {
            var undone = item.UndoneBy is { } later ? string.Create(CultureInfo.InvariantCulture, $" (undone by {later})") : "";
            table.Add(
                item.Line.ToString(CultureInfo.InvariantCulture), item.At.ToString("yyyy-MM-dd HH:mm'Z'", CultureInfo.InvariantCulture), item.Text + undone, item.PlanId);
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }
}
