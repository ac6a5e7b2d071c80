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

    /// <summary>Whether boards of it are solid wood or sheets; null if its classes do not tell (a shop's own species may have none).</summary>
    public BoardKind? Kind => Classes.Contains("sheet") ? BoardKind.Sheet
        : Classes.Contains("hardwood") || IsSoftwood ? BoardKind.Solid
        : null;

    /// <summary>Whether it is a softwood, which is sold by nominal sizes: <c>2x4</c>.</summary>
    public bool IsSoftwood => Classes.Contains("softwood");

    /// <summary>What is wrong with calling it solid wood or a sheet, and how to mend it; null if nothing is.</summary>
    public string? WhyNot(BoardKind kind) => (kind, Kind) switch
    {
        (BoardKind.Solid, BoardKind.Sheet) => $"{Name} is a sheet material, not solid wood: leave the kind out or give sheet, or name a wood.",
        (BoardKind.Sheet, BoardKind.Solid) => $"{Name} is solid wood, not a sheet: leave the kind out or give solid, or name a sheet material such as birch plywood.",
        _ => null,
    };

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
