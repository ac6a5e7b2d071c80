namespace Offcuts.Domain;

/// <summary>What the freedom that a part leaves to the planner must keep.</summary>
internal static class PartRules
{
    /// <summary>Adds what is wrong with the part's ranges, spacing and spares.</summary>
    public static void Check(string at, Part part, FaultList faults)
    {
        faults.Count($"{at}/spares", part.Spares, 0, Limits.MaxSpares);
        faults.Count($"{at}/layers", part.Layers, 1, Limits.MaxLayers);
        if (part.Layers > 1 && part.HasTolerance)
        {
            faults.Add($"{at}/layers", $"A part that may be face-glued needs one finished size: give it one, or leave out the layers.");
        }

        CheckQuantity(at, part, faults);
        CheckSpacing(at, part, faults);
        if (part.Most is { } most)
        {
            CheckRange(at, "thickness", part.Finished.Thickness, most.Thickness, faults);
            CheckRange(at, "width", part.Finished.Width, most.Width, faults);
            CheckRange(at, "length", part.Finished.Length, most.Length, faults);
        }
    }

    private static void CheckQuantity(string at, Part part, FaultList faults)
    {
        if (part.MostQuantity is { } most)
        {
            faults.Quantity($"{at}/quantity", most);
            if (most <= part.Quantity)
            {
                faults.Add($"{at}/quantity", $"The quantity goes from {part.Quantity} to {most}: give the smaller first, or one number.");
            }
        }
    }

    private static void CheckSpacing(string at, Part part, FaultList faults)
    {
        if (part.Spacing is not { } spacing)
        {
            return;
        }

        faults.Size($"{at}/spacing", "span", spacing.Span);
        if (spacing.Gaps(part.Quantity) < 1)
        {
            faults.Add($"{at}/spacing", $"A single piece without gaps at the ends leaves no gap: give a quantity of 2 or more, or gaps at the ends.");
        }

        var most = part.MostQuantity ?? part.Quantity;
        if (part.Finished.Width.Ticks > 0 && most > spacing.Span.Ticks / part.Finished.Width.Ticks)
        {
            faults.Add(
                $"{at}/spacing",
                $"{most} pieces {LengthText.FormatExact(part.Finished.Width)} wide do not fit into {LengthText.FormatExact(spacing.Span)}: give fewer, or a longer span.");
        }
    }

    private static void CheckRange(string at, string what, Length least, Length most, FaultList faults)
    {
        faults.Size($"{at}/size", what, most);
        if (most < least)
        {
            faults.Add(
                $"{at}/size",
                $"The {what} goes from {LengthText.FormatExact(least)} to {LengthText.FormatExact(most)}: give the smaller first.");
        }
    }
}
