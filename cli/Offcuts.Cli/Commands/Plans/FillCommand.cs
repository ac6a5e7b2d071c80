using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts fill</c>: how many of one design, or which mix of several.</summary>
internal static class FillCommand
{
    private static readonly Argument<string[]> Designs = new("DESIGN")
    {
        Description = "A design of the store by its reference, or the path of a design file; several for a mix of them",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private static readonly Option<string[]> Tag = new("--tag") { Description = "A mix of all designs with this tag; may be given again", HelpName = "TEXT" };
    private static readonly Option<string[]> Least = new("--least") { Description = "Fewest copies of a design in a mix, for instance tray=2; may be given again", HelpName = "DESIGN=COUNT" };
    private static readonly Option<string[]> Most = new("--most") { Description = "Most copies of a design in a mix; may be given again", HelpName = "DESIGN=COUNT" };
    private static readonly BudgetOption Budget = new("10s", most: SearchOptions.MostWhileWaiting);

    public static Verb Create() => new Verb(
        "fill",
        "Find how many of a design, or which mix of several designs, the free boards yield without buying wood",
        "offcuts fill step-stool",
        "offcuts fill side-table --with length=20in --choose shelf=no --json",
        "offcuts fill step-stool boot-rack wall-shelf --least step-stool=1 --most boot-rack=2",
        "offcuts fill --tag gift")
        .With([Designs, .. OpenOptions.All, Tag, Least, Most, Budget, SearchOptions.Seed]).Does(FillAsync);

    private static async Task<int> FillAsync(Run run)
    {
        var (designs, tags) = (run.Get(Designs) ?? [], run.Get(Tag) ?? []);
        if ((designs.Length > 0) == (tags.Length > 0))
        {
            throw CliException.Usage("Name the designs, or give --tag for all that have it.");
        }

        return designs.Length == 1 ? await FillAsync(run, designs[0]) : await MixAsync(run, designs, tags);
    }

    private static async Task<int> MixAsync(Run run, string[] designs, string[] tags)
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

        var time = Budget.Milliseconds(run);
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

    private static async Task<int> FillAsync(Run run, string written)
    {
        if (new[] { Least, Most }.FirstOrDefault(option => run.Get(option) is { Length: > 0 }) is { } range)
        {
            throw CliException.Usage($"{range.Name} is for a mix: name several designs.");
        }

        var time = Budget.Milliseconds(run);
        var api = await run.ConnectAsync();
        var design = await DesignArgument.ReferenceAsync(run, api, written);
        var request = new FillRequest(
            design, With: await OpenOptions.ValuesAsync(run, api, design), Choose: OpenOptions.Answers(run), BudgetMs: time, Seed: SearchOptions.SeedOf(run));
        StretchRecord answer;
        using (var progress = new ProgressLine(run.Terminal, run.Get(Globals.Quiet)))
        {
            progress.Show("Trying numbers of copies ...");
            answer = await SearchStream.AnswerAsync(
                api.StreamFillAsync(request, run.Cancellation), ClientJson.Default.StretchProgressRecord, ClientJson.Default.StretchRecord,
                far => progress.Show(StretchView.Text(far, "numbers of copies", DisplayUnit.Inch)), run.Cancellation);
        }

        if (run.Json)
        {
            run.WriteJson(answer, ClientJson.Default.StretchRecord);
        }
        else
        {
            var unit = await run.UnitAsync();
            StretchView.Write(answer, Verdict(answer, unit), unit, run);
        }

        return answer.Best is null ? ExitCode.Incomplete : ExitCode.Ok;
    }

    private static string Verdict(StretchRecord answer, DisplayUnit unit) => (answer.Best, answer.Sure) switch
    {
        ({ Count: { } count }, true) => string.Create(CultureInfo.InvariantCulture, $"The free boards yield {count}. Proved: no more."),
        ({ Count: { } count }, false) => string.Create(
            CultureInfo.InvariantCulture, $"The free boards yield {count}. More are not ruled out ({StretchView.OpenValues(answer, unit)}); a longer --budget may tell."),
        (_, true) => "Proved: the free boards do not yield one.",
        (_, false) => "It is not known whether the free boards yield one; a longer --budget may tell.",
    };
}
