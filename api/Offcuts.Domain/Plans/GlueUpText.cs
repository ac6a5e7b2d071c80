namespace Offcuts.Domain;

/// <summary>How a panel is glued up, in words.</summary>
public static class GlueUpText
{
    /// <summary>How many sub-panels a panel has and how wide each is, such as <c>2 sub-panels, 12" and 10 3/8" wide</c>; null if it is glued up whole.</summary>
    /// <param name="widths">Widths of the sub-panels in order.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string? SubPanels(IReadOnlyList<Length> widths, DisplayUnit unit)
    {
        if (widths.Count < 2)
        {
            return null;
        }

        var texts = widths.Select(width => LengthText.Format(width, unit)).ToList();
        var wide = texts.Distinct(StringComparer.Ordinal).Count() == 1 ? $"each {texts[0]}" : $"{string.Join(", ", texts.SkipLast(1))} and {texts[^1]}";
        return FormattableString.Invariant($"{widths.Count} sub-panels, {wide} wide");
    }

    /// <summary>What to do about the width of a sub-panel when its strips are glued.</summary>
    /// <param name="subPanel">The sub-panel.</param>
    /// <param name="unit">The shop's unit.</param>
    public static string Width(SubPanel subPanel, DisplayUnit unit)
    {
        var reach = LengthText.Format(subPanel.Strips.Aggregate(Length.Zero, (total, strip) => total + strip.NetWidth), unit);
        var needed = LengthText.Format(subPanel.NeededWidth, unit);
        return reach == needed ? $"the strips reach {reach}, the width that is needed" : $"the strips reach {reach}; rip it to {needed}";
    }
}
