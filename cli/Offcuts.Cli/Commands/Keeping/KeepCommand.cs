using System.CommandLine;
using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Commands.Keeping;

/// <summary><c>offcuts keep?</c>, also without its question mark.</summary>
internal static class KeepCommand
{
    private static readonly Argument<string[]> Piece = new("PIECE")
    {
        Description = "The piece as you would say it: thickness x width x length and species (offcuts help quick-lines)",
        Arity = ArgumentArity.OneOrMore,
    };

    public static Verb Create()
    {
        var verb = new Verb(
            "keep",
            "Whether a piece is worth keeping: yes with exit code 0, no with 8 (also written keep?)",
            "offcuts keep? 3/4 x 2 x 14 walnut",
            "offcuts keep 4/4 x 3 x 9 cherry --json");
        verb.Aliases.Add("keep?");
        return verb.With(Piece).Does(AskAsync);
    }

    private static async Task<int> AskAsync(Run run)
    {
        var answer = await (await run.ConnectAsync()).AskKeepRuleAsync(string.Join(' ', run.Get(Piece)), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(answer, ClientJson.Default.KeepAnswer);
        }
        else
        {
            run.Terminal.Out.WriteLine(SafeText.Of($"{(answer.Keep ? "Keep" : "Let go")}: {answer.Reason}."));
            run.Say($"({answer.Understood})");
        }

        return answer.Keep ? ExitCode.Ok : ExitCode.LetGo;
    }
}
