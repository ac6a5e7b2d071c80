using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>What the shop keeps, as its maker writes it down, in YAML or JSON.</summary>
public static class KeepRuleDocument
{
    private const string Any = "any";
    private static readonly string[] Words = ["never", "always", "keep"];
    private static readonly string[] Sides = ["length", "width", "thickness", "section"];

    /// <summary>Reads a keep rule. Species are named by their ids afterwards, classes stay classes.</summary>
    /// <param name="text">The document, at most 1 MB.</param>
    /// <param name="bareUnit">The unit of bare numbers where the document does not say (key <c>unit</c>).</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.Invalid"/>, with every fault, its pointer and its line.</exception>
    public static KeepRule Parse(string text, DisplayUnit bareUnit, SpeciesCatalogue catalogue)
    {
        var faults = new DocumentFaults("keep rule");
        var root = new Fields(NodeReader.Read(text, faults), faults);
        var context = DocumentContext.Of(root, faults, bareUnit, catalogue, "USD");
        var groups = root.Groups("rule", required: true);
        var rule = new KeepRule([.. groups.Select(fields => ToEntry(fields, context))]);
        root.End();
        faults.ThrowIfAny();
        if (groups.Count > KeepRule.MostEntries)
        {
            root.Fault("rule", FormattableString.Invariant($"It has {groups.Count} entries: give at most {KeepRule.MostEntries}."));
        }

        foreach (var (entry, fields) in rule.Entries.Zip(groups).Where(each => each.First.Sizes.Count > KeepRule.MostSizes))
        {
            fields.Fault(SizesOf(entry.Word), FormattableString.Invariant($"It has {entry.Sizes.Count} sizes: give at most {KeepRule.MostSizes}."));
        }

        faults.ThrowIfAny();
        return rule;
    }

    private static KeepEntry ToEntry(Fields fields, DocumentContext context)
    {
        var written = Words.Where(fields.IsThere).ToList();
        if (written is not [var word])
        {
            context.Faults.Add(fields.Mapping, "Each entry of the rule has one of never, always and keep, with the species or classes that it is about; or any.");
            return new(KeepWord.Never, null, []);
        }

        var what = word switch
        {
            "never" => KeepWord.Never,
            "always" => KeepWord.Always,
            _ => KeepWord.Keep,
        };
        var sizes = fields.GroupOrGroups(SizesOf(what)).Select(size => ToSize(size, context)).ToList();
        if (what == KeepWord.Keep && sizes.Count == 0 && !fields.IsThere(SizesOf(what)))
        {
            fields.Fault(word, "Say from which sizes on: 'at least' with length, width, thickness or section. To keep all of it, write always.");
        }

        var entry = new KeepEntry(what, IsAny(fields, word) ? null : About(fields, word, context), sizes);
        fields.End();
        return entry;
    }

    private static string SizesOf(KeepWord word) => word == KeepWord.Never ? "under" : "at least";

    private static bool IsAny(Fields fields, string word) => fields.Scalars(word) is [var only] && only.Text.Trim().Equals(Any, StringComparison.OrdinalIgnoreCase);

    private static IReadOnlyList<string> About(Fields fields, string word, DocumentContext context)
    {
        if (fields.Scalars(word).Count > Limits.MaxSpecies)
        {
            fields.Fault(word, FormattableString.Invariant($"Name at most {Limits.MaxSpecies} species or classes, or any."));
        }

        return context.Accepted(fields, word);
    }

    private static KeepSize ToSize(Fields fields, DocumentContext context)
    {
        var size = new KeepSize(Side("length"), Side("width"), Side("thickness"), Section());
        if (size == default && !Sides.Any(fields.IsThere))
        {
            context.Faults.Add(fields.Mapping, "It names no size: give at least one of length, width, thickness and section.");
        }

        fields.End();
        return size;

        Length? Side(string key) => fields.Optional(key) is { } node && context.Length(fields, node) is { Ticks: > 0 } length ? length : null;

        Area? Section() => fields.TryRead(
            fields.Optional("section"), (string text, out Area value, out string? error) => SectionText.TryParse(text, context.Unit, out value, out error), out var section)
            ? section : null;
    }
}
