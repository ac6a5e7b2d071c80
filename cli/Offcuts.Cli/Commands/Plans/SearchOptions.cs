using System.CommandLine;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>Options that several commands take which let the planner search.</summary>
internal static class SearchOptions
{
    /// <summary>The most time that a plan or a ranking may have.</summary>
    public const string MostOfRuns = "5m";

    /// <summary>The most time that a command may have whose answer is waited for.</summary>
    public const string MostWhileWaiting = "20s";

    /// <summary>The seed; see <see cref="SeedOf"/>.</summary>
    public static readonly Option<int?> Seed = new("--seed") { Description = "Seed of every random choice (1 if left out)", HelpName = "NUMBER", CustomParser = Values.Whole };

    /// <summary>The plan to start from.</summary>
    public static readonly Option<string> From = new("--from") { Description = "Start from an earlier plan, by its id or last: keep what still can be, and say what has changed", HelpName = "PLAN" };

    /// <summary>What a yard turned out not to have.</summary>
    public static readonly Option<string[]> Without = Plans.Without.Option();

    /// <summary>Where the cut sheet goes.</summary>
    /// <param name="usual">Its name if the option is left out.</param>
    public static Option<string> Sheet(string usual) =>
        new("--sheet") { Description = $"Where to write the cut sheet (an HTML page); {usual} if left out, not written with --json", HelpName = "PATH" };

    /// <summary>The seed asked for.</summary>
    public static int SeedOf(Run run) => run.Get(Seed) ?? 1;

    /// <summary>The id of the plan to start from; null for none.</summary>
    public static async Task<string?> FromAsync(Run run, Contracts.IOffcutsApi api) => run.Get(From) is { } given ? await PlanIds.FindAsync(run, api, given) : null;
}
