using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Journal;

/// <summary><c>offcuts journal</c>.</summary>
internal static class JournalCommand
{
    private const int MostIds = 6;

    private static readonly Option<int?> Newest = new("--newest") { Description = "Only so many of the newest lines (all if left out)", HelpName = "COUNT", CustomParser = Values.Whole };

    private static readonly Argument<int?> Line = new("LINE") { Description = "The line's number; the newest that is not taken back if left out", Arity = ArgumentArity.ZeroOrOne, CustomParser = Values.Whole };

    public static Verb Create() => new Verb("journal", "Everything that ever changed the stock, line by line", "offcuts journal list")
        .With(
            new Verb("list", "List the journal, newest first", "offcuts journal list --newest 20", "offcuts journal list --json").With(Newest).Does(ListAsync),
            new Verb("check", "Rebuild the stock from the journal and compare it with what is stored", "offcuts journal check").Does(CheckAsync),
            new Verb("undo", "Take the newest change of the stock back, or another that nothing is built on", "offcuts journal undo", "offcuts journal undo 12")
                .With(Line).Does(UndoAsync));

    private static async Task<int> ListAsync(Run run)
    {
        if (run.Get(Newest) is < 1 or > Paging.Largest)
        {
            throw CliException.Usage($"--newest: give 1 to {Paging.Largest}, or leave it out for all.");
        }

        var lines = await LinesAsync(run);
        if (run.Json)
        {
            run.WriteJson(new JournalPage(lines, null), ClientJson.Default.JournalPage);
            return ExitCode.Ok;
        }

        if (lines.Count == 0)
        {
            run.Say("Nothing was ever logged. Begin with 'offcuts boards add'.");
            return ExitCode.Ok;
        }

        var table = new Table(">LINE", "WHEN", "WHAT", "PLAN", "BOARDS");
        foreach (var line in lines)
        {
            table.Add(
                line.Line.ToString(CultureInfo.InvariantCulture), line.At.ToString("yyyy-MM-dd HH:mm'Z'", CultureInfo.InvariantCulture), What(line), line.PlanId,
                Ids(line.Boards));
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }

    private static async Task<List<JournalLineRecord>> LinesAsync(Run run)
    {
        var api = await run.ConnectAsync();
        if (run.Get(Newest) is { } count)
        {
            return [.. (await api.ListJournalAsync(new PageQuery { Limit = count }, run.Cancellation)).Items];
        }

        return await Paging.AllAsync<JournalLineRecord>(async cursor =>
        {
            var page = await api.ListJournalAsync(new PageQuery { Limit = Paging.Largest, Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
    }

    private static string What(JournalLineRecord line) => (line.Undoes, line.UndoneBy) switch
    {
        ({ } earlier, _) => string.Create(CultureInfo.InvariantCulture, $"undo of {earlier}"),
        (_, { } later) => string.Create(CultureInfo.InvariantCulture, $"{line.Kind} (undone by {later})"),
        _ => line.StockTake is { } number ? string.Create(CultureInfo.InvariantCulture, $"{line.Kind} (stock-take {number})") : line.Kind,
    };

    // An import touches up to a thousand.
    private static string Ids(IReadOnlyList<string> ids) => ids.Count <= MostIds
        ? string.Join(", ", ids)
        : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", ids.Take(MostIds - 1))} and {ids.Count - MostIds + 1} more");

    private static async Task<int> UndoAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var undone = await api.UndoJournalLineAsync(run.Find(Line) ?? await NewestStandingAsync(run, api), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(undone, ClientJson.Default.JournalLineRecord);
        }
        else
        {
            run.Say(string.Create(
                CultureInfo.InvariantCulture, $"Line {undone.Undoes} is taken back{(undone.Boards.Count == 0 ? "" : $": {Ids(undone.Boards)}")}."));
        }

        return ExitCode.Ok;
    }

    private static async Task<long> NewestStandingAsync(Run run, IOffcutsApi api)
    {
        string? cursor = null;
        do
        {
            var page = await api.ListJournalAsync(new PageQuery { Limit = Paging.Largest, Cursor = cursor }, run.Cancellation);
            if (page.Items.FirstOrDefault(line => line is { Undoes: null, UndoneBy: null }) is { } newest)
            {
                return newest.Line;
            }

            cursor = page.Next;
        }
        while (cursor is not null);
        throw new CliException("not-found", "There is nothing to take back.");
    }

    private static async Task<int> CheckAsync(Run run)
    {
        var check = await (await run.ConnectAsync()).CheckJournalAsync(run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(check, ClientJson.Default.JournalCheckRecord);
        }
        else
        {
            run.Terminal.Out.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{check.Lines} lines make {check.Boards} {(check.Boards == 1 ? "board" : "boards")}. {(check.Agrees ? "That is the stock as it is stored." : "The stock as it is stored differs:")}"));
            foreach (var difference in check.Differences)
            {
                run.Terminal.Out.WriteLine(SafeText.Of($"  {difference.BoardId}: {difference.Detail}"));
            }
        }

        return check.Agrees ? ExitCode.Ok
            : throw new CliException("data-integrity", "The stock is not what the journal says: the file was changed from outside. Put a copy of it back, or log what you have anew.");
    }
}
