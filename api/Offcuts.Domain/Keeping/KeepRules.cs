namespace Offcuts.Domain;

/// <summary>What every keep rule must keep itself.</summary>
public static class KeepRules
{
    /// <summary>Everything that is wrong with a rule, with pointers such as <c>#/entries/0/sizes</c>; empty if nothing is.</summary>
    public static IReadOnlyList<InputFault> Check(KeepRule rule)
    {
        var faults = new FaultList();
        faults.Count("#/entries", rule.Entries.Count, 0, KeepRule.MostEntries);
        foreach (var (index, entry) in rule.Entries.Index())
        {
            var at = $"#/entries/{index}";
            faults.Count($"{at}/sizes", entry.Sizes.Count, entry.Word == KeepWord.Keep ? 1 : 0, KeepRule.MostSizes);
            if (entry.Species is { } species)
            {
                faults.Count($"{at}/species", species.Count, 1, Limits.MaxSpecies);
            }

            foreach (var (number, size) in entry.Sizes.Index())
            {
                CheckSize($"{at}/sizes/{number}", size, faults);
            }
        }

        return faults.Found;
    }

    private static void CheckSize(string at, KeepSize size, FaultList faults)
    {
        if (size == default)
        {
            faults.Add(at, $"It names no size: give at least one of length, width, thickness and section.");
        }

        foreach (var (what, side) in new[] { ("length", size.Length), ("width", size.Width), ("thickness", size.Thickness) })
        {
            if (side is { } length)
            {
                faults.Size($"{at}/{what}", what, length);
            }
        }

        if (size.Section is { } section && (section <= default(Area) || section > SectionText.Largest))
        {
            faults.Add($"{at}/section", $"The section is {section.SquareMillimetres} mm2: give more than zero and at most {SectionText.Largest.SquareMillimetres}.");
        }
    }
}
