using System.CommandLine;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts fill</c> with several designs: which mix of them.</summary>
internal static class FillMix
{
    public static readonly Option<string[]> Tag = new("--tag") { Description = "A mix of all designs with this tag; may be given again", HelpName = "TEXT" };
    public static readonly Option<string[]> Least = new("--least") { Description = "Fewest copies of a design in a mix, for instance tray=2; may be given again", HelpName = "DESIGN=COUNT" };
    public static readonly Option<string[]> Most = new("--most") { Description = "Most copies of a design in a mix; may be given again", HelpName = "DESIGN=COUNT" };

    /// <summary>Asks for the best mix and tells it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="designs">The designs as they were written; none where tags name them.</param>
    /// <param name="tags">The tags that all of them have; none where they are named.</param>
    /// <param name="time">Time to search in milliseconds.</param>
    public static async Task<int> AskAsync(Run run, string[] designs, string[] tags, int time)
    {
        if (OpenOptions.All.OfType<Option<string[]>>().FirstOrDefault(option => run.Get(option) is { Length: > 0 }) is { } open)
        {
            throw CliException.Usage($"{open.Name} is for one design: in a mix what designs leave open has its defaults.");
        }

        var (least, most) = (OpenOptions.Counts(run, Least), OpenOptions.Counts(run, Most));
        if (least.Keys.Concat(most.Keys).FirstOrDefault(name => !designs.Contains(name, StringComparer.Ordinal)) is { } unknown)
        {
            throw CliException.Usage(tags.Length > 0 ? $"{Least.Name} and {Most.Name} are for designs that are named: name them instead of {Tag.Name}." : $"'{unknown}' is none of the designs: give {string.Join(", ", designs)}.");
        }

        var api = await run.ConnectAsync();
        var entries = new List<MixEntry>();
        foreach (var design in designs)
        {
            entries.Add(new MixEntry(await DesignArgument.ReferenceAsync(run, api, design), least.GetValueOrDefault(design), most.TryGetValue(design, out var count) ? count : null));
        }

        var request = new MixRequest(tags.Length > 0 ? null : entries, tags.Length > 0 ? tags : null, BudgetMs: time, Seed: SearchOptions.SeedOf(run));
        MixRecord answer;
        using (var progress = new ProgressLine(run.Terminal, run.Get(Globals.Quiet)))
        {
            progress.Show("Trying mixes ...");
            answer = await SearchStream.AnswerAsync(
                api.StreamMixAsync(request, run.Cancellation), ClientJson.Default.MixProgressRecord, ClientJson.Default.MixRecord,
                far => progress.Show(MixView.Text(far, designs)), run.Cancellation);
        }

        if (run.Json)
        {
            run.WriteJson(answer, ClientJson.Default.MixRecord);
        }
        else
        {
            MixView.Write(answer, await run.UnitAsync(), run);
        }

        return answer.Best is null ? ExitCode.Incomplete : ExitCode.Ok;
    }
}
