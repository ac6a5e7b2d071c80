using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards edit</c>.</summary>
internal static class Edit
{
    public static Verb Create() => new Verb(
        "edit",
        "Change what is known of a board; what is not named stays as it is",
        "offcuts boards edit K7M --place \"wall rack\" --status reserved",
        "offcuts boards edit K7M --warp flat --ends sound",
        "offcuts boards edit K7M --add-defect \"knot 10..12 x 1..2\"",
        "offcuts boards edit K7M --moisture \"7.5% on 2026-11-01\"",
        "offcuts boards edit K7M --size \"3/4 x 5 1/2 x 30 1/4\" --note \"split end cut off\"")
        .With([BoardOptions.Id, .. BoardEdit.Options, BoardOptions.Place])
        .Does(EditAsync);

    private static async Task<int> EditAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var old = await api.GetBoardAsync(run.Get(BoardOptions.Id), run.Cancellation);
        var (entry, reading) = await BoardEdit.OfAsync(run, api, unit, old, run.Get(BoardOptions.Place) ?? old.Place);
        var board = await api.ReplaceBoardAsync(old.Id, entry, run.Cancellation);
        DefectNotes.Say(run, board.Defects.Select(defect => defect.Kind));
        BoardEdit.SayReplaced(run, old, unit);
        if (run.Json)
        {
            run.WriteJson(board, ClientJson.Default.BoardRecord);
        }
        else
        {
            BoardView.WriteDetails(board, unit, run.Terminal);
            if (reading is not null)
            {
                run.Say($"--size was {reading}.");
            }
        }

        return ExitCode.Ok;
    }
}
