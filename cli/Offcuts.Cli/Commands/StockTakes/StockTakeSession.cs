using System.Globalization;
using System.Net;
using Offcuts.Cli.Commands.Boards;
using Offcuts.Cli.Editing;
using Offcuts.Contracts;
using Offcuts.Domain;
using Refit;

namespace Offcuts.Cli.Commands.StockTakes;

/// <summary>
/// Walks through a place at a terminal: shows each board that is unseen, and takes every answer as it is entered. What is answered is kept, so that
/// one may stop at any time and go on later.
/// </summary>
internal sealed class StockTakeSession(Run run, IOffcutsApi api, StockTakeRecord take, DisplayUnit unit)
{
    private const string Help = """
        yes (or y, nothing)  the board that is shown is there, as the book has it
        size 3/4 x 5 x 28    it is there, but of that size; quantity 2, note TEXT and batch TEXT likewise
        strike (or no, n)    it is not there: strike it off
        later                skip it for now
        K7M                  a board of that id is here; if the book has it elsewhere, it is moved here
        3/4 x 5 x 36 ash     a board that is not in the book
        add 3/4 x 5 x 36     the same; species and batch carry on from the last
        undo                 take the last answer back
        show                 what is still unseen; help (or ?) shows this
        finish               end the stock-take; done: stop here and go on later
        """;

    private readonly LineEditor editor = new(run.Terminal, "stocktake> ");
    private readonly Stack<(StockTakeStepRecord Step, LineCarry Carry)> taken = new();
    private readonly Queue<BoardRecord> ahead = new(take.Unseen);
    private LineCarry carry = new();

    /// <summary>Asks until all is seen and the stock-take finished, or no more is to be asked.</summary>
    public async Task<int> RunAsync()
    {
        run.Say(string.Create(CultureInfo.InvariantCulture, $"Stock-take of {take.Place}: {ahead.Count} unseen. Is each there? yes, size ..., strike, later; other ids; new boards as you would say them. Also: undo, show, help, finish, done."));
        Show();
        while (await editor.ReadAsync(run.Cancellation) is { } line)
        {
            try
            {
                if (await AnswerAsync(line.Trim()) is { } code)
                {
                    return code;
                }
            }
            catch (ApiException refused) when (FaultReport.ProblemIn(refused) is { } problem)
            {
                // Refused is no reason to stop: the next answer may be right.
                if (!LineView.TryWriteFaults(line.Trim(), refused, run.Terminal))
                {
                    run.Terminal.Say(SafeText.Of(string.Join(" ", problem.Errors.Select(fault => fault.Detail).DefaultIfEmpty(problem.Detail))));
                }
            }
            catch (CliException refused)
            {
                run.Terminal.Say(SafeText.Of(refused.Message));
            }

            await run.Terminal.Out.FlushAsync(run.Cancellation);
        }

        return Stop();
    }

    private async Task<int?> AnswerAsync(string line)
    {
        var (word, rest) = line.Split(' ', 2, StringSplitOptions.TrimEntries) is [var first, var others] ? (first.ToLowerInvariant(), others) : (line.ToLowerInvariant(), "");
        switch (word)
        {
            case "done" or "quit" or "exit" when rest.Length == 0:
                return Stop();
            case "help" or "?" or "h" when rest.Length == 0:
                run.Terminal.Say(Help);
                break;
            case "show" when rest.Length == 0:
                await ListAsync();
                break;
            case "finish" when rest.Length == 0:
                return await FinishAsync();
            case "undo" when rest.Length == 0:
                await UndoAsync();
                break;
            case "later" or "skip" when rest.Length == 0:
                ahead.Enqueue(Current());
                ahead.Dequeue();
                Show();
                break;
            case "" or "y" or "yes" when rest.Length == 0:
                await TakeAsync(new StockTakeStepEntry(Confirm: Current().Id));
                break;
            case "strike" or "gone" or "no" or "n":
                await TakeAsync(new StockTakeStepEntry(Strike: rest.Length > 0 ? rest : Current().Id));
                break;
            case "size" or "quantity" or "qty" or "note" or "batch" when rest.Length > 0 && ahead.Count > 0:
                await TakeAsync(new StockTakeStepEntry(Correct: new StockTakeCorrection(Current().Id, await CorrectedAsync(Current(), word, rest))));
                break;
            case "add" or "new" when rest.Length > 0:
                await TakeAsync(new StockTakeStepEntry(Line: rest, Carry: carry));
                break;
            default:
                RefuseBareSize(line);
                await TakeAsync(await IsKnownAsync(line) ? new StockTakeStepEntry(Confirm: line) : new StockTakeStepEntry(Line: line, Carry: carry));
                break;
        }

        return null;
    }

    // A size alone may be that of the board that is shown, or another board of the species before: guessing wrong would spoil the book.
    private void RefuseBareSize(string line)
    {
        if (ahead.Count > 0 && SizeText.TryParse(line, unit, out _, out _))
        {
            throw CliException.Invalid($"Is that {Current().Id}, or another board? Write 'size {line}' if {Current().Id} is of that size, 'add {line}' for a board that is not in the book.");
        }
    }

