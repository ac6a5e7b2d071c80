using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Plans;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Fits;

/// <summary><c>offcuts fit</c>.</summary>
internal static class FitCommand
{
    private static readonly Option<string> Order = new("--order") { Description = "Which comes first: cheapest (to finish; if left out) or pile (what eats most of it)", HelpName = "WORD" };
    private static readonly Option<string> Species = new("--species") { Description = "What eats most of this species", HelpName = "SPECIES" };
    private static readonly Option<string> Place = new("--place") { Description = "What eats most of what lies there", HelpName = "TEXT" };
    private static readonly Option<string> Batch = new("--batch") { Description = "What eats most of this batch", HelpName = "TEXT" };
    private static readonly Option<string[]> Tag = new("--tag") { Description = "Only designs with this tag; may be given again", HelpName = "TEXT" };
    private static readonly Option<decimal?> Hours = new("--hours") { Description = "Only designs of at most so many hours of work", HelpName = "NUMBER", CustomParser = Values.Number };
    private static readonly Option<decimal?> Spend = new("--spend") { Description = "Only designs that take at most so much money to finish", HelpName = "MONEY", CustomParser = Values.Number };
    private static readonly Option<int?> Limit = new("--limit") { Description = "How many places (10 if left out)", HelpName = "COUNT", CustomParser = Values.Whole };
    private static readonly Option<bool> All = new("--all") { Description = "All places" };
    private static readonly BudgetOption Budget = new("30s", "Time to rank");

    static FitCommand() => Order.CompletionSources.Add("cheapest", "pile");

    public static Verb Create() => new Verb(
        "fit",
        "Rank the saved designs against the free boards: which build fits what there is",
        "offcuts fit",
        "offcuts fit --order pile --hours 8",
        "offcuts fit --species cherry",
        "offcuts fit --place \"offcut bin\" --tag gift --spend 20",
        "offcuts fit --all --json")
        .With(Order, Species, Place, Batch, Tag, Hours, Spend, Limit, All, Budget).Does(RankAsync);

    private static async Task<int> RankAsync(Run run)
    {
        if (run.Get(All) && run.Get(Limit) is not null)
        {
            throw CliException.Usage("--all and --limit exclude each other: give one of them.");
        }

        var query = new FitQuery
        {
            Order = run.Get(Order),
            Species = run.Get(Species),
            Place = run.Get(Place),
            Batch = run.Get(Batch),
            Tags = run.Get(Tag) is { Length: > 0 } tags ? string.Join(',', tags) : null,
            MaxHours = run.Get(Hours),
            MaxCost = run.Get(Spend),
            Limit = run.Get(All) ? Domain.Limits.MaxEntries : run.Get(Limit),
            BudgetMs = Budget.Milliseconds(run),
        };
        var api = await run.ConnectAsync();
        var (items, end) = await ShowAsync(run, api, query);
        if (run.Json)
        {
            run.WriteJson(new FitList(end.Order, end.Currency, items, end), ClientJson.Default.FitList);
        }
        else if (items.Count == 0)
        {
            run.Say(end.Designs + end.Filtered == 0 ? "There are no designs yet. Add one with 'offcuts designs add FILE'." : "No design fits that.");
        }

        Notes(run, end);
        return end.Finished ? ExitCode.Ok : ExitCode.Incomplete;
    }

    /// <summary>Shows each place as it comes.</summary>
    private static async Task<(IReadOnlyList<FitRecord> Items, FitEnd End)> ShowAsync(Run run, IOffcutsApi api, FitQuery query)
    {
        using var progress = new ProgressLine(run.Terminal, run.Get(Globals.Quiet));
        progress.Show("Looking at the designs ...");
        var view = run.Json ? null : await FitView.CreateAsync(run, api);
        var items = new List<FitRecord>();
        await foreach (var told in FitStream.ReadAsync(api, query, run.Cancellation))
        {
            switch (told)
            {
                case FitProgressRecord far:
                    progress.Show(Text(far, items.Count));
                    break;
                case FitRecord item:
                    items.Add(item);
                    if (view is not null)
                    {
                        progress.Wipe();
                        view.Write(item);
                    }

                    break;
                case FitEnd end:
                    return (items, end);
            }
        }

        throw new CliException("failed", "The server stopped before the ranking was done. Try again, or see its log.");
    }

    private static string Text(FitProgressRecord far, int placed) => far.LookedAt < far.Designs
        ? string.Create(CultureInfo.InvariantCulture, $"Looking at the designs: {far.LookedAt} of {far.Designs}")
        : string.Create(CultureInfo.InvariantCulture, $"Ranking {far.Designs} designs: {placed} placed, {far.Remembered} known from before, {far.Planned} plans made");

    private static void Notes(Run run, FitEnd end)
    {
        if (!end.Finished)
        {
            run.Say("Time was up before all places were known; the last ones may be wrong. Give more with --budget, or ask again: what was planned is remembered.");
        }

        if (end.Filtered > 0)
        {
            run.Say(Counted(end.Filtered, "left out by tags or hours."));
        }

        if (end.TooDear > 0)
        {
            run.Say(Counted(end.TooDear, "left out: dearer than allowed, or cannot be finished."));
        }

        if (end.EatNone > 0)
        {
            run.Say(Counted(end.EatNone, "left out: nothing of that comes into it."));
        }

        if (end.Failed.Count > 0)
        {
            run.Say($"Left out because they cannot be planned as they stand; 'offcuts plan' says why: {string.Join(", ", end.Failed)}.");
        }
    }

    private static string Counted(int count, string rest) => count == 1 ? $"1 design {rest}" : string.Create(CultureInfo.InvariantCulture, $"{count} designs {rest}");
}
