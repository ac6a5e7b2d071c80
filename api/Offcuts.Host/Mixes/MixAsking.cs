using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Host.Stretches;
using Offcuts.Planning;
using Offcuts.Storage;

namespace Offcuts.Host.Mixes;

/// <summary>Which mix of designs, between the wire and the planner.</summary>
/// <param name="Question">The question to the planner.</param>
/// <param name="Designs">The stored designs, in the order of the builds; null where they came with the request.</param>
internal sealed record MixAsking(MixQuestion Question, IReadOnlyList<StoredDesign>? Designs)
{
    /// <summary>What was asked for.</summary>
    /// <exception cref="OffcutsException">Something that cannot be.</exception>
    public static MixAsking Read(MixRequest asked, ProblemBuilder builder, DesignStore store)
    {
        var faults = new Faults();
        List<(int Index, MixEntry Entry)> entries = [.. faults.Entries("#/designs", asked.Designs, JointDesign.MaxBuilds)];
        if (asked.Designs is not null && asked.Tags is not null)
        {
            faults.Add("#/tags", "Give tags or designs, not both.");
        }

        if (asked.Inline?.Design is not null && asked.Tags is not null)
        {
            faults.Add("#/tags", "Tags choose stored designs: leave them out, or the design in inline.");
        }

        faults.ThrowIfAny();
        List<StoredDesign>? stored = asked.Inline?.Design is not null ? null
            : asked.Tags is { } tags ? Tagged(tags, store, faults)
            : [.. entries.Select(each => store.Find(each.Entry.Design) ?? throw DesignEndpoints.NoDesign(each.Entry.Design))];
        foreach (var twice in (stored?.Select(each => each.Reference) ?? entries.Select(each => each.Entry.Design)).Index().GroupBy(each => each.Item).Where(alike => alike.Count() > 1))
        {
            faults.Add($"#/designs/{twice.Last().Index}", $"'{twice.Key}' is given twice. Give it once.");
        }

        faults.ThrowIfAny();
        var (problem, _, catalogue) = builder.Read(
            null, asked.Inline, asked.BudgetMs, asked.Seed, from: null, faults, stored?.ConvertAll(design => design.Version), StretchMapping.MostMilliseconds);
        var design = problem.Design is { Bends: false, HasAlternatives: false } ? problem.Design : DesignSettings.Usual(problem.Design, catalogue, "#/inline/design", faults);
        if (problem.Builds.Count < 2)
        {
            faults.Add("#/inline/builds", "Name the builds of the design, at least two.");
        }

        var ranges = Ranges(problem.Builds, stored is null, entries, faults);
        faults.ThrowIfAny();
        return new MixAsking(new MixQuestion(problem with { Design = DesignResolver.Resolve(design, catalogue.All) }, ranges), stored);
    }

    private static List<StoredDesign> Tagged(IReadOnlyList<string> tags, DesignStore store, Faults faults)
    {
        List<string> asked = [.. faults.Entries("#/tags", tags, Limits.MaxTags, least: 1).Select(each => each.Entry)];
        List<(StoredDesign Stored, IReadOnlyList<string> Tags)> all = [.. store.List(0, Limits.MaxQuantity).Designs.Select(design =>
            (design, JsonSerializer.Deserialize(design.Content, WireJson.Default.DesignEntry)!.Tags ?? []))];
        List<StoredDesign> found = [.. all.Where(design => asked.TrueForAll(tag => design.Tags.Contains(tag, StringComparer.OrdinalIgnoreCase))).Select(design => design.Stored)];
        foreach (var tag in asked.Where(tag => !Has(tag)))
        {
            faults.Add("#/tags", $"No design has the tag '{tag}'. {Spelling.Instead(tag, [.. all.SelectMany(design => design.Tags).Distinct(StringComparer.OrdinalIgnoreCase)], "No design has any.")}");
        }

        if (!faults.Any && found.Count is < 2 or > JointDesign.MaxBuilds)
        {
            faults.Add("#/tags", $"A mix is of 2 to {JointDesign.MaxBuilds} designs, and {found.Count} {(found.Count == 1 ? "has" : "have")} {(asked.Count == 1 ? "this tag" : "these tags")}: name the designs.");
        }

        return found;

        bool Has(string tag) => all.Exists(design => design.Tags.Contains(tag, StringComparer.OrdinalIgnoreCase));
    }

    /// <summary>How many copies there may be of each build: entries are in the order of stored designs, or name builds.</summary>
    private static MixRange[] Ranges(IReadOnlyList<string> builds, bool isNamed, List<(int Index, MixEntry Entry)> entries, Faults faults)
    {
        MixRange[] ranges = [.. builds.Select(_ => new MixRange(0, Limits.MaxQuantity))];
        foreach (var (index, entry) in entries)
        {
            var least = faults.Count($"#/designs/{index}/least", entry.Least, 0, Limits.MaxQuantity);
            var most = faults.Count($"#/designs/{index}/most", entry.Most ?? Limits.MaxQuantity, least, Limits.MaxQuantity);
            var at = isNamed ? builds.ToList().IndexOf(entry.Design) : index;
            if (at < 0)
            {
                faults.Add($"#/designs/{index}/design", $"There is no build '{entry.Design}'. Give one of {string.Join(", ", builds)}.");
            }
            else
            {
                ranges[at] = new MixRange(least, most);
            }
        }

        return ranges;
    }
}
