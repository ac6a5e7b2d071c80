using System.Globalization;

namespace Offcuts.Domain;

/// <summary>The species and sheet materials at hand, found by id, name or alias.</summary>
public sealed class SpeciesCatalogue
{
    private readonly Dictionary<string, Species> byName = new(StringComparer.Ordinal);
    private readonly HashSet<string> classes;

    private SpeciesCatalogue(IReadOnlyList<Species> all)
    {
        All = all;
        classes = [.. all.SelectMany(species => species.Classes)];
        // An id wins over a name, a name over another species' alias.
        foreach (var key in all.Select(species => (species.Id, species))
            .Concat(all.Select(species => (species.Name, species)))
            .Concat(all.SelectMany(species => species.Aliases.Select(alias => (alias, species)))))
        {
            byName.TryAdd(Key(key.Item1), key.species);
        }
    }

    /// <summary>The species of the reference data (<c>db/reference/species.csv</c>).</summary>
    public static SpeciesCatalogue Default { get; } = new(ReadReference());

    /// <summary>All species: those of the reference data in its order, then the shop's own.</summary>
    public IReadOnlyList<Species> All { get; }

    /// <summary>The classes that a design may name instead of a species: <c>hardwood</c>, <c>softwood</c>, <c>paint-grade</c>, <c>sheet</c>.</summary>
    public IReadOnlyCollection<string> Classes => classes;

    /// <summary>The species with this id, name or alias, in any case, with spaces or hyphens; null if there is none.</summary>
    public Species? Find(string nameOrAlias) => byName.GetValueOrDefault(Key(nameOrAlias));

    /// <summary>The name of a species as people say it, for instance <c>white oak</c>; the id itself if the species is not known.</summary>
    public string NameOf(string id) => Find(id)?.Name ?? id;

    /// <summary>Whether the word is a class of species, for instance <c>paint-grade</c>.</summary>
    public bool IsClass(string word) => classes.Contains(word);

    /// <summary>
    /// What may have been meant by a name that is not known, for a message: the nearest spelling, or up to three names with that word
    /// in them (<c>oak</c>: red oak or white oak); null if nothing is near.
    /// </summary>
    public string? Suggest(string word)
    {
        var key = Key(word);
        var kinds = All.Where(species => Key(species.Name).Split('-').Contains(key)).Select(species => species.Name).Take(3).ToList();
        return kinds.Count > 0 ? string.Join(" or ", kinds) : Spelling.Nearest(key, byName.Keys.Concat(classes));
    }

    /// <summary>This catalogue with the shop's own species added; one with a known id replaces it.</summary>
    public SpeciesCatalogue With(IEnumerable<Species> own)
    {
        var added = own.ToDictionary(species => species.Id, StringComparer.Ordinal);
        return new([
            .. All.Select(species => added.GetValueOrDefault(species.Id, species)),
            .. added.Values.Where(species => All.All(known => known.Id != species.Id)),
        ]);
    }

    /// <summary>Lower case, hyphens between the words.</summary>
    private static string Key(string name) => string.Join(
        '-', name.ToLowerInvariant().Split([' ', '-', '_', '\t'], StringSplitOptions.RemoveEmptyEntries));

    private static List<Species> ReadReference() => [.. ReferenceTable.Read("species.csv").Select(row => new Species
    {
        Id = row["id"],
        Name = row["name"],
        Aliases = Several(row["aliases"]),
        Classes = Several(row["classes"]),
        SpecificGravity = Number(row["specific_gravity"]),
        RadialCoefficient = Number(row["radial_coefficient"]),
        TangentialCoefficient = Number(row["tangential_coefficient"]),
        RadialShrinkage = Number(row["radial_shrinkage"]),
        TangentialShrinkage = Number(row["tangential_shrinkage"]),
        FibreSaturation = Number(row["fibre_saturation"]),
        Source = row["source"],
    })];

    private static string[] Several(string text) => text.Split('|', StringSplitOptions.RemoveEmptyEntries);

    private static decimal? Number(string text) =>
        text.Length == 0 ? null : decimal.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
}
