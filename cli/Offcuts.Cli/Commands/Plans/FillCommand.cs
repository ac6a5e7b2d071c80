using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts fill</c>.</summary>
internal static class FillCommand
{
    private static readonly Option<string> Time = new("--time") { Description = "Time to search, for instance 15s, at most 20s (10s if left out)", HelpName = "TIME" };
    private static readonly Option<int?> Seed = new("--seed") { Description = "Seed of every random choice (1 if left out)", HelpName = "NUMBER", CustomParser = Values.Whole };

    public static Verb Create() => new Verb(
        "fill",
        "Find how many of a design the free boards yield without buying wood",
        "offcuts fill step-stool",
        "offcuts fill side-table --with length=20in --choose shelf=no --json")
        .With([DesignArgument.Design, .. OpenOptions.All, Time, Seed]).Does(FillAsync);

    private static async Task<int> FillAsync(Run run)
    {
        var time = Duration.Milliseconds(run.Get(Time) ?? "10s", Time.Name);
        var api = await run.ConnectAsync();
        var design = await DesignArgument.ReferenceAsync(run, api);
        var request = new FillRequest(
            design, With: await OpenOptions.ValuesAsync(run, api, design), Choose: OpenOptions.Answers(run), BudgetMs: time, Seed: run.Get(Seed) ?? 1);
        StretchRecord answer;
        using (var progress = new ProgressLine(run.Terminal, run.Get(Globals.Quiet)))
        {
            progress.Show("Trying numbers of copies ...");
            answer = await api.FillAsync(request, run.Cancellation);
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
            CultureInfo.InvariantCulture, $"The free boards yield {count}. More are not ruled out ({StretchView.OpenValues(answer, unit)}); a longer --time may tell."),
        (_, true) => "Proved: the free boards do not yield one.",
        (_, false) => "It is not known whether the free boards yield one; a longer --time may tell.",
    };
}
