using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Designs;

/// <summary>A design as a person reads it.</summary>
internal static class DesignView
{
    /// <summary>Its parts, panels and items.</summary>
    public static void Write(DesignRecord stored, SpeciesList known, ShopRecord shop, DisplayUnit unit, Terminal terminal)
    {
        var design = stored.Design;
        terminal.Out.WriteLine(terminal.Bold(SafeText.Of($"{design.Name}  ({stored.Reference}, version {stored.Version})")));
        if (design.Description is { } description)
        {
            terminal.Out.WriteLine(SafeText.Of(description.ReplaceLineEndings(" ").Trim()));
        }

        if (design.Hours is { } hours)
        {
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"About {hours} hours of work."));
        }

        if (design.Tags is { Count: > 0 } tags)
        {
            terminal.Out.WriteLine(SafeText.Of($"Tags: {string.Join(", ", tags)}."));
        }

        OpenView.Write(design, unit, terminal);
        var names = known.Items.ToDictionary(species => species.Id, species => species.Name, StringComparer.Ordinal);
        var groups = (design.Groups ?? []).ToDictionary(group => group.Name, StringComparer.Ordinal);
        var table = new Table("PART", ">QTY", ">FINISHED SIZE", "SPECIES", "LOOK", "GRAIN", "GROUP");
        foreach (var part in design.Parts ?? [])
        {
            table.Add(part.Name, OpenView.Quantity(part.Formulas, Quantity(part)), OpenView.Size(part.Formulas, Range(part)), Species(part.Species, part.Group), Look(part.Appearance, part.Tolerates), Grain(part), part.Group);
        }

        foreach (var panel in design.Panels ?? [])
        {
            table.Add(panel.Name, OpenView.Quantity(panel.Formulas, Count(panel.Quantity)), OpenView.Size(panel.Formulas, Size(panel.ThicknessMm, panel.WidthMm, panel.LengthMm)), Species(panel.Species, panel.Group), Look(panel.Appearance, panel.Tolerates), "glued up", panel.Group);
        }

        terminal.Out.WriteLine();
        table.Write(terminal);
        foreach (var group in (design.Groups ?? []).Where(group => group.Batch is "one" or "fewest"))
        {
            var batch = group.Batch == "one" ? "all from boards of one batch" : "from boards of one batch if it costs no more";
            terminal.Out.WriteLine(SafeText.Of($"Group {group.Name}: {batch}."));
        }

        OpenView.WriteFormulas(design, terminal);
        if (design.Items is not { Count: > 0 } items)
        {
            return;
        }

        var bought = new Table("ITEM", ">QTY", ">PRICE OF ONE", "SUPPLIER");
        foreach (var item in items)
        {
            bought.Add(item.Name, OpenView.Quantity(item.Formulas, Count(item.Quantity)), Price.Of(item.UnitPrice, shop.Currency), item.Supplier);
        }

        terminal.Out.WriteLine();
        bought.Write(terminal);

        string Size(decimal thickness, decimal width, decimal length) => Lengths.Text(new(thickness, width, length), unit);

        string Range(PartRecord part) => SizeText.Format(
            Lengths.Size(part.ThicknessMm, part.WidthMm, part.LengthMm),
            Lengths.Size(part.MostThicknessMm ?? part.ThicknessMm, part.MostWidthMm ?? part.WidthMm, part.MostLengthMm ?? part.LengthMm), unit);

        string Species(IReadOnlyList<string>? own, string? group) =>
            string.Join(", ", (own is { Count: > 0 } ? own : group is not null && groups.TryGetValue(group, out var of) ? of.Species ?? [] : []).Select(word => names.GetValueOrDefault(word, word)));
    }

    private static string Look(string appearance, IReadOnlyList<string>? tolerates) =>
        tolerates is { Count: > 0 } ? $"{appearance}, tolerates {string.Join(", ", tolerates)}" : appearance;

    private static string Quantity(PartRecord part)
    {
        var pieces = part.MostQuantity is { } most ? $"{Count(part.Quantity)}..{Count(most)}" : Count(part.Quantity);
        return part.Spares is { } spares ? $"{pieces} + {Count(spares)} spare" : pieces;
    }

    private static string Grain(PartRecord part) => part.Layers > 1 ? $"{part.Grain}, up to {Count(part.Layers.Value)} layers" : part.Grain;

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