    // A word may be an id or a species: yew is both.
    private async Task<bool> IsKnownAsync(string word)
    {
        if (word.Contains(' ', StringComparison.Ordinal) || !BoardIds.TryNormalise(word, out var id))
        {
            return false;
        }

        try
        {
            await api.GetBoardAsync(id, run.Cancellation);
            return true;
        }
        catch (ApiException refused) when (refused.StatusCode == HttpStatusCode.NotFound)
        {
            return false;
        }
    }

    private BoardRecord Current() => ahead.Count > 0 ? ahead.Peek() : throw CliException.Invalid("No board is shown. Say its id, or what it is.");

    private async Task<BoardEntry> CorrectedAsync(BoardRecord board, string what, string said)
    {
        var entry = new BoardEntry(
            board.Species, board.ThicknessMm, board.WidthMm, board.LengthMm, board.Kind, board.Quantity, board.Surface, board.Appearance, board.Status,
            board.Defects, take.Place, board.Source, board.Note, board.Batch, board.Warp, board.Ends, board.Estimated, board.Moisture);
        if (what == "size")
        {
            var isSoftwood = SizeText.IsNominal(said) && (await KnownSpecies.FindAsync(api, board.Species, run.Cancellation))?.IsSoftwood == true;
            var (size, nominal) = Lengths.BoardSize("size", [said], unit, isSoftwood);
            if (nominal is not null)
            {
                run.Say($"The size was {SizeText.FormatNominal(nominal, size)}.");
            }

            return entry with
            {
                ThicknessMm = size.Thickness.Millimetres,
                WidthMm = size.Width.Millimetres,
                LengthMm = size.Length.Millimetres,
                Surface = nominal is null ? entry.Surface : "surfaced",
                Estimated = null,
            };
        }

        return what switch
        {
            "note" => entry with { Note = said },
            "batch" => entry with { Batch = said },
            _ when int.TryParse(said, NumberStyles.None, CultureInfo.InvariantCulture, out var quantity) => entry with { Quantity = quantity },
            _ => throw CliException.Invalid($"'{said}': give a whole number, for instance quantity 2."),
        };
    }

    private async Task TakeAsync(StockTakeStepEntry entry)
    {
        var step = await api.TakeStepAsync(take.Number, entry, run.Cancellation);
        if (step.Board is not null)
        {
            taken.Push((step, carry));
        }

        carry = step.Carry ?? carry;
        StepView.Write(step, run, unit);
        await LookAgainAsync();
        Show();
    }

    private async Task UndoAsync()
    {
        if (!taken.TryPeek(out var last))
        {
            run.Terminal.Say("Nothing was answered here yet.");
            return;
        }

        if (last.Step.JournalLine is { } line)
        {
            await api.UndoJournalLineAsync(line, run.Cancellation);
        }
        else
        {
            await api.TakeStepAsync(take.Number, new StockTakeStepEntry(Forget: last.Step.Board!.Id), run.Cancellation);
        }

        // Refused, it stays the last answer.
        taken.Pop();
        carry = last.Carry;
        run.Terminal.Say($"Took back {last.Step.Board!.Id}.");
        await LookAgainAsync();
        Show();
    }

    // Others may walk here too, and an undo brings boards back: what is unseen is asked for anew, in the order in which it was shown.
    private async Task LookAgainAsync()
    {
        var unseen = (await api.GetStockTakeAsync(take.Number, run.Cancellation)).Unseen.ToDictionary(board => board.Id);
        var shown = ahead.Select(board => board.Id).Where(unseen.ContainsKey).ToList();
        ahead.Clear();
        foreach (var id in unseen.Keys.Except(shown).Concat(shown))
        {
            ahead.Enqueue(unseen[id]);
        }
    }

    private async Task ListAsync()
    {
        await LookAgainAsync();
        if (ahead.Count > 0)
        {
            BoardView.WriteTable(ahead, unit, run.Terminal);
        }

        Show();
    }

    private async Task<int?> FinishAsync()
    {
        await LookAgainAsync();
        string? unseen = null;
        if (ahead.Count > 0)
        {
            BoardView.WriteTable(ahead, unit, run.Terminal);
            await run.Terminal.Out.FlushAsync(run.Cancellation);
            run.Terminal.Say("These are unseen. strike them off, or leave them in the book? Anything else goes on.");
            unseen = (await editor.ReadAsync(run.Cancellation))?.Trim().ToLowerInvariant();
            if (unseen is not ("strike" or "leave"))
            {
                Show();
                return null;
            }
        }

        run.Say(StepView.Summary(await api.FinishStockTakeAsync(take.Number, new StockTakeFinish(unseen), run.Cancellation)));
        return ExitCode.Ok;
    }

    private void Show() => run.Terminal.Say(SafeText.Of(ahead.Count > 0
        ? $"{StepView.Board(ahead.Peek(), unit)}?"
        : "All that the book has here is seen. Say what else is here, or finish."));

    private int Stop()
    {
        run.Say(ahead.Count == 0 ? "The stock-take is still open: end it with 'offcuts stocktake finish'."
            : string.Create(CultureInfo.InvariantCulture, $"{ahead.Count} unseen. Go on with 'offcuts stocktake'."));
        return ExitCode.Ok;
    }
}
