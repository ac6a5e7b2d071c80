using System.Globalization;
using Offcuts.Cli.Commands.Boards;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.StockTakes;

/// <summary>Steps and stock-takes as a person reads them.</summary>
internal static class StepView
{
    /// <summary>What the only step of a command came to, for a person or a script.</summary>
    public static void WriteAlone(Run run, StockTakeStepRecord step, DisplayUnit unit)
    {
        if (run.Json)
        {
            run.WriteJson(step, ClientJson.Default.StockTakeStepRecord);
        }
        else
        {
            Write(step, run, unit);
        }
    }

    /// <summary>What a step came to: <c>K7M  black walnut, rough, 1 x 5 1/2 x 36 in: confirmed. 3 unseen.</c></summary>
    public static void Write(StockTakeStepRecord step, Run run, DisplayUnit unit)
    {
        run.Terminal.Out.WriteLine(SafeText.Of(step.Board is { } board ? $"{Board(board, unit)}: {step.Finding ?? "not confirmed any more"}" : step.Understood));
        run.Say(step.Unseen == 0 ? "All that the book has here is seen." : string.Create(CultureInfo.InvariantCulture, $"{step.Unseen} unseen."));
    }

    /// <summary>A board in one line.</summary>
    public static string Board(BoardRecord board, DisplayUnit unit) =>
        $"{board.Id}  {(board.Quantity == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"{board.Quantity} of "))}{BoardView.Species(board)}, {BoardView.Milled(board)}, {BoardView.Size(board, unit)}{BoardView.Condition(board, unit)}";

    /// <summary>What a finished stock-take came to.</summary>
    public static string Summary(StockTakeRecord take)
    {
        var findings = take.Seen.GroupBy(seen => seen.Finding).Select(alike => string.Create(CultureInfo.InvariantCulture, $"{alike.Count()} {alike.Key}")).ToList();
        return string.Create(
            CultureInfo.InvariantCulture, $"Stock-take {take.Number} of {take.Place} is finished: {(findings.Count == 0 ? "nothing was there" : string.Join(", ", findings))}.");
    }

    /// <summary>A list.</summary>
    public static void WriteTable(IReadOnlyList<StockTakeSummary> takes, Terminal terminal)
    {
        var table = new Table(">NUMBER", "PLACE", "STARTED", "FINISHED");
        foreach (var take in takes)
        {
            table.Add(take.Number.ToString(CultureInfo.InvariantCulture), take.Place, Day(take.StartedAt), take.FinishedAt is { } at ? Day(at) : "open");
        }

        table.Write(terminal);
    }

    private static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm'Z'", CultureInfo.InvariantCulture);
}
