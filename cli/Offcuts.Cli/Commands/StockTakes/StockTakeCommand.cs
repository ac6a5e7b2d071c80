using System.CommandLine;
using System.Globalization;
using System.Net;
using Offcuts.Cli.Commands.Boards;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;
using Refit;

namespace Offcuts.Cli.Commands.StockTakes;

/// <summary><c>offcuts stocktake</c>.</summary>
internal static class StockTakeCommand
{
    private static readonly Argument<string> Place = new("PLACE") { Description = "The place, as boards have it" };
    private static readonly Argument<string[]> Ids = new("ID") { Description = "Ids of boards, as on their end grain", Arity = ArgumentArity.OneOrMore };
    private static readonly Argument<string[]> Line = new("LINE") { Description = "The board as you would say it (see 'offcuts help quick-lines')", Arity = ArgumentArity.OneOrMore };
    private static readonly Option<string> To = new("--to") { Description = "Where it is carried, if it does not stay here", HelpName = "PLACE" };
    private static readonly Option<bool> New = new("--new") { Description = "The place is new: the book does not know it yet" };
    private static readonly Option<bool> Strike = new("--strike") { Description = "Strike off what is unseen" };
    private static readonly Option<bool> Leave = new("--leave") { Description = "Leave in the book what is unseen" };

    public static Verb Create() => new Verb(
        "stocktake",
        "Walk through one place and make the book say what is there; alone at a terminal, it asks for board after board",
        "offcuts stocktake start \"rack 2\"",
        "offcuts stocktake")
        .With(
            OpenTake.Place,
            new Verb("start", "Begin with a place, or go on where you stopped; no other place is touched", "offcuts stocktake start \"rack 2\"", "offcuts stocktake start \"new shed\" --new").With(Place, New).Begins(run => run.Get(New)).Does(StartAsync),
            new Verb("show", "Show what is still unseen", "offcuts stocktake show", "offcuts stocktake show --place \"rack 2\" --json").With(OpenTake.Place).Does(ShowAsync),
            new Verb("confirm", "Boards are there; one that the book has elsewhere is moved here", "offcuts stocktake confirm K7M K8N", "offcuts stocktake confirm K7M K8N --json").With(Ids, OpenTake.Place).Does(ConfirmAsync),
            new Verb(
                "correct", "A board is there, but otherwise than the book has it; what is not named stays as it is",
                "offcuts stocktake correct K7M --size \"3/4 x 5 1/2 x 28\"",
                "offcuts stocktake correct K7M --quantity 2 --to \"rack 3\"")
                .With([BoardOptions.Id, .. BoardEdit.Options, To, OpenTake.Place]).Does(CorrectAsync),
            new Verb("strike", "Boards are not there: they are gone", "offcuts stocktake strike K7M").With(Ids, OpenTake.Place).Does(StrikeAsync),
            new Verb("add", "A board is there that is not in the book", "offcuts stocktake add 3/4 x 5 1/2 x 36 ash").With(Line, OpenTake.Place).Does(AddAsync),
            new Verb(
                "finish", "End it; what is unseen is struck off or left in the book, which you must say",
                "offcuts stocktake finish --strike", "offcuts stocktake finish --leave --place \"rack 2\"")
                .With(Strike, Leave, OpenTake.Place).Does(FinishAsync),
            new Verb("list", "List the stock-takes, newest first", "offcuts stocktake list").Does(ListAsync))
        .Does(WalkAsync);

    private static async Task<int> WalkAsync(Run run)
    {
        if (!run.Terminal.InIsTerminal || run.Get(Globals.NoInput) || run.Json)
        {
            throw CliException.Usage("Nobody is to be asked here: name a step, for instance 'offcuts stocktake confirm K7M'. See 'offcuts stocktake --help'.");
        }

        var api = await run.ConnectAsync();
        return await new StockTakeSession(run, api, await OpenTake.FindAsync(run, api), await run.UnitAsync()).RunAsync();
    }

    private static async Task<int> StartAsync(Run run)
    {
        var take = await BegunAsync(run, await run.ConnectAsync());
        run.Say(take.Seen.Count > 0
            ? string.Create(CultureInfo.InvariantCulture, $"Going on with stock-take {take.Number} of {take.Place}: {Entries(take.Seen.Count)} dealt with.")
            : string.Create(CultureInfo.InvariantCulture, $"Stock-take {take.Number} of {take.Place}."));
        return await WriteAsync(run, take);
    }

    private static async Task<StockTakeRecord> BegunAsync(Run run, IOffcutsApi api)
    {
        try
        {
            return await api.StartStockTakeAsync(new StockTakeStart(run.Get(Place), run.Get(New)), run.Cancellation);
        }
        catch (ApiException refused) when (refused.StatusCode == HttpStatusCode.NotFound && FaultReport.ProblemIn(refused) is { } problem)
        {
            throw new CliException(problem.Code, problem.Detail.Replace("Say so if it is a new one.", $"If it is a new one, give {New.Name}.", StringComparison.Ordinal));
        }
    }

    private static async Task<int> ShowAsync(Run run)
    {
        var api = await run.ConnectAsync();
        return await WriteAsync(run, await OpenTake.FindAsync(run, api));
    }

    private static Task<int> ConfirmAsync(Run run) => EachAsync(run, id => new StockTakeStepEntry(Confirm: id));

