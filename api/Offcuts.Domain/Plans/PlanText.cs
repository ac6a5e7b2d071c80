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

    /// <summary>Why a part or panel is missing and what to do about it, with an offer that comes closest by the name and supplier that people know.</summary>
    public static string Of(MissingPart missing, PlanningProblem problem)
    {
        var why = Of(missing with { Closest = missing.Closest is { } id ? NameOf(id, problem) : null }, problem.Shop.Unit);
        return $"{why[..^1]}{MissingText.Remedy(missing, problem)}.";
    }

    private static string NameOf(string id, PlanningProblem problem) => problem.Offers.FirstOrDefault(offer => offer.Id == id) is { } offer
        && problem.Stock.All(board => board.Id != id)
            ? $"{offer.Name ?? offer.Id} from {offer.SupplierName ?? offer.Supplier}"
            : id;

    /// <summary>What to mind about a part, panel or board, with the usual caution.</summary>
    public static string Of(PlanWarning warning, DisplayUnit unit) => warning.Kind switch
    {
        WarningKind.ShortForPlaner or WarningKind.ShortForJointer => ShortBlankText.Of([warning], unit).Single(),
        WarningKind.Defects or WarningKind.Estimated or WarningKind.Resawn or WarningKind.Laminated
            or WarningKind.MixedBatches or WarningKind.StaleReadings or WarningKind.UnequalMoisture => SharedWarningText.Of(warning.Kind, [warning]),
        WarningKind.WidePanel => $"{warning.Subject} is a solid panel{Wide(warning, unit)} that moves across the grain with the seasons: "
            + "fix it so that it can.",
    };

    /// <summary>All warnings in words: first what can hurt, with blanks that are too short alike, and all else that is alike, in one sentence.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<PlanWarning> warnings, DisplayUnit unit) =>
    [
        .. ShortBlankText.Of(warnings.Where(ShortBlankText.Is), unit),
        .. warnings.Where(SharedWarningText.Is).GroupBy(warning => warning.Kind).Select(alike => SharedWarningText.Of(alike.Key, [.. alike])),
        .. warnings.Where(warning => !ShortBlankText.Is(warning) && !SharedWarningText.Is(warning)).Select(warning => Of(warning, unit)),
    ];

    private static string Why(MissingPart missing, DisplayUnit unit) => missing.Reason switch
    {
        MissingReason.NoSuchSpecies => "no board and no offer is of a species that it accepts",
        MissingReason.NotOfOneBatch => $"no wood of its species is of the one batch that its finish group asks for{Closest(missing)}",
        MissingReason.NotGoodEnough => $"no wood of its species looks good enough{Closest(missing)}",
        MissingReason.WrongThickness => $"no wood of its species has the right thickness{Sizes(missing, unit, "in thickness")}",
        MissingReason.TooWideForMachines => $"its blank{Width(missing.Needed, unit)} is wider than the jointer or planer takes{Width(missing.Has, unit)}",
        MissingReason.TooShort => $"no board and no offer is long enough{Sizes(missing, unit, "in length")}",
        MissingReason.TooNarrow => $"no board and no offer is wide enough{Sizes(missing, unit, "in width")}",
        MissingReason.TooWarped => $"every board that would do is too warped for it{Sizes(missing with { Needed = Up(missing.Needed, unit) }, unit, "in thickness with what flattening takes")}",
        MissingReason.TooFew => $"there is suitable wood, but too little of it{Closest(missing)}",
    };

    private static string Sizes(MissingPart missing, DisplayUnit unit, string what)
    {
        var needed = missing.Needed is { } length ? $"; it takes {LengthText.Format(length, unit)} {what}" : "";
        return (missing.Closest, missing.Has) switch
        {
            // Its size may be enough, but nothing of it may be used.
            ({ } closest, { Ticks: 0 }) => $"{needed}, and of the closest, {closest}, defects and trimmed ends leave nothing",
            ({ } closest, { } has) => $"{needed}, and the closest, {closest}, has {LengthText.Format(has, unit)}",
            (null, { } has) => $"{needed}, and there is {LengthText.Format(has, unit)}",
            (_, null) => $"{needed}{Closest(missing)}",
        };
    }

    // Rounded to the nearest, what is needed could read as what there is.
    private static Length? Up(Length? needed, DisplayUnit unit) => needed is { } length ? LossText.Up(length, unit) : null;

    private static string Width(Length? width, DisplayUnit unit) =>
        width is { } known ? $" ({LengthText.Format(known, unit)})" : "";

    private static string Closest(MissingPart missing) => missing.Closest is { } closest ? $"; {closest} comes closest" : "";

    private static string Wide(PlanWarning warning, DisplayUnit unit) =>
        warning.Value is { } value ? $" {LengthText.Format(value, unit)} wide" : "";
}
