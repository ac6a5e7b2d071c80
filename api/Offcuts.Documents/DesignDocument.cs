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
        var declared = Declarations.Of(root, faults);
        var design = new Design
        {
            Name = root.Text("name"),
            Description = root.OptionalText("description"),
            Tags = [.. root.Scalars("tags").Select(scalar => scalar.Text.Trim())],
            Hours = root.OptionalNumber("hours", Limits.MaxHours),
            Parameters = declared.Parameters,
            Derived = declared.Derived,
            FormulaUnit = declared.HasNames ? context.Unit : DisplayUnit.Millimetre,
            Groups = [.. root.Groups("groups").Select(fields => ToGroup(fields, context))],
            Parts = [.. root.Groups("parts").Select(fields => ToPart(fields, context, declared))],
            Panels = [.. root.Groups("panels").Select(fields => ToPanel(fields, context, declared))],
            Items = [.. root.Groups("items").Select(fields => ToItem(fields, context, declared))],
        };
        // Reading the members may have added choices; what has no value is told by the rules.
        design = DesignInstance.AtDefaults(design with { Choices = declared.Choices }, (_, _) => { });
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
            SpeciesInOrder = fields.YesNo("in order"),
        };
        fields.End();
        return group;
    }

    private static Part ToPart(Fields fields, DocumentContext context, Declarations declared)
    {
        var open = new OpenMember(fields, context, declared);
        var (fewest, mostPieces) = open.QuantityRange();
        var (least, most) = open.SizeRange();
        var part = new Part
        {
            Name = fields.Text("name"),
            Quantity = fewest,
            MostQuantity = mostPieces,
            Spacing = Spacing(fields.Group("spacing"), open),
            Spares = open.Whole("spares", Measure.Spares, 0, Limits.MaxSpares) ?? 0,
            Extras = fields.Word<ExtraSource>("extras"),
            Finished = least,
            Most = most,
            Species = context.Accepted(fields),
            Appearance = fields.Word<Appearance>("appearance") ?? Appearance.SoundKnots,
            Grain = fields.Word<Grain>("grain") ?? Grain.Fixed,
            Group = fields.OptionalText("group"),
            Tolerates = [.. fields.Scalars("tolerates").Select(scalar => scalar.Text)],
            Layers = fields.Layers(),
            Freedom = open.Freedom(),
        };
        fields.End();
        return part;
    }

    private static Spacing? Spacing(Fields? fields, OpenMember member)
    {
        if (fields is null)
        {
            return null;
        }

        var spacing = new Spacing(member.Length(fields, "span", Measure.Span), fields.YesNo("ends"));
        fields.End();
        return spacing;
    }

    private static Panel ToPanel(Fields fields, DocumentContext context, Declarations declared)
    {
        var open = new OpenMember(fields, context, declared);
        var (narrowest, widest) = open.LengthRange("strips", Measure.NarrowestStrip, Measure.WidestStrip) ?? Strips(fields, context);
        var panel = new Panel
        {
            Name = fields.Text("name"),
            Quantity = open.Quantity(),
            Finished = open.Size(),
            NarrowestStrip = narrowest,
            WidestStrip = widest,
            Species = context.Accepted(fields),
            Appearance = fields.Word<Appearance>("appearance") ?? Appearance.SoundKnots,
            Group = fields.OptionalText("group"),
            Tolerates = [.. fields.Scalars("tolerates").Select(scalar => scalar.Text)],
            Freedom = open.Freedom(),
        };
        context.CheckSolid(fields, panel.Species);
        fields.End();
        return panel;
    }

    private static BoughtItem ToItem(Fields fields, DocumentContext context, Declarations declared)
    {
        var open = new OpenMember(fields, context, declared);
        var item = new BoughtItem(fields.Text("name"), open.Quantity(), context.Price(fields, "price"), fields.OptionalText("supplier"))
        {
            Freedom = open.Freedom(hasSpecies: false),
        };
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
