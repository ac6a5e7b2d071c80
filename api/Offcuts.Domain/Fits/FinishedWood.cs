namespace Offcuts.Domain;

/// <summary>Board feet of the finished parts and panels of a design. However a plan makes them, they are as large.</summary>
/// <param name="design">The design.</param>
public sealed class FinishedWood(Design design)
{
    private readonly Dictionary<string, decimal> feet =
        design.Parts.Select(part => (part.Name, part.Finished)).Concat(design.Panels.Select(panel => (panel.Name, panel.Finished)))
            .ToDictionary(member => member.Name, member => BoardMeasure.BoardFeet(member.Finished), StringComparer.Ordinal);

    /// <summary>One of a part or panel.</summary>
    public decimal Each(string name) => feet[name];

    /// <summary>All that the design asks for.</summary>
    public decimal Total => design.Parts.Sum(part => feet[part.Name] * part.Quantity) + design.Panels.Sum(panel => feet[panel.Name] * panel.Quantity);

    /// <summary>What is missing.</summary>
    public decimal Of(IEnumerable<MissingPart> missing) => missing.Sum(part => feet[part.Name] * part.Quantity);

    /// <summary>What each board of a plan gives of what the design asks for; a panel is shared out by the widths of its strips.</summary>
    public IReadOnlyList<(BoardCut Board, decimal BoardFeet)> ByBoard(Plan plan)
    {
        var widths = plan.Boards.SelectMany(board => board.Pieces).OfType<StripPiece>()
            .GroupBy(strip => (strip.Panel, strip.Copy)).ToDictionary(strips => strips.Key, strips => strips.Sum(strip => strip.NetWidth.Ticks));
        return [.. plan.Boards.Select(board => (board, board.Pieces.Sum(piece => piece switch
        {
            PartPiece { Use: PieceUse.Asked } part => feet[part.Part] * part.Copies.Count / part.Recipe.Layers,
            StripPiece strip => feet[strip.Panel] * strip.NetWidth.Ticks / widths[(strip.Panel, strip.Copy)],
            _ => 0m,
        })))];
    }
}
