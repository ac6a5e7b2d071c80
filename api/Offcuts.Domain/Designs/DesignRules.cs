namespace Offcuts.Domain;

/// <summary>What every design must keep, wherever it comes from.</summary>
public static class DesignRules
{
    /// <summary>Everything that is wrong with the design, with pointers such as <c>#/parts/2/size</c>; empty if nothing is.</summary>
    public static IReadOnlyList<InputFault> Check(Design design)
    {
        var faults = new FaultList();
        BendingRules.CheckDeclared(design, faults);
        if (faults.Found.Count > 0)
        {
            return faults.Found;
        }

        if (!design.Bends && design.Choices.Count == 0)
        {
            return CheckSettled(design);
        }

        BendingRules.CheckInstances(design, CheckSettled, faults);
        return faults.Found;
    }

    /// <summary>The same of a design that leaves nothing to formulas and choices.</summary>
    private static IReadOnlyList<InputFault> CheckSettled(Design design)
    {
        var faults = new FaultList();
        faults.Text("#/name", design.Name, Limits.MaxName, required: true);
        faults.Text("#/description", design.Description, Limits.MaxNote);
        CheckTags(design.Tags, faults);
        if (design.Hours is <= 0 or > Limits.MaxHours)
        {
            faults.Add("#/hours", $"{design.Hours}: give more than 0 and at most {Limits.MaxHours} hours, or leave it out.");
        }

        faults.Count("#/parts", design.Parts.Count, 0, Limits.MaxEntries);
        faults.Count("#/panels", design.Panels.Count, 0, Limits.MaxEntries);
        faults.Count("#/groups", design.Groups.Count, 0, Limits.MaxEntries);
        faults.Count("#/items", design.Items.Count, 0, Limits.MaxEntries);
        if (design.Parts.Count + design.Panels.Count + design.Items.Count == 0)
        {
            faults.Add("#", $"The design has no parts, no panels and no items: give at least one.");
        }

        var groups = CheckGroups(design, faults);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (index, part) in design.Parts.Index())
        {
            var at = $"#/parts/{index}";
            CheckMember(at, part.Name, part.Quantity, part.Finished, names, faults);
            CheckSpecies(at, part.Species, part.Group, groups, faults);
            CheckTolerates(at, part.Tolerates, faults);
            PartRules.Check(at, part, faults);
        }

        foreach (var (index, panel) in design.Panels.Index())
        {
            var at = $"#/panels/{index}";
            CheckMember(at, panel.Name, panel.Quantity, panel.Finished, names, faults);
            CheckSpecies(at, panel.Species, panel.Group, groups, faults);
            CheckTolerates(at, panel.Tolerates, faults);
            CheckStrips(at, panel, faults);
        }

        CheckItems(design, faults);
        return faults.Found;
    }

    private static void CheckTags(IReadOnlyList<string> tags, FaultList faults)
    {
        faults.Count("#/tags", tags.Count, 0, Limits.MaxTags);
        var known = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (index, tag) in tags.Index())
        {
            faults.Text($"#/tags/{index}", tag, Limits.MaxName, required: true);
            if (!known.Add(tag))
            {
                faults.Add($"#/tags/{index}", $"The tag {LengthText.Quote(tag)} is there twice: leave one out.");
            }
        }
    }

    private static Dictionary<string, FinishGroup> CheckGroups(Design design, FaultList faults)
    {
        var groups = new Dictionary<string, FinishGroup>(StringComparer.Ordinal);
        foreach (var (index, group) in design.Groups.Index())
        {
            var at = $"#/groups/{index}";
            faults.Text($"{at}/name", group.Name, Limits.MaxName, required: true);
            faults.Count($"{at}/species", group.Species.Count, 0, Limits.MaxSpecies);
            if (!groups.TryAdd(group.Name, group))
            {
                faults.Add($"{at}/name", $"There are two groups named {LengthText.Quote(group.Name)}: give each its own name.");
            }
        }

        return groups;
    }

    private static void CheckMember(
        string at, string name, int quantity, Dimensions finished, HashSet<string> names, FaultList faults)
    {
        faults.Text($"{at}/name", name, Limits.MaxName, required: true);
        faults.Quantity($"{at}/quantity", quantity);
        faults.Size($"{at}/size", finished);
        if (!names.Add(name))
        {
            faults.Add($"{at}/name", $"Two parts or panels are named {LengthText.Quote(name)}: give each its own name.");
        }
    }

    private static void CheckSpecies(
        string at, IReadOnlyList<string> species, string? group, Dictionary<string, FinishGroup> groups, FaultList faults)
    {
        faults.Count($"{at}/species", species.Count, 0, Limits.MaxSpecies);
        FinishGroup? named = null;
        if (group is not null && !groups.TryGetValue(group, out named))
        {
            var meant = Spelling.Nearest(group, groups.Keys) is { } near ? $" Did you mean {near}?" : "";
            faults.Add($"{at}/group", $"There is no group {LengthText.Quote(group)}.{meant}");
        }
        else if (species.Count == 0 && (named is null || named.Species.Count == 0))
        {
            faults.Add($"{at}/species", $"No species is named here or in the group: give one or more, or a class such as hardwood.");
        }
    }

    private static void CheckTolerates(string at, IReadOnlyList<string> tolerates, FaultList faults)
    {
        faults.Count($"{at}/tolerates", tolerates.Count, 0, Limits.MaxTolerated);
        foreach (var (index, kind) in tolerates.Index())
        {
            faults.Text($"{at}/tolerates/{index}", kind, Limits.MaxName, required: true);
            if (DefectKinds.HoldMetal(kind))
            {
                faults.Add(
                    $"{at}/tolerates/{index}",
                    $"No part can tolerate {LengthText.Quote(kind)}: a blade meets the metal. Take it off the list; where the metal is gone, record and tolerate its hole, such as a nail hole.");
            }
        }
    }

    private static void CheckStrips(string at, Panel panel, FaultList faults)
    {
        if (panel.NarrowestStrip is { } narrowest)
        {
            faults.Size($"{at}/strips", "narrowest strip", narrowest);
        }

        if (panel.WidestStrip is { } widest)
        {
            faults.Size($"{at}/strips", "widest strip", widest);
            if (panel.NarrowestStrip > widest)
            {
                faults.Add($"{at}/strips", $"The narrowest strip is wider than the widest: give the narrower first.");
            }
        }
    }

    private static void CheckItems(Design design, FaultList faults)
    {
        foreach (var (index, item) in design.Items.Index())
        {
            var at = $"#/items/{index}";
            faults.Text($"{at}/name", item.Name, Limits.MaxName, required: true);
            faults.Text($"{at}/supplier", item.Supplier, Limits.MaxName);
            faults.Quantity($"{at}/quantity", item.Quantity);
            faults.Price($"{at}/price", item.UnitPrice);
        }
    }
}
