using System.Security.Cryptography;
using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Designs;

/// <summary>Designs between the wire and the domain.</summary>
internal static class DesignMapping
{
    /// <summary>The design that was entered, with species by their ids.</summary>
    public static Design ToDesign(DesignEntry entry, SpeciesCatalogue catalogue, string currency, string at, Faults faults)
    {
        faults.Text($"{at}/name", entry.Name, Limits.MaxName, required: true);
        faults.Text($"{at}/description", entry.Description, Limits.MaxNote);
        var design = new Design
        {
            Name = entry.Name,
            Description = entry.Description,
            Tags = [.. faults.Entries($"{at}/tags", entry.Tags, Limits.MaxTags).Select(tag => tag.Entry)],
            Hours = entry.Hours,
            Parts = [.. faults.Entries($"{at}/parts", entry.Parts, Limits.MaxEntries)
                .Select(part => ToPart(part.Entry, catalogue, $"{at}/parts/{part.Index}", faults))],
            Panels = [.. faults.Entries($"{at}/panels", entry.Panels, Limits.MaxEntries)
                .Select(panel => ToPanel(panel.Entry, catalogue, $"{at}/panels/{panel.Index}", faults))],
            Groups = [.. faults.Entries($"{at}/groups", entry.Groups, Limits.MaxEntries)
                .Select(group => ToGroup(group.Entry, catalogue, $"{at}/groups/{group.Index}", faults))],
            Items = [.. faults.Entries($"{at}/items", entry.Items, Limits.MaxEntries)
                .Select(item => ToItem(item.Entry, currency, $"{at}/items/{item.Index}", faults))],
        };
        // What has no value is told by the rules.
        design = DesignInstance.AtDefaults(BendingMapping.WithDeclared(design, entry, at, faults), (_, _) => { });
        faults.AddRules(at, () => DesignRules.Check(design), ("/size", ""), ("/strips", "/narrowestStripMm"), ("/price", "/unitPrice"));
        return design;
    }

    /// <summary>The design with every member written out: equal designs give equal entries.</summary>
    public static DesignEntry ToEntry(Design design, string currency) => new(
        design.Name,
        design.Description,
        [.. design.Parts.Select(part => new PartRecord(
            part.Name, part.Finished.Thickness.Millimetres, part.Finished.Width.Millimetres, part.Finished.Length.Millimetres,
            part.Quantity, part.Species, Words.Of(part.Appearance), Words.Of(part.Grain), part.Group, Listed(part.Tolerates),
            Most(part, size => size.Thickness), Most(part, size => size.Width), Most(part, size => size.Length),
            part.MostQuantity, part.Spacing is { } spacing ? new SpacingRecord(spacing.Span.Millimetres, spacing.Ends) : null,
            part.Spares == 0 ? null : part.Spares, part.Extras is { } extras ? Words.Of(extras) : null, part.Layers > 1 ? part.Layers : null,
            BendingMapping.Formulas(part.Freedom), BendingMapping.When(part.Freedom), part.Freedom.SpeciesInOrder ? true : null))],
        [.. design.Panels.Select(panel => new PanelRecord(
            panel.Name, panel.Finished.Thickness.Millimetres, panel.Finished.Width.Millimetres, panel.Finished.Length.Millimetres,
            panel.Quantity, panel.NarrowestStrip?.Millimetres, panel.WidestStrip?.Millimetres, panel.Species,
            Words.Of(panel.Appearance), panel.Group, Listed(panel.Tolerates),
            BendingMapping.Formulas(panel.Freedom), BendingMapping.When(panel.Freedom), panel.Freedom.SpeciesInOrder ? true : null))],
        [.. design.Groups.Select(group => new GroupRecord(
            group.Name, group.OneSpecies, group.Species, group.Batch == BatchChoice.Any ? null : Words.Of(group.Batch), group.SpeciesInOrder ? true : null))],
        [.. design.Items.Select(item => ToRecord(item, currency))],
        BendingMapping.Parameters(design), BendingMapping.FormulaUnit(design), BendingMapping.Choices(design),
        Listed(design.Tags),
        // Hours written otherwise are the same hours: 6.50 is 6.5.
        design.Hours / 1.0000000000000000000000000000m);

    // None is not written: a design from before there was the member keeps its version.
    private static IReadOnlyList<string>? Listed(IReadOnlyList<string> tolerates) => tolerates.Count > 0 ? tolerates : null;

    public static ItemRecord ToRecord(BoughtItem item, string currency) =>
        new(item.Name, MoneyText.ToDecimal(item.UnitPrice, currency), item.Quantity, item.Supplier, BendingMapping.Formulas(item.Freedom), BendingMapping.When(item.Freedom));

    /// <summary>The canonical content and its version: the first 12 hexadecimal digits of its SHA-256.</summary>
    public static (string Content, string Version) Canonical(Design design, string currency)
    {
        var content = JsonSerializer.SerializeToUtf8Bytes(ToEntry(design, currency), WireJson.Default.DesignEntry);
        return (System.Text.Encoding.UTF8.GetString(content), Convert.ToHexStringLower(SHA256.HashData(content))[..12]);
    }

