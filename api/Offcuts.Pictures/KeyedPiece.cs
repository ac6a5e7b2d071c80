using Offcuts.Domain;

namespace Offcuts.Pictures;

/// <summary>A piece of a board with the letter that picture and tables know it by, and what they say of it.</summary>
/// <param name="Key">Letter, unique on the board; empty for waste, which nobody looks for.</param>
/// <param name="Piece">The piece.</param>
/// <param name="Name">What it becomes.</param>
/// <param name="Cut">The size to cut it to, width x length.</param>
/// <param name="Finished">What is left of it in the end; null if it is cut to its finished size or has none.</param>
/// <param name="Steps">What to do with it on the way; null where it is simply milled.</param>
internal sealed record KeyedPiece(string Key, Piece Piece, string Name, string Cut, string? Finished, string? Steps = null)
{
    /// <summary>All pieces of a board, from the left end to the right, and from the upper edge down.</summary>
    public static IReadOnlyList<KeyedPiece> Of(PlanDocument document, BoardCut board)
    {
        var used = 0;
        return [.. board.Pieces
            .OrderBy(piece => piece.At.X).ThenByDescending(piece => piece.At.Y)
            .Select(piece => Describe(document, piece, piece is WastePiece ? "" : Letters(used++)))];
    }

    /// <summary>Whether a defect stays in it, because its part or panel tolerates it.</summary>
    public bool Holds(Defect defect) => Piece is PartPiece or StripPiece && Piece.At.Overlaps(defect.Area);

    private static KeyedPiece Describe(PlanDocument document, Piece piece, string key)
    {
        var face = SizeText.FormatFace(piece.At.Width, piece.At.Length, document.Unit);
        return piece switch
        {
            PartPiece part => OfPart(document, part, key),
            StripPiece strip => new(
                key, piece, StripName(document, strip), face, $"counts {LengthText.Format(strip.NetWidth, document.Unit)} wide"),
            LeftoverPiece => new(key, piece, "keep", face, null),
            _ => new(key, piece, "waste", face, null),
        };
    }

    private static KeyedPiece OfPart(PlanDocument document, PartPiece part, string key)
    {
        var (width, length) = part.Turned ? (part.At.Length, part.At.Width) : (part.At.Width, part.At.Length);
        var design = document.Problem.Design.Parts.FirstOrDefault(known => known.Name == part.Part);
        var isSpare = part.Use == PieceUse.Spare;
        var single = part.Recipe.Layers == 1 && (isSpare ? design?.Spares == 1 : design is { Quantity: 1, MostQuantity: null });
        var name = $"{part.Part}{(isSpare ? " spare" : "")}{(single ? "" : " " + RecipeText.Copies(part))}";
        return new(
            key, part, part.Turned ? $"{name} (turned)" : name, SizeText.FormatFace(width, length, document.Unit),
            (part.Finished ?? design?.Finished) is { } finished ? $"finished {SizeText.Format(finished, document.Unit)}" : null,
            design is null ? null : RecipeText.Of(part, design, document.Problem.Shop));
    }

    private static string StripName(PlanDocument document, StripPiece strip)
    {
        var single = document.Problem.Design.Panels.FirstOrDefault(panel => panel.Name == strip.Panel)?.Quantity == 1;
        var glueUp = document.Plan.GlueUps.FirstOrDefault(glue => glue.Panel == strip.Panel && glue.Copy == strip.Copy);
        var copy = single ? "" : FormattableString.Invariant($" #{strip.Copy}");
        var subPanel = glueUp?.SubPanels.Count == 1 ? "" : FormattableString.Invariant($" sub-panel {strip.SubPanel}");
        return FormattableString.Invariant($"{strip.Panel}{copy}{subPanel} strip {strip.Order}");
    }

    // A to Z, then AA, AB and so on.
    private static string Letters(int index) =>
        (index >= 26 ? Letters((index / 26) - 1) : "") + (char)('A' + (index % 26));
}
