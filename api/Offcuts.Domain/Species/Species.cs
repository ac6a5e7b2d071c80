namespace Offcuts.Domain;

/// <summary>A kind of wood or sheet material, as the reference data or the shop describes it.</summary>
public sealed record Species
{
    /// <summary>Id in lower case with hyphens, for instance <c>black-walnut</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The name people know, for instance <c>walnut, black</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Other names by which it may be written.</summary>
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>Classes it belongs to, for instance <c>hardwood</c>, <c>softwood</c>, <c>paint-grade</c>, <c>sheet</c>.</summary>
    public IReadOnlyList<string> Classes { get; init; } = [];

    /// <summary>Specific gravity at 12 % moisture content, if known.</summary>
    public decimal? SpecificGravity { get; init; }

    /// <summary>Radial dimensional change coefficient per 1 % moisture content, if known.</summary>
    public decimal? RadialCoefficient { get; init; }

    /// <summary>Tangential dimensional change coefficient per 1 % moisture content, if known.</summary>
    public decimal? TangentialCoefficient { get; init; }

    /// <summary>Radial shrinkage from green to ovendry in per cent of the green size, if known.</summary>
    public decimal? RadialShrinkage { get; init; }

    /// <summary>Tangential shrinkage from green to ovendry in per cent of the green size, if known.</summary>
    public decimal? TangentialShrinkage { get; init; }

    /// <summary>Moisture content in per cent at which shrinkage is taken to start; null for the usual 30.</summary>
    public decimal? FibreSaturation { get; init; }

    /// <summary>Where the numbers are from.</summary>
    public string? Source { get; init; }
}
