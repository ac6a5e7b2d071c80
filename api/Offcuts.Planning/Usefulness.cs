using Offcuts.Domain;
using Offcuts.Planning.Explaining;

namespace Offcuts.Planning;

/// <summary>What boards are good for, by the cutting rules, without planning anything.</summary>
public static class Usefulness
{
    /// <summary>Whether at least one part of a design, or one strip of a panel, can be cut from a board.</summary>
    /// <param name="board">The board; what of its size was estimated counts less.</param>
    /// <param name="design">The design, with concrete species.</param>
    /// <param name="shop">How the shop works.</param>
    public static bool Serves(Board board, Design design, Shop shop)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(shop);
        if (Estimates.Counted(board, shop.EstimateMargin) is not { } counted)
        {
            return false;
        }

        var reasons = new MissingReasons(new PlanningProblem { Stock = [counted], Design = design, Shop = shop });
        return design.Parts.Any(part => part.Species.Contains(board.Species) && reasons.OfPart(part, 1, part.Species) is null)
            || design.Panels.Any(panel => panel.Species.Contains(board.Species) && reasons.OfPanel(panel, 1, panel.Species) is null);
    }
}
