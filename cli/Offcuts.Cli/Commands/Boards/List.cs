using System.CommandLine;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards list</c>.</summary>
internal static class List
{
    private static readonly Option<string> Sort = new("--sort")
    {
        Description = "Sort by species, thickness, width, length, place, batch or age (youngest first)",
        HelpName = "WORD",
        CompletionSources = { "species", "thickness", "width", "length", "place", "batch", "age" },
    };

    private static readonly Option<bool> Reverse = new("--reverse") { Description = "The other way round" };

    public static Verb Create() => new Verb(
        "list",
        "List boards, oldest first or sorted",
        "offcuts boards list",
        "offcuts boards list --species white-ash --min-length \"30 1/2\" --status free",
        "offcuts boards list --from 24 --to 36 --sort length",
        "offcuts boards list --older-than 2y --sort age --reverse",
        "offcuts boards list --batch \"log 3\"",
        "offcuts boards list --place \"rack 2\" --json")
        .With([.. Filter.All, Sort, Reverse])
        .Does(ListAsync);

    private static async Task<int> ListAsync(Run run)
    {
        if (run.Get(Reverse) && run.Get(Sort) is null)
        {
            throw CliException.Usage("--reverse needs --sort: say by what.");
        }

        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var query = Filter.In(
            new BoardQuery { Limit = Paging.Largest, Sort = run.Get(Sort) is { } by ? (run.Get(Reverse) ? $"-{by}" : by) : null }, run, unit);
        var boards = await Paging.AllAsync<BoardRecord>(async cursor =>
        {
            var page = await api.ListBoardsAsync(query with { Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
        if (run.Json)
        {
            run.WriteJson(new BoardPage(boards, null), ClientJson.Default.BoardPage);
        }
        else if (boards.Count > 0)
        {
            BoardView.WriteTable(boards, unit, run.Terminal, withAge: run.Get(Sort) == "age" || Filter.AsksForAge(run));
        }
        else
        {
            run.Say("No boards match. Add one with 'offcuts boards add', or see 'offcuts boards list --help'.");
        }

        return ExitCode.Ok;
    }
}
