using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>What a piece takes over from the state of its board: what flattening it costs, and how its ends are.</summary>
internal sealed class Conditions(PlanningProblem problem)
{
    private readonly Dictionary<string, Part> parts = problem.Design.Parts.ToDictionary(part => part.Name, StringComparer.Ordinal);
    private readonly Dictionary<string, Length> panels = problem.Design.Panels.ToDictionary(panel => panel.Name, panel => panel.Finished.Thickness, StringComparer.Ordinal);

    /// <summary>The pieces of a board, each with its condition.</summary>
    /// <param name="pieces">The pieces as they were cut.</param>
    /// <param name="cls">The board's class.</param>
    /// <param name="size">The board's size.</param>
    /// <param name="ends">The board's own ends.</param>
    public IReadOnlyList<Piece> Of(IEnumerable<Piece> pieces, BoardClass cls, Dimensions size, Ends ends) => [.. pieces.Select(piece => piece switch
    {
        PartPiece part => part with { Loss = LossOf(part.Recipe.PieceThickness(parts[part.Part]), part.At, cls) },
        StripPiece strip => strip with { Loss = LossOf((panels[strip.Panel], panels[strip.Panel]), strip.At, cls) },
        LeftoverPiece leftover => leftover with
        {
            Ends = new Ends(
                leftover.At.X > Length.Zero ? EndState.Sound : ends.Left,
                leftover.At.Right < size.Length ? EndState.Sound : ends.Right),
        },
        _ => piece,
    })];

    private static Loss? LossOf((Length Least, Length Most) thickness, Rect at, BoardClass cls) =>
        Milling.LossOf(cls, thickness.Least, thickness.Most, at.Length, at.Width);
}
