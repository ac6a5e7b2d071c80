using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Host.Plans;

/// <summary>Blanks of parts and what is glued up from their layers, between the domain and the wire.</summary>
internal static class LaminationMapping
{
    /// <summary>What a plain blank for one copy does not need stays null, as in plans of older versions.</summary>
    public static PieceRecord ToRecord(PieceRecord record, PartPiece piece, PlanningProblem problem)
    {
        var recipe = piece.Recipe;
        return record with
        {
            Name = piece.Part,
            Copy = piece.Copies[0].Copy,
            Turned = piece.Turned,
            Copies = recipe == Recipe.Plain ? null : [.. piece.Copies.Select(copy => new CopyRecord(copy.Copy, copy.Layer))],
            InRow = recipe.InRow > 1 ? recipe.InRow : null,
            Slices = recipe.Slices > 1 ? recipe.Slices : null,
            Layers = recipe.Layers > 1 ? recipe.Layers : null,
            Carried = recipe.Carried ? true : null,
            Steps = Steps(piece, problem),
        };
    }

    /// <summary>What to do with a blank, where it is not simply milled to one piece.</summary>
    public static string? Steps(PartPiece piece, PlanningProblem problem) =>
        RecipeText.Of(piece, problem.Design.Parts.First(part => part.Name == piece.Part), problem.Shop);

    public static PartPiece ToPiece(PieceRecord record, Rect at) => new(
        at, record.Name!,
        record.Copies is { } copies ? [.. copies.Select(copy => new PartCopy(copy.Copy, copy.Layer))] : [new PartCopy(record.Copy!.Value)],
        record.Turned!.Value, new Recipe(record.InRow ?? 1, record.Slices ?? 1, record.Layers ?? 1, record.Carried ?? false));

    public static LaminationRecord ToRecord(Lamination lamination, PlanningProblem problem, SpeciesCatalogue catalogue)
    {
        var part = problem.Design.Parts.First(part => part.Name == lamination.Part);
        return new LaminationRecord(
            lamination.Part, lamination.Copy, lamination.Species,
            new Recipe(1, 1, lamination.Layers.Count).PieceThickness(part.Finished.Thickness).Millimetres,
            [.. lamination.Layers.Select(layer => new LayerRecord(layer.Layer, layer.BoardNumber))], catalogue.NameOf(lamination.Species));
    }

    public static Lamination ToLamination(LaminationRecord record) => new(
        record.Part, record.Copy, record.Species, [.. record.Layers.Select(layer => new LayerPlace(layer.Layer, layer.BoardNumber))]);
}
