using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// Rules 13 to 15: how many pieces a blank holds. In a row of k pieces of length l with saw cuts of width s between them it is
/// k l + (k - 1) s and the length allowance long, or as long as is safe at the machines if that is more; m slices of thickness t with clean-up c
/// and cuts of width r between them take m (t + c) + (m - 1) r of the board's thickness.
/// </summary>
internal static class Recipes
{
    /// <summary>Whether the recipe itself makes sense: the rest can be worked out only then.</summary>
    public static bool IsSound(PartPiece piece) =>
        piece.Recipe is { InRow: >= 1 and <= Limits.MaxQuantity, Slices: >= 1 and <= Limits.MaxQuantity, Layers: >= 1 and <= Limits.MaxLayers };

    /// <summary>The length that the blank must have along the grain of the part.</summary>
    public static Length LengthOf(AuditScope scope, SourcedCut cut, Part part, Length finished, PartPiece piece)
    {
        var shop = scope.Problem.Shop;
        var exact = (finished * piece.Recipe.InRow) + (shop.Kerf * (piece.Recipe.InRow - 1))
            + Milling.Allowances(shop, cut.Board.Kind, cut.Board.Surface).Length;
        return piece.Recipe.Carried ? Length.Larger(exact, Safe(scope, cut, part, piece)) : exact;
    }

    public static void Check(AuditScope scope, SourcedCut cut, Part part, PartPiece piece)
    {
        var (shop, recipe, number) = (scope.Problem.Shop, piece.Recipe, cut.Board.Number);
        scope.Findings.Require(
            piece.Copies.Count >= 1 && piece.Copies.Count <= (long)recipe.InRow * recipe.Slices,
            AuditRule.Recipe, $"Board {number}: a blank of {part.Name} for {recipe.InRow} in a row and {recipe.Slices} slices cannot give {piece.Copies.Count}.");
        scope.Findings.Require(
            !piece.Turned || (recipe.InRow == 1 && recipe.Slices == 1 && !recipe.Carried),
            AuditRule.Recipe, $"Board {number}: a turned blank of {part.Name} is neither resawn nor cut apart.");
        scope.Findings.Require(
            recipe.Layers <= part.Layers, AuditRule.Recipe, $"Board {number}: {part.Name} may have {part.Layers} layers, not {recipe.Layers}.");
        CheckShort(scope, cut, part, piece);
        CheckSlices(scope, cut, part, piece);
    }

    private static void CheckShort(AuditScope scope, SourcedCut cut, Part part, PartPiece piece)
    {
        var safe = Safe(scope, cut, part, piece);
        var single = part.Finished.Length + Milling.Allowances(scope.Problem.Shop, cut.Board.Kind, cut.Board.Surface).Length;
        scope.Findings.Require(
            (piece.Recipe.InRow == 1 && !piece.Recipe.Carried) || single < safe,
            AuditRule.Recipe, $"Board {cut.Board.Number}: {part.Name} is long enough for the machines by itself and is not milled with others in one piece.");
        scope.Findings.Require(
            scope.Problem.Shop.ShortBlanks != ShortBlanks.Refuse || piece.At.Length >= safe,
            AuditRule.ShortBlank, $"Board {cut.Board.Number}: the blank of {part.Name} is {piece.At.Length} long; {safe} is the shortest that is safe.");
    }

    private static void CheckSlices(AuditScope scope, SourcedCut cut, Part part, PartPiece piece)
    {
        if (piece.Recipe.Slices == 1)
        {
            return;
        }

        var (shop, slices) = (scope.Problem.Shop, piece.Recipe.Slices);
        scope.Findings.Require(
            cut.Board.Kind == BoardKind.Solid, AuditRule.Recipe, $"Board {cut.Board.Number}: only solid wood is resawn, for {part.Name} too.");
        scope.Findings.Require(
            shop.ResawHeight is { } height && piece.At.Width <= height,
            AuditRule.MachineWidth, $"Board {cut.Board.Number}: a blank of {part.Name} {piece.At.Width} wide is more than the resaw takes ({shop.ResawHeight}).");
        var needed = ((Asked(part, piece).Thickness + shop.ResawCleanup) * slices) + (shop.ResawKerf * (slices - 1));
        var flat = cut.Board.Size.Thickness - Warping.Of(cut).Face(piece.At.Length, piece.At.Width);
        scope.Findings.Require(
            needed <= flat, AuditRule.Thickness, $"Board {cut.Board.Number}: {slices} slices for {part.Name} take {needed}, the board gives {flat} of thickness there.");
    }

    /// <summary>What the part asks of the wood of each piece of the blank.</summary>
    public static Asked Asked(Part part, PartPiece piece) => piece.Recipe.Layers == 1 ? new Asked(part) : new Asked(part).InLayers(piece.Recipe.Layers);

    private static Length Safe(AuditScope scope, SourcedCut cut, Part part, PartPiece piece)
    {
        var asked = Asked(part, piece);
        return Milling.ShortestBlank(
            scope.Problem.Shop, cut.Board.Kind, cut.Board.Surface, cut.Board.Size.Thickness, asked.Thickness, asked.MostThickness, Warping.Of(cut).IsFlat);
    }
}
