using System.CommandLine;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards list</c>.</summary>
internal static class List
{
    private static readonly Option<string> MinThickness = new("--min-thickness") { Description = "Least thickness", HelpName = "LENGTH" };
    private static readonly Option<string> MaxThickness = new("--max-thickness") { Description = "Greatest thickness", HelpName = "LENGTH" };
    private static readonly Option<string> MinLength = new("--min-length") { Description = "Least length", HelpName = "LENGTH" };
    private static readonly Option<string> MinWidth = new("--min-width") { Description = "Least width", HelpName = "LENGTH" };

    public static Verb Create() => new Verb(
        "list",
        "List boards, oldest first",
        "offcuts boards list",
        "offcuts boards list --species white-ash --min-length \"30 1/2\" --status free",
        "offcuts boards list --batch \"log 3\"",
        "offcuts boards list --place \"rack 2\" --json")
        .With(BoardOptions.Species, MinThickness, MaxThickness, MinLength, MinWidth,
            BoardOptions.Status, BoardOptions.Kind, BoardOptions.Batch, BoardOptions.Place)
        .Does(ListAsync);

    private static async Task<int> ListAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var query = new BoardQuery
        {
            Species = run.Get(BoardOptions.Species),
            MinThicknessMm = Lengths.Millimetres(run, MinThickness, unit),
            MaxThicknessMm = Lengths.Millimetres(run, MaxThickness, unit),
            MinLengthMm = Lengths.Millimetres(run, MinLength, unit),
            MinWidthMm = Lengths.Millimetres(run, MinWidth, unit),
            Status = run.Get(BoardOptions.Status),
            Kind = run.Get(BoardOptions.Kind),
            Batch = run.Get(BoardOptions.Batch),
            Place = run.Get(BoardOptions.Place),
            Limit = Paging.Largest,
        };
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
            BoardView.WriteTable(boards, unit, run.Terminal);
        }
        else
        {
            run.Say("No boards match. Add one with 'offcuts boards add', or see 'offcuts boards list --help'.");
        }

        return ExitCode.Ok;
    }
}