    private static Part ToPart(PartRecord record, SpeciesCatalogue catalogue, string at, Faults faults)
    {
        faults.Text($"{at}/name", record.Name, Limits.MaxName, required: true);
        var given = new Given(record.Formulas, at, faults);
        var least = Size(record.ThicknessMm, record.WidthMm, record.LengthMm, given);
        return new Part
        {
            Name = record.Name,
            Quantity = given.Count("quantity", record.Quantity, 1, Limits.MaxQuantity),
            MostQuantity = record.MostQuantity == record.Quantity || given.Follows("quantity") ? null : record.MostQuantity,
            Spacing = record.Spacing is { } spacing ? new Spacing(given.Millimetres("spanMm", spacing.SpanMm, "spacing/"), spacing.Ends) : null,
            Spares = given.Count("spares", record.Spares ?? 0, 0, Limits.MaxSpares),
            Extras = record.Extras is { } extras ? faults.Word<ExtraSource>($"{at}/extras", extras) : null,
            Finished = least,
            Most = Most(record, least, given, at, faults),
            Species = faults.SpeciesOrClasses($"{at}/species", record.Species, catalogue),
            Appearance = faults.Word<Appearance>($"{at}/appearance", record.Appearance),
            Grain = faults.Word<Grain>($"{at}/grain", record.Grain),
            Group = record.Group,
            Tolerates = [.. faults.Entries($"{at}/tolerates", record.Tolerates, Limits.MaxTolerated).Select(kind => kind.Entry)],
            Layers = record.Layers is { } layers ? faults.Count($"{at}/layers", layers, 1, Limits.MaxLayers) : 1,
            Freedom = BendingMapping.ToFreedom(record, at, faults),
        };
    }

    private static Panel ToPanel(PanelRecord record, SpeciesCatalogue catalogue, string at, Faults faults)
    {
        faults.Text($"{at}/name", record.Name, Limits.MaxName, required: true);
        var given = new Given(record.Formulas, at, faults);
        return new Panel
        {
            Name = record.Name,
            Quantity = given.Count("quantity", record.Quantity, 1, Limits.MaxQuantity),
            Finished = Size(record.ThicknessMm, record.WidthMm, record.LengthMm, given),
            NarrowestStrip = record.NarrowestStripMm is { } narrowest ? given.Millimetres("narrowestStripMm", narrowest) : null,
            WidestStrip = record.WidestStripMm is { } widest ? given.Millimetres("widestStripMm", widest) : null,
            Species = faults.SpeciesOrClasses($"{at}/species", record.Species, catalogue),
            Appearance = faults.Word<Appearance>($"{at}/appearance", record.Appearance),
            Group = record.Group,
            Tolerates = [.. faults.Entries($"{at}/tolerates", record.Tolerates, Limits.MaxTolerated).Select(kind => kind.Entry)],
            Freedom = BendingMapping.ToFreedom(record, at, faults),
        };
    }

    private static FinishGroup ToGroup(GroupRecord record, SpeciesCatalogue catalogue, string at, Faults faults)
    {
        faults.Text($"{at}/name", record.Name, Limits.MaxName, required: true);
        return new FinishGroup(record.Name, record.OneSpecies, faults.SpeciesOrClasses($"{at}/species", record.Species, catalogue))
        {
            Batch = record.Batch is { } batch ? faults.Word<BatchChoice>($"{at}/batch", batch) : BatchChoice.Any,
            SpeciesInOrder = record.InOrder ?? false,
        };
    }

    private static BoughtItem ToItem(ItemRecord record, string currency, string at, Faults faults)
    {
        faults.Text($"{at}/name", record.Name, Limits.MaxName, required: true);
        faults.Text($"{at}/supplier", record.Supplier, Limits.MaxName);
        return new BoughtItem(
            record.Name,
            new Given(record.Formulas, at, faults).Count("quantity", record.Quantity, 1, Limits.MaxQuantity),
            faults.Money($"{at}/unitPrice", record.UnitPrice, currency),
            record.Supplier)
        {
            Freedom = BendingMapping.ToFreedom(record, at, faults),
        };
    }

    /// <summary>The largest side where it is above the least; else null, so that equal designs give equal entries.</summary>
    private static decimal? Most(Part part, Func<Dimensions, Length> side) =>
        part.Most is { } most && side(most) != side(part.Finished) ? side(most).Millimetres : null;

    private static Dimensions? Most(PartRecord record, Dimensions least, Given given, string at, Faults faults)
    {
        var most = new Dimensions(
            Side(record.MostThicknessMm, least.Thickness, "mostThicknessMm"),
            Side(record.MostWidthMm, least.Width, "mostWidthMm"),
            Side(record.MostLengthMm, least.Length, "mostLengthMm"));
        return most == least ? null : most;

        Length Side(decimal? most, Length lowest, string name)
        {
            if (most is not { } written)
            {
                return lowest;
            }

            var length = given.Millimetres(name, written);
            if (length != Length.Zero && length < lowest && !given.Follows(name))
            {
                faults.Add($"{at}/{name}", $"{length} is below the least, {lowest}: give the smaller first, or leave this out.");
            }

            return length;
        }
    }

    private static Dimensions Size(decimal thickness, decimal width, decimal length, Given given) => new(
        given.Millimetres("thicknessMm", thickness), given.Millimetres("widthMm", width), given.Millimetres("lengthMm", length));

    /// <summary>Numbers of one member: what follows by a formula is not checked, since it is written anew.</summary>
    private readonly struct Given(IReadOnlyDictionary<string, string>? formulas, string at, Faults faults)
    {
        public bool Follows(string name) => formulas?.ContainsKey(name) ?? false;

        public Length Millimetres(string name, decimal value, string below = "") => Follows(name) ? Length.Zero : faults.Millimetres($"{at}/{below}{name}", value);

        public int Count(string name, int value, int least, int most) => Follows(name) ? 0 : faults.Count($"{at}/{name}", value, least, most);
    }
}
