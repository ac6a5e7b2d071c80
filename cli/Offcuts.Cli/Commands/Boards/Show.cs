using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards show</c>.</summary>
internal static class Show
{
    public static Verb Create() => new Verb("show", "Show everything about one board", "offcuts boards show K7M")
        .With(BoardOptions.Id).Does(ShowAsync);

    private static async Task<int> ShowAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var board = await api.GetBoardAsync(run.Get(BoardOptions.Id), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(board, ClientJson.Default.BoardRecord);
        }
        else
        {
            BoardView.WriteDetails(board, await run.UnitAsync(), run.Terminal);
        }

        return ExitCode.Ok;
    }
}
