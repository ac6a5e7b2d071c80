namespace Offcuts.Domain;

/// <summary>How many pieces there are of a part, in words.</summary>
public static class CountText
{
    /// <summary>One sentence or two: <c>Slat: 7 pieces (5 to 9 will do), 8 gaps of 1 1/4".</c></summary>
    public static string Of(PartCount count, Part part, DisplayUnit unit)
    {
        var pieces = FormattableString.Invariant($"{part.Name}: {count.Count} {(count.Count == 1 ? "piece" : "pieces")}");
        return $"{pieces}{Wanted(part)}{Gaps(count.Gaps, unit)}.{Spares(count, part)}";
    }

    private static string Wanted(Part part) =>
        part.MostQuantity is { } most ? FormattableString.Invariant($" ({part.Quantity} to {most} will do)") : "";

    private static string Gaps(EqualGaps? gaps, DisplayUnit unit)
    {
        if (gaps is not { Number: > 0 })
        {
            return "";
        }

        var each = LengthText.Format(gaps.Nearest(unit), unit);
        var number = FormattableString.Invariant($", {gaps.Number} {(gaps.Number == 1 ? "gap" : "gaps")}");
        return gaps.IsExact(unit) ? $"{number} of {each}" : $"{number} of about {each}, {LengthText.Format(gaps.Total, unit)} together";
    }

    private static string Spares(PartCount count, Part part)
    {
        const string Why = "what the boards leave has no room for more";
        return part.Spares == 0 ? ""
            : count.Spares == 0 ? $" No spare was to be had: {Why}{Remedy(part)}."
            : count.Spares < part.Spares ? FormattableString.Invariant($" {count.Spares} of {part.Spares} spares: {Why}{Remedy(part)}.")
            : FormattableString.Invariant($" {count.Spares} {(count.Spares == 1 ? "spare" : "spares")} besides.");
    }

    private static string Remedy(Part part) =>
        part.MayUseLeftovers(PieceUse.Spare) ? "" : "; 'extras: leftovers' would let them be cut from leftovers";
}