    private static Task<int> StrikeAsync(Run run) => EachAsync(run, id => new StockTakeStepEntry(Strike: id));

    private static async Task<int> EachAsync(Run run, Func<string, StockTakeStepEntry> stepOf)
    {
        var api = await run.ConnectAsync();
        var take = await OpenTake.FindAsync(run, api);
        var unit = await run.UnitAsync();
        // All are looked up first, so that a wrong id changes nothing.
        List<string> ids = [.. run.Get(Ids).Select(written => BoardIds.TryNormalise(written, out var known) ? known : written)];
        foreach (var id in ids)
        {
            await api.GetBoardAsync(id, run.Cancellation);
        }

        var steps = new List<StockTakeStepRecord>();
        try
        {
            foreach (var id in ids)
            {
                var step = await api.TakeStepAsync(take.Number, stepOf(id), run.Cancellation);
                steps.Add(step);
                if (!run.Json)
                {
                    StepView.Write(step, run, unit);
                }
            }
        }
        finally
        {
            // Where one is refused, those before it were taken all the same: they are told beside the fault.
            if (run.Json && steps.Count > 0)
            {
                run.WriteJson(steps, ids.Count, ClientJson.Default.StockTakeStepRecord, ClientJson.Default.ListStockTakeStepRecord);
            }
        }

        return ExitCode.Ok;
    }

    private static async Task<int> CorrectAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var take = await OpenTake.FindAsync(run, api);
        var unit = await run.UnitAsync();
        var old = await api.GetBoardAsync(run.Get(BoardOptions.Id), run.Cancellation);
        // What was struck off and is there after all is free again.
        var (entry, reading) = await BoardEdit.OfAsync(run, api, unit, old.Status == "gone" ? old with { Status = "free" } : old, run.Get(To) ?? take.Place);
        var step = await api.TakeStepAsync(take.Number, new StockTakeStepEntry(Correct: new StockTakeCorrection(old.Id, entry)), run.Cancellation);
        DefectNotes.Say(run, entry.Defects?.Select(defect => defect.Kind) ?? []);
        BoardEdit.SayReplaced(run, old, unit);
        StepView.WriteAlone(run, step, unit);
        if (reading is not null)
        {
            run.Say($"--size was {reading}.");
        }

        return ExitCode.Ok;
    }

    private static async Task<int> AddAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var take = await OpenTake.FindAsync(run, api);
        var line = string.Join(' ', run.Get(Line));
        try
        {
            StepView.WriteAlone(run, await api.TakeStepAsync(take.Number, new StockTakeStepEntry(Line: line), run.Cancellation), await run.UnitAsync());
        }
        catch (ApiException refused) when (!run.Json && LineView.TryWriteFaults(line, refused, run.Terminal))
        {
            throw CliException.Invalid("The line is not understood: nothing was logged. See 'offcuts help quick-lines'.");
        }

        return ExitCode.Ok;
    }

    private static async Task<int> FinishAsync(Run run)
    {
        if (run.Get(Strike) && run.Get(Leave))
        {
            throw CliException.Usage("Give --strike or --leave, not both.");
        }

        var api = await run.ConnectAsync();
        var take = await OpenTake.FindAsync(run, api);
        if (take.Unseen.Count > 0 && !run.Get(Strike) && !run.Get(Leave))
        {
            throw CliException.Usage($"{Unseen(take)}. Look again, or say what is to become of it: --strike or --leave. Nothing was changed.");
        }

        var finished = await api.FinishStockTakeAsync(take.Number, new StockTakeFinish(run.Get(Strike) ? "strike" : run.Get(Leave) ? "leave" : null), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(finished, ClientJson.Default.StockTakeRecord);
        }
        else
        {
            run.Say(StepView.Summary(finished));
        }

        return ExitCode.Ok;
    }

    private static async Task<int> ListAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var takes = await Paging.AllAsync<StockTakeSummary>(async cursor =>
        {
            var page = await api.ListStockTakesAsync(new StockTakeQuery { Limit = Paging.Largest, Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
        if (run.Json)
        {
            run.WriteJson(new StockTakePage(takes, null), ClientJson.Default.StockTakePage);
        }
        else if (takes.Count == 0)
        {
            run.Say("There was no stock-take yet. Begin one with 'offcuts stocktake start PLACE'.");
        }
        else
        {
            StepView.WriteTable(takes, run.Terminal);
        }

        return ExitCode.Ok;
    }

    private static async Task<int> WriteAsync(Run run, StockTakeRecord take)
    {
        if (run.Json)
        {
            run.WriteJson(take, ClientJson.Default.StockTakeRecord);
            return ExitCode.Ok;
        }

        if (take.Unseen.Count > 0)
        {
            BoardView.WriteTable(take.Unseen, await run.UnitAsync(), run.Terminal);
            run.Say($"{Unseen(take)}. Confirm, correct or strike each, add what is not in the book, then 'offcuts stocktake finish'.");
        }
        else
        {
            run.Say("Everything that the book has here is seen. Add what is not in the book, then 'offcuts stocktake finish'.");
        }

        return ExitCode.Ok;
    }

    private static string Unseen(StockTakeRecord take) => $"{Entries(take.Unseen.Count)} of {take.Place} {(take.Unseen.Count == 1 ? "is" : "are")} unseen";

    private static string Entries(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "entry" : "entries")}");
}
