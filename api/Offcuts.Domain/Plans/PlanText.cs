namespace Offcuts.Domain;

/// <summary>What a plan has to say in words, one sentence or two each, with sizes in the shop's unit.</summary>
public static class PlanText
{
    /// <summary>Why a part or panel is missing and what would be needed.</summary>
    public static string Of(MissingPart missing, DisplayUnit unit)
    {
        var subject = missing.Quantity == 1 ? missing.Name : FormattableString.Invariant($"{missing.Quantity} of {missing.Name}");
        return $"{subject} cannot be made: {Why(missing, unit)}.";
    }

    /// <summary>What to mind about a part, panel or board, with the usual caution.</summary>
    public static string Of(PlanWarning warning, DisplayUnit unit) => warning.Kind switch
    {
        WarningKind.ShortForPlaner => Short(warning, unit, "planer"),
        WarningKind.ShortForJointer => Short(warning, unit, "jointer"),
        WarningKind.Defects => $"Board {warning.Subject} has recorded defects, so only its largest clear rectangle is used: "
            + "look it over for splits, knots and metal before you cut.",
        WarningKind.WidePanel => $"{warning.Subject} is a solid panel{Wide(warning, unit)} that moves across the grain with the seasons: "
            + "fix it so that it can.",
    };

    private static string Why(MissingPart missing, DisplayUnit unit) => missing.Reason switch
    {
        MissingReason.NoSuchSpecies => "no board and no offer is of a species that it accepts",
        MissingReason.NotGoodEnough => $"no wood of its species looks good enough{Closest(missing)}",
        MissingReason.WrongThickness => $"no wood of its species has the right thickness{Sizes(missing, unit, "in thickness")}",
        MissingReason.TooWideForMachines => $"its blank{Width(missing.Needed, unit)} is wider than the jointer or planer takes{Width(missing.Has, unit)}",
        MissingReason.TooShort => $"no board and no offer is long enough{Sizes(missing, unit, "in length")}",
        MissingReason.TooNarrow => $"no board and no offer is wide enough{Sizes(missing, unit, "in width")}",
        MissingReason.TooFew => $"there is suitable wood, but too little of it{Closest(missing)}",
    };

    private static string Sizes(MissingPart missing, DisplayUnit unit, string what)
    {
        var needed = missing.Needed is { } length ? $"; it takes {LengthText.Format(length, unit)} {what}" : "";
        return (missing.Closest, missing.Has) switch
        {
            ({ } closest, { } has) => $"{needed}, and the closest, {closest}, has {LengthText.Format(has, unit)}",
            (null, { } has) => $"{needed}, and there is {LengthText.Format(has, unit)}",
            (_, null) => $"{needed}{Closest(missing)}",
        };
    }

    private static string Width(Length? width, DisplayUnit unit) =>
        width is { } known ? $" ({LengthText.Format(known, unit)})" : "";

    private static string Closest(MissingPart missing) => missing.Closest is { } closest ? $"; {closest} comes closest" : "";

    private static string Short(PlanWarning warning, DisplayUnit unit, string machine)
    {
        var has = warning.Value is { } value ? $" ({LengthText.Format(value, unit)} long)" : "";
        var limit = warning.Limit is { } shortest ? $" the {LengthText.Format(shortest, unit)} that" : " what";
        return $"The blank of {warning.Subject}{has} is shorter than{limit} the shop takes as safe at the {machine}: "
            + "mill it in one piece with another part or by hand, and go by the machine's manual.";
    }

    private static string Wide(PlanWarning warning, DisplayUnit unit) =>
        warning.Value is { } value ? $" {LengthText.Format(value, unit)} wide" : "";
}
