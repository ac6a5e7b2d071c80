namespace Offcuts.Domain;

/// <summary>Blanks that are too short for a machine, in words.</summary>
internal static class ShortBlankText
{
    /// <summary>Whether it warns of such a blank.</summary>
    public static bool Is(PlanWarning warning) => warning.Kind is WarningKind.ShortForJointer or WarningKind.ShortForPlaner;

    /// <summary>One sentence for all blanks that are too short for the same machines by the same limit.</summary>
    public static IEnumerable<string> Of(IEnumerable<PlanWarning> warnings, DisplayUnit unit) =>
        from warning in warnings
        group warning by (warning.Subject, warning.Value, warning.Limit) into blank
        group blank.First() by (Machines: Machines([.. blank.Select(warning => warning.Kind)]), blank.Key.Limit) into alike
        select Sentence([.. alike], alike.Key.Machines, alike.Key.Limit, unit);

    private static string Machines(IReadOnlyList<WarningKind> kinds) =>
        !kinds.Contains(WarningKind.ShortForPlaner) ? "jointer"
        : !kinds.Contains(WarningKind.ShortForJointer) ? "planer"
        : "jointer and the planer";

    private static string Sentence(IReadOnlyList<PlanWarning> blanks, string machines, Length? limit, DisplayUnit unit)
    {
        var names = blanks.Select(blank => blank.Subject + (blank.Value is { } length ? $" ({LengthText.Format(length, unit)} long)" : "")).ToList();
        var safe = (limit is { } shortest ? $"the {LengthText.Format(shortest, unit)} that" : "what") + $" the shop takes as safe at the {machines}";
        return names is [var only]
            ? $"The blank of {only} is shorter than {safe}: mill it in one piece with another part or by hand, and go by the machine's manual."
            : $"The blanks of {string.Join(", ", names.SkipLast(1))} and {names[^1]} are shorter than {safe}: "
                + "mill each in one piece with another part or by hand, and go by the machine's manual.";
    }
}
