namespace Offcuts.Contracts;

/// <summary>A species or sheet material that the shop adds to the reference list.</summary>
/// <param name="Id">Lower-case words with hyphens, for instance <c>osage-orange</c>.</param>
/// <param name="Name">The name people know.</param>
/// <param name="Aliases">Other names by which it may be written.</param>
/// <param name="Classes">Classes it belongs to, for instance <c>hardwood</c>.</param>
/// <param name="SpecificGravity">Specific gravity at 12 % moisture content, if known.</param>
/// <param name="RadialCoefficient">Radial dimensional change coefficient per 1 % moisture content, if known.</param>
/// <param name="TangentialCoefficient">Tangential dimensional change coefficient per 1 % moisture content, if known.</param>
/// <param name="RadialShrinkage">Radial shrinkage from green to oven dry in per cent, if known.</param>
/// <param name="TangentialShrinkage">Tangential shrinkage from green to oven dry in per cent, if known.</param>
/// <param name="Source">Where the numbers are from.</param>
public sealed record SpeciesEntry(
    string Id,
    string Name,
    IReadOnlyList<string>? Aliases = null,
    IReadOnlyList<string>? Classes = null,
    decimal? SpecificGravity = null,
    decimal? RadialCoefficient = null,
    decimal? TangentialCoefficient = null,
    decimal? RadialShrinkage = null,
    decimal? TangentialShrinkage = null,
    string? Source = null);

/// <summary>A species or sheet material.</summary>
/// <param name="Id">Id.</param>
/// <param name="Name">The name people know.</param>
/// <param name="Aliases">Other names by which it may be written.</param>
/// <param name="Classes">Classes it belongs to.</param>
/// <param name="SpecificGravity">Specific gravity at 12 % moisture content, if known.</param>
/// <param name="RadialCoefficient">Radial dimensional change coefficient per 1 % moisture content, if known.</param>
/// <param name="TangentialCoefficient">Tangential dimensional change coefficient per 1 % moisture content, if known.</param>
/// <param name="RadialShrinkage">Radial shrinkage from green to oven dry in per cent, if known.</param>
/// <param name="TangentialShrinkage">Tangential shrinkage from green to oven dry in per cent, if known.</param>
/// <param name="Source">Where the numbers are from.</param>
/// <param name="Own">Whether the shop added it; false for the reference list.</param>
public sealed record SpeciesRecord(
    string Id,
    string Name,
    IReadOnlyList<string> Aliases,
    IReadOnlyList<string> Classes,
    decimal? SpecificGravity,
    decimal? RadialCoefficient,
    decimal? TangentialCoefficient,
    decimal? RadialShrinkage,
    decimal? TangentialShrinkage,
    string? Source,
    bool Own);

/// <summary>All species: the reference list, then the shop's own.</summary>
/// <param name="Items">The species.</param>
public sealed record SpeciesList(IReadOnlyList<SpeciesRecord> Items);
