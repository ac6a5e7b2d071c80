using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Keeping;

/// <summary>The keep rule between the wire and the domain.</summary>
internal static class KeepRuleMapping
{
    public static KeepRule ToRule(KeepRuleEntry entry, SpeciesCatalogue catalogue, string at, Faults faults)
    {
        var rule = new KeepRule([.. faults.Entries($"{at}/entries", entry.Entries, KeepRule.MostEntries)
            .Select(each => ToEntry(each.Entry, catalogue, $"{at}/entries/{each.Index}", faults))]);
        faults.AddRules(at, () => KeepRules.Check(rule));
        return rule;
    }

    public static KeepRuleEntry ToEntry(KeepRule rule) => new([.. rule.Entries.Select(ToRecord)]);

    public static KeepRuleRecord ToRecord(KeepRule rule, Shop shop, SpeciesCatalogue catalogue)
    {
        var text = TextOf(shop, catalogue);
        return new(
            [.. rule.Entries.Select(ToRecord)],
            [.. rule.Entries.Select(entry => $"{text.Of(entry)}."), $"Otherwise keep what is at least {SizeText.Format(shop.Keep, shop.Unit)}."],
            new(shop.Keep.Thickness.Millimetres, shop.Keep.Width.Millimetres, shop.Keep.Length.Millimetres));
    }

    public static KeepText TextOf(Shop shop, SpeciesCatalogue catalogue) => new(shop.Unit, catalogue.NameOf);

    private static KeepEntry ToEntry(KeepEntryRecord record, SpeciesCatalogue catalogue, string at, Faults faults) => new(
        faults.Word<KeepWord>($"{at}/word", record.Word),
        record.Species is { } species ? faults.SpeciesOrClasses($"{at}/species", species, catalogue) : null,
        [.. faults.Entries($"{at}/sizes", record.Sizes, KeepRule.MostSizes).Select(size => ToSize(size.Entry, $"{at}/sizes/{size.Index}", faults))]);

    private static KeepSize ToSize(KeepSizeRecord record, string at, Faults faults)
    {
        return new(Side("lengthMm", record.LengthMm), Side("widthMm", record.WidthMm), Side("thicknessMm", record.ThicknessMm), Section(record.SectionMm2));

        Length? Side(string member, decimal? value) => value is { } given ? faults.Millimetres($"{at}/{member}", given) : null;

        Area? Section(decimal? value)
        {
            if (value is <= 0 or > 1_000_000)
            {
                faults.Add($"{at}/sectionMm2", FormattableString.Invariant($"{value} mm2: give more than 0 and at most 1000000."));
                return null;
            }

            return value is { } given ? Area.FromSquareTicks((long)decimal.Ceiling(given * Length.TicksPerMillimetre * Length.TicksPerMillimetre)) : null;
        }
    }

    private static KeepEntryRecord ToRecord(KeepEntry entry) => new(
        Words.Of(entry.Word), entry.Species,
        entry.Sizes.Count == 0 ? null : [.. entry.Sizes.Select(size => new KeepSizeRecord(
            size.Length?.Millimetres, size.Width?.Millimetres, size.Thickness?.Millimetres, size.Section?.SquareMillimetres))]);
}
