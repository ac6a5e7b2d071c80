using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>
/// The keys of one group, each taken once; a value that cannot be right becomes a fault and a harmless stand-in, so that reading goes on.
/// </summary>
/// <param name="mapping">The group.</param>
/// <param name="faults">Where faults go.</param>
internal sealed partial class Fields(Mapping mapping, DocumentFaults faults)
{
    private readonly HashSet<string> known = new(StringComparer.Ordinal);

    /// <summary>The group itself.</summary>
    public Mapping Mapping => mapping;

    /// <summary>The value of a key; null if it is not there or empty.</summary>
    public Node? Optional(string key)
    {
        known.Add(key);
        var value = mapping.Entries.FirstOrDefault(entry => entry.Key == key)?.Value;
        if (value is Scalar { IsNothing: true })
        {
            faults.Add(value, $"The key '{key}' has no value: give one or leave the key out.");
            return null;
        }

        return value;
    }

    /// <summary>The value of a key that has to be there.</summary>
    public Node? Required(string key)
    {
        var value = Optional(key);
        if (value is null && !IsThere(key))
        {
            faults.Add(mapping.Pointer, mapping.Line, $"The key '{key}' is missing.");
        }

        return value;
    }

    public bool IsThere(string key) => mapping.Entries.Any(entry => entry.Key == key);

    /// <summary>A text; empty if it cannot be read.</summary>
    public string Text(string key) => AsText(Required(key)) ?? "";

    public string? OptionalText(string key) => AsText(Optional(key));

    /// <summary>A whole number within limits.</summary>
    public int? OptionalWhole(string key, int least, int most)
    {
        if (Optional(key) is not { } node)
        {
            return null;
        }

        if (node is Scalar { IsQuoted: false } scalar
            && int.TryParse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            && number >= least && number <= most)
        {
            return number;
        }

        faults.Add(node, string.Create(CultureInfo.InvariantCulture, $"{Shown(node)}: give a whole number from {least} to {most}, without quotation marks."));
        return null;
    }

