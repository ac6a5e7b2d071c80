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

    private static readonly BudgetOption Budget = new("10s", most: SearchOptions.MostWhileWaiting);

    public static Verb Create() => new Verb(
        "fill",
        "Find how many of a design, or which mix of several designs, the free boards yield without buying wood",
        "offcuts fill step-stool",
        "offcuts fill side-table --with length=20in --choose shelf=no --json",
        "offcuts fill step-stool boot-rack wall-shelf --least step-stool=1 --most boot-rack=2",
        "offcuts fill --tag gift")
        .With([Designs, .. OpenOptions.All, FillMix.Tag, FillMix.Least, FillMix.Most, Budget, SearchOptions.Seed]).Begins(run => (run.Find(Designs) ?? []).Any(DesignArgument.IsFile)).Does(FillAsync);

    private static async Task<int> FillAsync(Run run)
    {
        var (designs, tags) = (run.Get(Designs) ?? [], run.Get(FillMix.Tag) ?? []);
        if ((designs.Length > 0) == (tags.Length > 0))
        {
            throw CliException.Usage("Name the designs, or give --tag for all that have it.");
        }

        return designs.Length == 1 ? await FillAsync(run, designs[0]) : await FillMix.AskAsync(run, designs, tags, Budget.Milliseconds(run));
    }

    private static async Task<int> FillAsync(Run run, string written)
    {
        if (new[] { FillMix.Least, FillMix.Most }.FirstOrDefault(option => run.Get(option) is { Length: > 0 }) is { } range)
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
