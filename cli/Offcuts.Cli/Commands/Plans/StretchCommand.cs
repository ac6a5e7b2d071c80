using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary><c>offcuts stretch</c>.</summary>
internal static class StretchCommand
{
    private static readonly Argument<string> Parameter = new("PARAMETER") { Description = "The parameter of the design whose value is to be found" };
    private static readonly Option<bool> Smallest = new("--smallest") { Description = "The smallest value instead of the largest" };
    private static readonly Option<string> Nearest = new("--nearest") { Description = "The value nearest to this one instead of the largest", HelpName = "VALUE" };
    private static readonly Option<decimal?> Spend = new("--spend") { Description = "Money that may be spent on wood, items, delivery and minimum orders together; no wood is bought if left out", HelpName = "MONEY", CustomParser = Values.Number };
    private static readonly BudgetOption Budget = new("10s", most: SearchOptions.MostWhileWaiting);

    public static Verb Create() => new Verb(
        "stretch",
        "Find the largest value of a design's parameter that needs no wood to be bought",
        "offcuts stretch side-table length",
        "offcuts stretch side-table length --spend 40 --with depth=14in",
        "offcuts stretch side-table depth --nearest 14in --choose shelf=no",
        "offcuts stretch side-table length --smallest --json")
        .With([DesignArgument.Design, Parameter, Smallest, Nearest, Spend, .. OpenOptions.All, Budget, SearchOptions.Seed]).Begins(run => DesignArgument.IsFile(run.Get(DesignArgument.Design))).Does(StretchAsync);

    private static async Task<int> StretchAsync(Run run)
    {
        if (run.Get(Smallest) && run.Get(Nearest) is not null)
        {
            throw CliException.Usage($"{Smallest.Name} and {Nearest.Name} ask for different values: give one of them.");
        }

        var time = Budget.Milliseconds(run);
        var api = await run.ConnectAsync();
        var design = await DesignArgument.ReferenceAsync(run, api);
        var name = run.Get(Parameter);
        var request = new StretchRequest(
            name, design, Goal: run.Get(Smallest) ? "smallest" : run.Get(Nearest) is null ? "largest" : "nearest", Wish: await WishAsync(run, api, design, name),
            Spend: run.Get(Spend), With: await OpenOptions.ValuesAsync(run, api, design), Choose: OpenOptions.Answers(run), BudgetMs: time, Seed: SearchOptions.SeedOf(run));
        var unit = await run.UnitAsync();
        StretchRecord answer;
        using (var progress = new ProgressLine(run.Terminal, run.Get(Globals.Quiet)))
        {
            progress.Show($"Trying values of {name} ...");
            answer = await SearchStream.AnswerAsync(
                api.StreamStretchAsync(request, run.Cancellation), ClientJson.Default.StretchProgressRecord, ClientJson.Default.StretchRecord,
                far => progress.Show(StretchView.Text(far, $"values of {name}", unit)), run.Cancellation);
        }

        if (run.Json)
        {
            run.WriteJson(answer, ClientJson.Default.StretchRecord);
        }
        else
        {
            StretchView.Write(answer, Verdict(answer, request, unit), unit, run);
            if (answer.Best is { } best)
            {
                var others = request.With is { Count: > 0 } ? " and the other values" : "";
                if (request.Spend is not null && (await run.ShopAsync()).SecondStop > 0)
                {
                    run.Say("Another stop costs no money, so it counts nothing here; a plan does count it in its choice, and may spend more to save the stop.");
                }

                run.Say($"Plan it with 'offcuts plan {answer.Design.Reference ?? answer.Design.Version} --with \"{name}={StretchView.Text(best, unit).Replace("\"", "in", StringComparison.Ordinal)}\"'{others}.");
            }
        }

        return answer.Best is null ? ExitCode.Incomplete : ExitCode.Ok;
    }

    private static async Task<decimal?> WishAsync(Run run, IOffcutsApi api, string design, string name)
    {
        if (run.Get(Nearest) is not { } wish)
        {
            return null;
        }

        var known = (await api.GetDesignAsync(design, run.Cancellation)).Design.Parameters ?? new Dictionary<string, ParameterRecord>();
        return OpenOptions.Value(Nearest.Name, name, wish, known, await run.UnitAsync());
    }

    private static string Verdict(StretchRecord answer, StretchRequest asked, DisplayUnit unit)
    {
        var within = asked.Spend is { } spend ? $"stays within {Price.Of(spend, answer.Currency)}" : "needs no wood to be bought";
        var goal = asked.Goal == "nearest" ? "nearest value" : $"{asked.Goal} value";
        var better = asked.Goal switch { "largest" => "larger", "smallest" => "smaller", _ => "nearer" };
        var open = string.Create(CultureInfo.InvariantCulture, $"{answer.OpenCount} {(answer.OpenCount == 1 ? "value" : "values")}");
        return (answer.Best, answer.Sure) switch
        {
            ({ } best, true) => $"{StretchView.Text(best, unit)} is the {goal} that {within}. Proved: no {better} one does.",
            ({ } best, false) => $"{StretchView.Text(best, unit)} {within}. Of {open} that are {better} it is not known ({StretchView.OpenValues(answer, unit)}); a longer --budget may tell.",
            (null, true) => $"Proved: no value {within}.",
            (null, false) => $"No value is known that {within}; of {open} it is not known whether one does. A longer --budget may tell.",
        };
    }
}
