using System.CommandLine;
using Offcuts.Cli.Commands.Boards;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Refit;

namespace Offcuts.Cli.Commands.Find;

/// <summary><c>offcuts find</c>.</summary>
internal static class FindCommand
{
    private static readonly Argument<string[]> Piece = new("PIECE")
    {
        Description = "The finished piece as you would say it: species and thickness x width x length, in any order (see 'offcuts help quick-lines')",
        Arity = ArgumentArity.OneOrMore,
    };

    private static readonly Option<int?> Quantity = new("--qty") { Description = "How many are wanted", HelpName = "COUNT", CustomParser = Values.Whole };
    private static readonly Option<string> Grain = new("--grain") { Description = "free for a piece that may be turned, fixed for one that may not", HelpName = "WORD", CompletionSources = { "fixed", "free" } };
    private static readonly Option<string> Appearance = new("--appearance")
    {
        Description = "The least that its faces must be good for: clear (if left out), sound-knots, paint",
        HelpName = "WORD",
        CompletionSources = { "clear", "sound-knots", "paint" },
    };

    private static readonly Option<int?> Limit = new("--limit") { Description = "The most boards to list (20 if left out)", HelpName = "COUNT", CustomParser = Values.Whole };

    public static Verb Create() => new Verb(
        "find",
        "Find the boards that give a piece after milling, the nearest fit first, with what would be left over and where it lies",
        "offcuts find walnut 3/4 x 5 x 36",
        "offcuts find \"3/4 x 2 1/2 x 28 ash, sound knots\" --qty 4",
        "offcuts find 1/2 x 11 x 17 birch plywood --grain free")
        .With(Piece, Quantity, Appearance, Grain, BoardOptions.Place, BoardOptions.Batch, Limit).Does(FindAsync);

    private static async Task<int> FindAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var text = string.Join(' ', run.Get(Piece));
        var found = await AskAsync(api, run, text);
        if (run.Json)
        {
            run.WriteJson(found, ClientJson.Default.BoardFindRecord);
        }
        else
        {
            FindView.Write(found, await run.UnitAsync(), run);
        }

        return found.Gives >= found.Quantity ? ExitCode.Ok : ExitCode.Incomplete;
    }

    private static async Task<BoardFindRecord> AskAsync(IOffcutsApi api, Run run, string text)
    {
        try
        {
            return await api.FindBoardsAsync(
                new FindQuery
                {
                    Text = text,
                    Quantity = run.Get(Quantity),
                    Appearance = run.Get(Appearance),
                    Grain = run.Get(Grain),
                    Place = run.Get(BoardOptions.Place),
                    Batch = run.Get(BoardOptions.Batch),
                    Limit = run.Get(Limit),
                },
                run.Cancellation);
        }
        catch (ApiException refused) when (!run.Json && LineView.TryWriteFaults(text, refused, run.Terminal))
        {
            throw CliException.Invalid("The piece is not understood. See 'offcuts help quick-lines'.");
        }
    }
}
