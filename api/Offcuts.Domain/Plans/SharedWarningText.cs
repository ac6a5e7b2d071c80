namespace Offcuts.Domain;

/// <summary>Warnings that say the same of every part or board they concern, in words: one sentence names all of them.</summary>
internal static class SharedWarningText
{
    /// <summary>Whether it is such a warning.</summary>
    public static bool Is(PlanWarning warning) => warning.Kind is WarningKind.Defects or WarningKind.Estimated or WarningKind.Resawn or WarningKind.Laminated
        or WarningKind.MixedBatches or WarningKind.StaleReadings or WarningKind.UnequalMoisture;

    /// <summary>The sentence for all warnings of a kind, at least one.</summary>
    public static string Of(WarningKind kind, IReadOnlyList<PlanWarning> warnings)
    {
        var names = Names([.. warnings.Select(warning => warning.Subject).Distinct()]);
        var one = warnings.DistinctBy(warning => warning.Subject).Count() == 1;
        return kind switch
        {
            WarningKind.Defects => $"{(one ? $"Board {names} has" : $"Boards {names} have")} recorded defects, and the plan goes by what is on record: "
                + $"look {(one ? "it" : "them")} over for splits, knots and metal before you cut.",
            WarningKind.Estimated => $"{(one ? $"The size of board {names} is" : $"The sizes of boards {names} are")} an estimate, and the plan counts on "
                + $"less than was written down: measure {(one ? "it" : "them")} first.",
            WarningKind.Resawn => $"Blanks of {names} are resawn: look for metal first, joint the face and edge that run along fence and table, "
                + "let the slices rest before you plane them, and go by the saw's and the planer's manuals for thin pieces.",
            WarningKind.Laminated => $"{names} {(one ? "is" : "are")} face-glued from layers: where {(one ? "it bears" : "they bear")} load, "
                + $"how {(one ? "it is" : "they are")} glued is for licensed practice and local codes.",
            WarningKind.MixedBatches => $"{names} {(one ? "is" : "are")} wide and glued up from boards of different batches: "
                + "they may differ in colour and move unlike each other, so look them over side by side before you glue.",
            WarningKind.StaleReadings => $"{names} {(one ? "is" : "are")} wide, and the moisture of some of {(one ? "its" : "their")} boards was read too long ago or never: "
                + "measure all of them before you glue.",
            WarningKind.UnequalMoisture => FormattableString.Invariant($"{names} {(one ? "is" : "are")} wide and glued up from boards whose moisture readings are more than {PanelMoisture.MostApart} points apart: ")
                + "let them come to the same moisture in the shop first, or the joints may open and the panel may not stay flat.",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Every warning of this kind has a sentence of its own."),
        };
    }

    private static string Names(IReadOnlyList<string> names) =>
        names is [var only] ? only : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}";
}