    /// <summary>A decimal number above zero.</summary>
    public decimal? OptionalNumber(string key, int most)
    {
        if (Optional(key) is not { } node)
        {
            return null;
        }

        if (node is Scalar { IsQuoted: false } scalar
            && decimal.TryParse(scalar.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number > 0 && number <= most)
        {
            return number;
        }

        faults.Add(node, string.Create(CultureInfo.InvariantCulture, $"{Shown(node)}: give a number above 0 and at most {most}, for instance 6.5, without quotation marks."));
        return null;
    }

    /// <summary>The quantity, or the fewest and the most of a range: <c>5..9</c>, <c>5 to 9</c>.</summary>
    public (int Fewest, int? Most) QuantityRange()
    {
        if (mapping.Entries.FirstOrDefault(entry => entry.Key == "quantity")?.Value is not Scalar scalar
            || QuantityText().Match(scalar.Text) is not { Success: true } range)
        {
            return (Quantity(), null);
        }

        known.Add("quantity");

        if (int.TryParse(range.Groups["from"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var from)
            && int.TryParse(range.Groups["to"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var to)
            && from >= 1 && from < to && to <= Limits.MaxQuantity)
        {
            return (from, to);
        }

        faults.Add(scalar, string.Create(
            CultureInfo.InvariantCulture, $"{Shown(scalar)}: give whole numbers from the smaller to the larger, from 1 to {Limits.MaxQuantity}, for instance 5..9."));
        return (1, null);
    }

    public int Quantity() => OptionalWhole("quantity", 1, Limits.MaxQuantity) ?? 1;

    public int Layers() => OptionalWhole("layers", 1, Limits.MaxLayers) ?? 1;

    public bool YesNo(string key)
    {
        if (Optional(key) is not { } node)
        {
            return false;
        }

        switch (node is Scalar { IsQuoted: false } scalar ? scalar.Text.ToLowerInvariant() : "")
        {
            case "yes" or "true":
                return true;
            case "no" or "false":
                return false;
            default:
                faults.Add(node, $"{Shown(node)}: give yes or no.");
                return false;
        }
    }

    /// <summary>One of an enum's words, spaces or hyphens between: <c>sound knots</c>.</summary>
    /// <param name="key">The key.</param>
    /// <param name="alsoSaid">Other words that people use for a value.</param>
    public T? Word<T>(string key, params IReadOnlyList<(string Word, T Value)> alsoSaid)
        where T : struct, Enum
    {
        if (Optional(key) is not { } node)
        {
            return null;
        }

        var words = Enum.GetValues<T>().ToDictionary(value => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()));
        var written = (node as Scalar)?.Text.Trim().ToLowerInvariant().Replace(' ', '-') ?? "";
        if (words.TryGetValue(written, out var value))
        {
            return value;
        }

        foreach (var (word, meant) in alsoSaid)
        {
            if (word == written)
            {
                return meant;
            }
        }

        faults.Add(node, $"{Shown(node)}: give {string.Join(", ", words.Keys.Select(word => word.Replace('-', ' ')))}.");
        return null;
    }

    /// <summary>A list of texts; a single one may stand without a list.</summary>
    public IReadOnlyList<Scalar> Scalars(string key)
    {
        switch (Optional(key))
        {
            case null:
                return [];
            case Scalar single:
                return [single];
            case Sequence list when list.Items.All(item => item is Scalar { IsNothing: false }):
                return [.. list.Items.Cast<Scalar>()];
            case { } node:
                faults.Add(node, $"'{key}' should be one value or a list of values.");
                return [];
        }
    }

    /// <summary>The entries of a list of groups of keys.</summary>
    public IReadOnlyList<Fields> Groups(string key, bool required = false)
    {
        switch (required ? Required(key) : Optional(key))
        {
            case null:
                return [];
            case Sequence list when list.Items.Count > Limits.MaxEntries:
                faults.Add(list, string.Create(CultureInfo.InvariantCulture, $"'{key}' has {list.Items.Count} entries: give at most {Limits.MaxEntries}."));
                return [];
            case Sequence list:
                return [.. list.Items.Select(Group).OfType<Fields>()];
            case { } node:
                faults.Add(node, $"'{key}' is {node.Kind}: it should be a list, each entry after a hyphen.");
                return [];
        }
    }

    /// <summary>The keys below a key; null if it is not there or not such a group.</summary>
    public Fields? Group(string key) => Optional(key) is { } node ? Group(node) : null;

    /// <summary>The groups of keys of a list; a single one may stand without a list.</summary>
    public IReadOnlyList<Fields> GroupOrGroups(string key) => Optional(key) switch
    {
        null => [],
        Sequence => Groups(key),
        { } node => Group(node) is { } single ? [single] : [],
    };

    /// <summary>Reads a value by a reader that never throws; false if it is not there or cannot be read.</summary>
    public bool TryRead<T>(Node? node, Reader<T> reader, [MaybeNullWhen(false)] out T value)
    {
        value = default;
        if (AsText(node) is not { } text)
        {
            return false;
        }

        if (reader(text, out value, out var error))
        {
            return true;
        }

        faults.Add(node!, error!);
        return false;
    }

    /// <summary>Reports every key that nobody asked for.</summary>
    public void End()
    {
        foreach (var entry in mapping.Entries.Where(entry => !known.Contains(entry.Key)))
        {
            var meant = Spelling.Nearest(entry.Key, known) is { } near ? $"Did you mean '{near}'?" : $"Known here: {string.Join(", ", known)}.";
            faults.Add(mapping.Below(entry.Key), entry.Line, $"The key '{entry.Key}' is not known. {meant}");
        }
    }

    /// <summary>Reports something about one key.</summary>
    public void Fault(string key, string detail)
    {
        var entry = mapping.Entries.FirstOrDefault(candidate => candidate.Key == key);
        faults.Add(entry is null ? mapping.Pointer : mapping.Below(key), entry?.Value.Line ?? mapping.Line, detail);
    }

    private Fields? Group(Node node)
    {
        if (node is Mapping below)
        {
            return new Fields(below, faults);
        }

        faults.Add(node, $"This is {node.Kind}: it should be keys with values.");
        return null;
    }

    private string? AsText(Node? node)
    {
        if (node is not (null or Scalar))
        {
            faults.Add(node, $"This is {node.Kind}: it should be a single value.");
        }

        return (node as Scalar)?.Text.Trim();
    }

    [GeneratedRegex(@"^\s*(?<from>[0-9]+)\s*(?:\.\.|to)\s*(?<to>[0-9]+)\s*$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex QuantityText();

    private static string Shown(Node node) => node is Scalar scalar
        ? $"'{(scalar.Text.Length <= 40 ? scalar.Text : scalar.Text[..40] + "...")}'"
        : $"This is {node.Kind}";
}

/// <summary>Reads a text without throwing; where it cannot, <paramref name="error"/> says why.</summary>
internal delegate bool Reader<T>(string text, [MaybeNullWhen(false)] out T value, out string? error);
