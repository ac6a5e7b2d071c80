using Offcuts.Cli.Editing;
using Offcuts.Cli.Help;
using Offcuts.Contracts;
using Refit;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>Logs a whole pile at a terminal: each line is logged as it is entered, and the last can be taken back.</summary>
internal sealed class LogSession(Run run)
{
    private LineCarry carry = new();

    // What carried on before each line that logged a board, so that undo takes that back too.
    private readonly Stack<LineCarry> before = new();

    /// <summary>Asks for lines until there are no more.</summary>
    public async Task<int> RunAsync()
    {
        var api = await run.ConnectAsync();
        var tally = new LogTally(await run.UnitAsync());
        var editor = new LineEditor(run.Terminal, "log> ");
        run.Say("One line for each board or bundle, for instance 3 @ 3/4 x 5 1/2 x 36 ash, rack 2. Species, place and batch carry on.");
        run.Say("Also: undo, total, help, done.");
        while (await editor.ReadAsync(run.Cancellation) is { } line)
        {
            switch (line.Trim().ToLowerInvariant())
            {
                case "":
                    break;
                case "done" or "quit" or "exit":
                    return End(tally);
                case "help":
                    run.Terminal.Say(Topics.Find("quick-lines")!);
                    break;
                case "total":
                    run.Terminal.Say(tally.Total());
                    break;
                case "undo":
                    await UndoAsync(api, tally);
                    break;
                default:
                    await LogAsync(api, line, tally);
                    break;
            }
        }

        return End(tally);
    }

    private async Task LogAsync(IOffcutsApi api, string line, LogTally tally)
    {
        var dry = run.Get(BoardOptions.DryRun);
        try
        {
            var result = await api.LogLinesAsync(new BoardLinesEntry(line, dry, carry), run.Cancellation);
            LineView.Write(result, line, run.Terminal);
            if (result.Lines.Select(said => said.Board).OfType<BoardRecord>().SingleOrDefault() is { } board)
            {
                before.Push(carry);
                tally.Add(board);
            }

            carry = result.Carry;
            await run.Terminal.Out.FlushAsync(run.Cancellation);
        }
        catch (ApiException refused) when (LineView.TryWriteFaults(line, refused, run.Terminal))
        {
            // The line is told with its faults; the next may be right.
        }
    }

    private async Task UndoAsync(IOffcutsApi api, LogTally tally)
    {
        if (tally.Last is not { } last)
        {
            run.Terminal.Say("Nothing was logged here yet.");
            return;
        }

        try
        {
            var history = await api.GetBoardHistoryAsync(last.Id, run.Cancellation);
            await api.UndoJournalLineAsync(history.Items.Last(item => item.Kind == "log").Line, run.Cancellation);
        }
        catch (ApiException refused) when (FaultReport.ProblemIn(refused) is { } problem)
        {
            // Somebody else has changed it since.
            run.Terminal.Say(SafeText.Of(problem.Detail));
            return;
        }

        tally.RemoveLast();
        carry = before.Pop();
        run.Terminal.Say($"Took back {last.Id}. Now {tally.Total()}.");
    }

    private int End(LogTally tally)
    {
        run.Say(tally.Last is null ? "Nothing was logged." : $"Logged {tally.Total()}. Write the ids on their end grain.");
        return ExitCode.Ok;
    }
}
