using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>A design as its maker writes it down, in YAML or JSON: names, quantities and finished sizes.</summary>
public static class DesignDocument
{
    /// <summary>Reads a design. Species are named by their ids afterwards, classes stay classes.</summary>
    /// <param name="text">The document, at most 1 MB.</param>
    /// <param name="bareUnit">The unit of bare numbers where the document does not say (key <c>unit</c>).</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <param name="currency">The shop's currency, for the prices of items.</param>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.Invalid"/>, with every fault, its pointer and its line.</exception>
    public static Design Parse(string text, DisplayUnit bareUnit, SpeciesCatalogue catalogue, string currency = "USD")
    {
        var faults = new DocumentFaults("design");
        var root = new Fields(NodeReader.Read(text, faults), faults);
        var context = DocumentContext.Of(root, faults, bareUnit, catalogue, currency);
        var design = new Design
        {
            Name = root.Text("name"),
            Description = root.OptionalText("description"),
            Groups = [.. root.Groups("groups").Select(fields => ToGroup(fields, context))],
            Parts = [.. root.Groups("parts").Select(fields => ToPart(fields, context))],
            Panels = [.. root.Groups("panels").Select(fields => ToPanel(fields, context))],
            Items = [.. root.Groups("items").Select(fields => ToItem(fields, context))],
        };
        root.End();
        faults.ThrowIfAny();
        faults.Add(DesignRules.Check(design), root.Mapping);
        faults.ThrowIfAny();
        return design;
    }

    private static FinishGroup ToGroup(Fields fields, DocumentContext context)
    {
        var group = new FinishGroup(fields.Text("name"), fields.YesNo("one species"), context.Accepted(fields))
        {
            Batch = fields.Word<BatchChoice>("batch") ?? BatchChoice.Any,
        };
        fields.End();
        return group;
    }

    private static Part ToPart(Fields fields, DocumentContext context)
    {
        var (fewest, mostPieces) = fields.QuantityRange();
        var (least, most) = context.SizeRange(fields);
        var part = new Part
        {
            Name = fields.Text("name"),
            Quantity = fewest,
            MostQuantity = mostPieces,
            Spacing = Spacing(fields.Group("spacing"), context),
            Spares = fields.OptionalWhole("spares", 0, Limits.MaxSpares) ?? 0,
            Extras = fields.Word<ExtraSource>("extras"),
            Finished = least,
            Most = most,
            Species = context.Accepted(fields),
            Appearance = fields.Word<Appearance>("appearance") ?? Appearance.SoundKnots,
            Grain = fields.Word<Grain>("grain") ?? Grain.Fixed,
            Group = fields.OptionalText("group"),
            Tolerates = [.. fields.Scalars("tolerates").Select(scalar => scalar.Text)],
            Layers = fields.Layers(),
        };
        fields.End();
        return part;
    }

    private static Spacing? Spacing(Fields? fields, DocumentContext context)
    {
        if (fields is null)
        {
            return null;
        }

        var spacing = new Spacing(context.Length(fields, "span"), fields.YesNo("ends"));
        fields.End();
        return spacing;
    }

    private static Panel ToPanel(Fields fields, DocumentContext context)
    {
        var (narrowest, widest) = Strips(fields, context);
        var panel = new Panel
        {
            Name = fields.Text("name"),
            Quantity = fields.Quantity(),
            Finished = context.Size(fields),
            NarrowestStrip = narrowest,
            WidestStrip = widest,
            Species = context.Accepted(fields),
            Appearance = fields.Word<Appearance>("appearance") ?? Appearance.SoundKnots,
            Group = fields.OptionalText("group"),
            Tolerates = [.. fields.Scalars("tolerates").Select(scalar => scalar.Text)],
        };
        context.CheckSolid(fields, panel.Species);
        fields.End();
        return panel;
    }

    private static BoughtItem ToItem(Fields fields, DocumentContext context)
    {
        var item = new BoughtItem(
            fields.Text("name"), fields.Quantity(), context.Price(fields, "price"), fields.OptionalText("supplier"));
        fields.End();
        return item;
    }

    private static (Length? Narrowest, Length? Widest) Strips(Fields fields, DocumentContext context)
    {
        var read = fields.TryRead(
            fields.Optional("strips"),
            (string text, out (Length From, Length To) value, out string? error) =>
                RangeText.TryParse(text, context.Unit, fromZero: false, out value.From, out value.To, out error),
            out var strips);
        return read ? (strips.From, strips.To) : (null, null);
    }
}
