using System.CommandLine;
using System.Globalization;
using System.Text;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Keeping;

/// <summary><c>offcuts keep-rule</c>.</summary>
internal static class KeepRuleCommand
{
    private static readonly Argument<string> File = Documents.Argument("A keep rule");

    public static Verb Create() => new Verb(
        "keep-rule", "What the shop keeps: plans return such leftovers to the rack, and nothing else", "offcuts keep-rule set keep.yaml", "offcuts keep-rule show")
        .With(
            new Verb("show", "Show the rule, in the order in which it is asked", "offcuts keep-rule show", "offcuts keep-rule show --json").Does(ShowAsync),
            new Verb("set", "Replace the rule (offcuts help keep-rule-files)", "offcuts keep-rule set keep.yaml", "offcuts keep-rule set -").With(File).Begins().Does(SetAsync),
            new Verb("remove", "Keep by the shop's keep size alone again", "offcuts keep-rule remove").Does(RemoveAsync));

    private static async Task<int> ShowAsync(Run run) => Write(run, await (await run.ConnectAsync()).GetKeepRuleAsync(run.Cancellation));

    private static async Task<int> SetAsync(Run run)
    {
        var api = await run.ConnectAsync();
        using var document = await Documents.ReadAsync(run, run.Get(File));
        return Write(run, await api.ReplaceKeepRuleAsync(document, run.Cancellation));
    }

    private static async Task<int> RemoveAsync(Run run)
    {
        using var nothing = new StringContent("""{"entries":[]}""", Encoding.UTF8, "application/json");
        return Write(run, await (await run.ConnectAsync()).ReplaceKeepRuleAsync(nothing, run.Cancellation));
    }

    private static int Write(Run run, KeepRuleRecord rule)
    {
        if (run.Json)
        {
            run.WriteJson(rule, ClientJson.Default.KeepRuleRecord);
            return ExitCode.Ok;
        }

        foreach (var (index, text) in rule.Text.Index())
        {
            var number = index < rule.Entries.Count ? string.Create(CultureInfo.InvariantCulture, $"{index + 1,2}. ") : "    ";
            run.Terminal.Out.WriteLine(SafeText.Of($"{number}{text}"));
        }

        return ExitCode.Ok;
    }
}
