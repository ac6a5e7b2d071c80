using Offcuts.Domain;

namespace Offcuts.Planning.Layout;

/// <summary>A piece of waste or a leftover from which extra pieces may be cut.</summary>
/// <param name="Node">The piece.</param>
/// <param name="At">Where it lies.</param>
/// <param name="Stage">
/// In which stage of its own it was separated: rectangles that hold extra pieces only count their stages anew, from the row of cuts in which
/// the first of them lies.
/// </param>
/// <param name="Last">Direction of that stage; null before any cut.</param>
internal sealed record ExtraSpot(CutNode Node, Rect At, int Stage, FirstCut? Last)
{
    public bool IsFrom(ExtraSource source) => source == ExtraSource.Waste ? Node.IsWaste : Node.Piece is LeftoverPiece;

    /// <summary>All on a board that its stages let be cut further.</summary>
    public static List<ExtraSpot> On(SawnBoard board, Shop shop)
    {
        var most = shop.Recut ? 3 : 2;
        var spots = new List<ExtraSpot>();
        Walk(board.Root, Length.Zero, Length.Zero, 0, null);
        return spots;

        void Walk(CutNode node, Length x, Length y, int stage, FirstCut? last)
        {
            if (node.Piece is WastePiece or LeftoverPiece && stage <= most)
            {
                spots.Add(new ExtraSpot(node, new Rect(x, y, Length.FromTicks(node.Along), Length.FromTicks(node.Across)), stage, last));
            }

            var own = HoldsAsked(node) ? 1 : node.Direction == last ? stage : stage + 1;
            foreach (var item in node.Items)
            {
                Walk(item, x, y, own, node.Direction);
                x += Length.FromTicks(node.Direction == FirstCut.Crosscut ? item.Along : 0);
                y += Length.FromTicks(node.Direction == FirstCut.Rip ? item.Across : 0);
            }
        }
    }

    private static bool HoldsAsked(CutNode node) =>
        node.All().Any(each => each.Piece is StripPiece or PartPiece { Use: PieceUse.Asked });
}
