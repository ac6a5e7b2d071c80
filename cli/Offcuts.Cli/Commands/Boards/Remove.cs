using System.CommandLine;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards remove</c>.</summary>
internal static class Remove
{
    private static readonly Argument<string[]> Ids = new("ID") { Description = "Ids of the boards", Arity = ArgumentArity.OneOrMore };

    public static Verb Create() => new Verb(
        "remove",
        "Forget boards; to keep a record of one that is gone, edit its status instead",
        "offcuts boards remove K7M",
        "offcuts boards remove K7M K8N --yes",
        "offcuts boards edit K7M --status gone")
        .With(Ids, BoardOptions.Yes, BoardOptions.DryRun).Does(RemoveAsync);

    private static async Task<int> RemoveAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var ids = run.Get(Ids);
        // All are looked up first, so that a wrong id removes nothing.
        foreach (var id in ids)
        {
            var board = await api.GetBoardAsync(id, run.Cancellation);
            run.Say($"{board.Id}  {BoardView.Species(board)}  {BoardView.Size(board, unit)}");
        }

        if (run.Get(BoardOptions.DryRun))
        {
            run.Say("Nothing was removed (--dry-run).");
            return ExitCode.Ok;
        }

        if (!run.Confirm(ids.Length == 1 ? $"Remove board {ids[0]}?" : $"Remove these {ids.Length} boards?", BoardOptions.Yes))
        {
            run.Say("Nothing was removed.");
            return ExitCode.Failed;
        }

        foreach (var id in ids)
        {
            await api.DeleteBoardAsync(id, run.Cancellation);
        }

        return ExitCode.Ok;
    }
}
