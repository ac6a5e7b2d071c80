using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Host.SpeciesLists;

/// <summary>Species between the wire and the domain.</summary>
internal static class SpeciesMapping
{
    public static Species ToSpecies(SpeciesEntry entry) => new()
    {
        Id = entry.Id,
        Name = entry.Name,
        Aliases = entry.Aliases ?? [],
        Classes = entry.Classes ?? [],
        SpecificGravity = entry.SpecificGravity,
        RadialCoefficient = entry.RadialCoefficient,
        TangentialCoefficient = entry.TangentialCoefficient,
        RadialShrinkage = entry.RadialShrinkage,
        TangentialShrinkage = entry.TangentialShrinkage,
        Source = entry.Source,
    };

    public static SpeciesRecord ToRecord(Species species, bool own) => new(
        species.Id, species.Name, species.Aliases, species.Classes, species.SpecificGravity, species.RadialCoefficient,
        species.TangentialCoefficient, species.RadialShrinkage, species.TangentialShrinkage, species.Source, own);
}
