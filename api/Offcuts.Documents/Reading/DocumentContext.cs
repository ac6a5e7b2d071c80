using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>What all keys of a document are read with: its unit, its currency, the species and the faults.</summary>
internal sealed class DocumentContext
{
    private const string SheetClass = "sheet";

    private readonly SpeciesCatalogue catalogue;
    private readonly string currency;

    private DocumentContext(DocumentFaults faults, DisplayUnit unit, SpeciesCatalogue catalogue, string currency)
    {
        Faults = faults;
        Unit = unit;
        this.catalogue = catalogue;
        this.currency = currency;
    }

    public DocumentFaults Faults { get; }

    /// <summary>The unit of bare numbers.</summary>
    public DisplayUnit Unit { get; }

    /// <summary>Reads the keys that every document may have: <c>unit</c> and <c>currency</c>.</summary>
    public static DocumentContext Of(Fields root, DocumentFaults faults, DisplayUnit bareUnit, SpeciesCatalogue catalogue, string currency)
    {
        var unit = bareUnit;
        if (root.OptionalText("unit") is { } word && !TryUnit(word.ToLowerInvariant(), out unit))
        {
            root.Fault("unit", $"'{word}': give in or mm.");
            unit = bareUnit;
        }

        if (root.OptionalText("currency") is { } written && written != currency)
        {
            root.Fault("currency", $"The prices are in '{written}', but the shop counts in {currency}: give prices in {currency}.");
        }

        return new(faults, unit, catalogue, currency);
    }

    public Length Length(Fields fields, string key) => Length(fields, fields.Required(key));

    public Length Length(Fields fields, Node? node) => fields.TryRead(
        node, (string text, out Length value, out string? error) => LengthText.TryParse(text, Unit, out value, out error), out var length)
        ? length : default;

    public Dimensions Size(Fields fields) => fields.TryRead(
        fields.Required("size"), (string text, out Dimensions value, out string? error) => SizeText.TryParse(text, Unit, out value, out error), out var size)
        ? size : default;

    /// <summary>A size of which every side may be a range.</summary>
    /// <returns>The least, and the most where any side is a range.</returns>
    public (Dimensions Least, Dimensions? Most) SizeRange(Fields fields) => fields.TryRead(
        fields.Required("size"),
        (string text, out (Dimensions Least, Dimensions? Most) value, out string? error) =>
            SizeText.TryParseRange(text, Unit, out value.Least, out value.Most, out error),
        out var size)
        ? size : default;

    /// <summary>A board's size; of softwood also by its nominal name.</summary>
    /// <returns>The size, and whether it was nominal.</returns>
    public (Dimensions Size, bool IsNominal) BoardSize(Fields fields, Species? species)
    {
        if (species is not { IsSoftwood: true })
        {
            return (Size(fields), false);
        }

        var isNominal = false;
        var size = fields.TryRead(
            fields.Required("size"),
            (string text, out Dimensions value, out string? error) =>
            {
                var read = SizeText.TryParseSoftwood(text, Unit, out value, out var nominal, out error);
                isNominal = nominal is not null;
                return read;
            },
            out var found) ? found : default;
        return (size, isNominal);
    }

    public Money Price(Fields fields, string key) => Price(fields, fields.Required(key));

    /// <summary>An amount; nothing if the key is not there.</summary>
    public Money OptionalPrice(Fields fields, string key) => Price(fields, fields.Optional(key));

    private Money Price(Fields fields, Node? node) => fields.TryRead(
        node, (string text, out Money value, out string? error) => MoneyText.TryParse(text, currency, out value, out error), out var price)
        ? price : default;

    /// <summary>The ids of the species and the classes that a key lists.</summary>
    public IReadOnlyList<string> Accepted(Fields fields, string key = "species") => [.. fields.Scalars(key).Select(scalar =>
        ClassOf(scalar.Text) ?? SpeciesOf(scalar)?.Id).OfType<string>().Distinct(StringComparer.Ordinal)];

    /// <summary>Reports sheet materials among the species of what is glued up from strips of solid wood.</summary>
    public void CheckSolid(Fields fields, IReadOnlyList<string> accepted)
    {
        foreach (var id in accepted.Where(id => id == SheetClass || (catalogue.Find(id)?.Classes.Contains(SheetClass) ?? false)))
        {
            fields.Fault("species", $"'{id}' is a sheet material, and panels are glued up from solid wood: make it a part, or name a wood.");
        }
    }

    /// <summary>The one species that a board or an offer is of; null, with a fault, if it is not known.</summary>
    public Species? Species(Fields fields)
    {
        switch (fields.Required("species"))
        {
            case Scalar scalar when ClassOf(scalar.Text) is { } named:
                Faults.Add(scalar, $"'{named}' is a class: say which species it is.");
                return null;
            case Scalar scalar:
                return SpeciesOf(scalar);
            case { } node:
                Faults.Add(node, $"This is {node.Kind}: it should be one species.");
                return null;
            default:
                return null;
        }
    }

    /// <summary>Solid or sheet: what the key <c>kind</c> says, else what the species says; they must agree.</summary>
    public static BoardKind Kind(Fields fields, Species? species)
    {
        var written = fields.Word<BoardKind>("kind");
        if (written is { } kind && species?.WhyNot(kind) is { } fault)
        {
            fields.Fault("kind", fault);
        }

        return written ?? species?.Kind ?? BoardKind.Solid;
    }

    /// <summary>How far the wood is milled, in the trade's words; null where it is not said.</summary>
    public static Surface? Surface(Fields fields) =>
        fields.Word("surface", ("skip", Domain.Surface.SkipPlaned), ("hit-or-miss", Domain.Surface.SkipPlaned));

    /// <summary>Reports a rough thickness in quarters on planed stock, which is thinner than that.</summary>
    public static void CheckQuarters(Fields fields, string key, Surface surface)
    {
        var written = (fields.Optional(key) as Scalar)?.Text.Split(['x', 'X', '*'])[0].Trim() ?? "";
        if (NominalSizes.QuartersFault(written, surface) is { } fault)
        {
            fields.Fault(key, fault);
        }
    }

    /// <summary>What to do about a name that no species has.</summary>
    public static string UnknownSpecies(string name, SpeciesCatalogue catalogue) =>
        $"The species {LengthText.Quote(name)} is not known.{(catalogue.Suggest(name) is { } near ? $" Did you mean {near}?" : " See the list of species, or add your own.")}";

    /// <summary>Reads the name of a unit of bare numbers.</summary>
    public static bool TryUnit(string word, out DisplayUnit unit)
    {
        unit = word is "mm" or "millimetre" or "millimetres" or "millimeter" or "millimeters" ? DisplayUnit.Millimetre : DisplayUnit.Inch;
        return unit == DisplayUnit.Millimetre || word is "in" or "inch" or "inches";
    }

    private Species? SpeciesOf(Scalar scalar)
    {
        if (catalogue.Find(scalar.Text) is { } species)
        {
            return species;
        }

        Faults.Add(scalar, UnknownSpecies(scalar.Text, catalogue));
        return null;
    }

    private string? ClassOf(string text)
    {
        var word = text.Trim().ToLowerInvariant().Replace(' ', '-');
        return catalogue.IsClass(word) ? word : null;
    }
}
