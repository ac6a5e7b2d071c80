using System.CommandLine;
using System.Globalization;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>The options that say which boards to list or to add up.</summary>
internal static class Filter
{
    private static readonly Option<string> MinThickness = new("--min-thickness") { Description = "Least thickness", HelpName = "LENGTH" };
    private static readonly Option<string> MaxThickness = new("--max-thickness") { Description = "Greatest thickness", HelpName = "LENGTH" };
    private static readonly Option<string> MinLength = new("--min-length", "--from") { Description = "Least length", HelpName = "LENGTH" };
    private static readonly Option<string> MaxLength = new("--max-length", "--to") { Description = "Greatest length", HelpName = "LENGTH" };
    private static readonly Option<string> MinWidth = new("--min-width") { Description = "Least width", HelpName = "LENGTH" };
    private static readonly Option<string> OlderThan = new("--older-than") { Description = "Only what was logged longer ago, for instance 2y, 18 months, 90 days", HelpName = "AGE" };
    private static readonly Option<string> LoggedBefore = new("--logged-before") { Description = "Only what was logged before this day (UTC), for instance 2026-03-14", HelpName = "DATE" };

    public static readonly Symbol[] All =
    [
        BoardOptions.Species, MinThickness, MaxThickness, MinLength, MaxLength, MinWidth,
        BoardOptions.Status, BoardOptions.Kind, BoardOptions.Batch, BoardOptions.Place, OlderThan, LoggedBefore,
    ];

    /// <summary>Whether the age of boards is asked about.</summary>
    public static bool AsksForAge(Run run) => run.Get(OlderThan) is not null || run.Get(LoggedBefore) is not null;

    /// <summary>Puts what was given into a query.</summary>
    public static T In<T>(T query, Run run, DisplayUnit unit)
        where T : BoardFilterQuery => (T)((BoardFilterQuery)query with
        {
            Species = run.Get(BoardOptions.Species),
            MinThicknessMm = Lengths.Millimetres(run, MinThickness, unit),
            MaxThicknessMm = Lengths.Millimetres(run, MaxThickness, unit),
            MinLengthMm = Lengths.Millimetres(run, MinLength, unit),
            MaxLengthMm = Lengths.Millimetres(run, MaxLength, unit),
            MinWidthMm = Lengths.Millimetres(run, MinWidth, unit),
            Status = run.Get(BoardOptions.Status),
            Kind = run.Get(BoardOptions.Kind),
            Batch = run.Get(BoardOptions.Batch),
            Place = run.Get(BoardOptions.Place),
            LoggedBefore = Before(run)?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        });

    // Given both, a board must be old enough for either.
    private static DateOnly? Before(Run run)
    {
        DateOnly? before = run.Get(LoggedBefore) is not { } text ? null
            : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
            : throw CliException.Invalid($"{LoggedBefore.Name}: '{text}' is no day: give for instance 2026-03-14.");
        if (run.Get(OlderThan) is not { } age)
        {
            return before;
        }

        var today = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
        return !AgeReading.TryParse(age, today, out var since, out var error) ? throw CliException.Invalid($"{OlderThan.Name}: {error}")
            : before < since ? before
            : since;
    }
}
