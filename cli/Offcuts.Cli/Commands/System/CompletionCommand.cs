using System.CommandLine;
using Offcuts.Cli.Help;

namespace Offcuts.Cli.Commands;

/// <summary><c>offcuts completion</c> and the hidden command that its scripts ask.</summary>
internal static class CompletionCommand
{
    private static readonly Argument<string> Shell = new("SHELL") { Description = string.Join(", ", CompletionScripts.All.Keys) };
    private static readonly Argument<int> Position = new("POSITION") { Description = "Where the cursor is in the line, from 0", CustomParser = given => Values.Whole(given) ?? 0 };
    private static readonly Argument<string> Line = new("LINE") { Description = "The line as far as it is written" };

    public static Verb Create()
    {
        Shell.CompletionSources.Add([.. CompletionScripts.All.Keys]);
        return new Verb(
            "completion", "Write the script that completes commands in a shell",
            "offcuts completion bash > ~/.local/share/bash-completion/completions/offcuts", "offcuts completion fish > ~/.config/fish/completions/offcuts.fish")
            .With(Shell).Does(ScriptAsync);
    }

    public static Verb CreateAnswer() => new Verb("complete", "Answer a completion script", "offcuts complete 11 \"offcuts boa\"") { Hidden = true }
        .With(Position, Line).Does(AnswerAsync);

    private static Task<int> ScriptAsync(Run run)
    {
        var shell = run.Get(Shell);
        run.Terminal.Out.Write(CompletionScripts.All.TryGetValue(shell, out var script)
            ? script
            : throw CliException.Usage($"There is no completion for '{shell}'. Give one of {string.Join(", ", CompletionScripts.All.Keys)}."));
        return Task.FromResult(ExitCode.Ok);
    }

    private static Task<int> AnswerAsync(Run run)
    {
        // The first word is the program, by whatever path.
        var line = run.Get(Line);
        line = line[..Math.Clamp(run.Get(Position), 0, line.Length)];
        var rest = line.Contains(' ', StringComparison.Ordinal) ? line[(line.IndexOf(' ', StringComparison.Ordinal) + 1)..] : "";
        var word = rest[(rest.LastIndexOf(' ') + 1)..];
        var labels = run.Root.Parse(rest).GetCompletions(rest.Length).Select(completion => completion.Label)
            .Where(label => label.StartsWith(word, StringComparison.Ordinal))
            // Options only to whoever began one: beside file names and verbs they would be noise.
            .Where(label => word.StartsWith('-') || !label.StartsWith('-'))
            .Distinct().Order(StringComparer.Ordinal);
        foreach (var label in labels)
        {
            run.Terminal.Out.WriteLine(label);
        }

        return Task.FromResult(ExitCode.Ok);
    }
}
