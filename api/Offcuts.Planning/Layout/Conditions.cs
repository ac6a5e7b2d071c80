using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>What a piece takes over from the state of its board: what flattening it costs, and how its ends are.</summary>
internal sealed class Conditions(PlanningProblem problem)
{
    private readonly Dictionary<string, (Length Least, Length Most)> finished = problem.Design.Parts.Select(part => (part.Name, Least: part.Finished.Thickness, Most: part.MostThickness))
        .Concat(problem.Design.Panels.Select(panel => (panel.Name, Least: panel.Finished.Thickness, Most: panel.Finished.Thickness)))
        .ToDictionary(member => member.Name, member => (member.Least, member.Most), StringComparer.Ordinal);

    /// <summary>The pieces of a board, each with its condition.</summary>
    /// <param name="pieces">The pieces as they were cut.</param>
    /// <param name="cls">The board's class.</param>
    /// <param name="size">The board's size.</param>
    /// <param name="ends">The board's own ends.</param>
    public IReadOnlyList<Piece> Of(IEnumerable<Piece> pieces, BoardClass cls, Dimensions size, Ends ends) => [.. pieces.Select(piece => piece switch
    {
        PartPiece part => part with { Loss = LossOf(part.Part, part.At, cls) },
        StripPiece strip => strip with { Loss = LossOf(strip.Panel, strip.At, cls) },
        LeftoverPiece leftover => leftover with
        {
            Ends = new Ends(
                leftover.At.X > Length.Zero ? EndState.Sound : ends.Left,
                leftover.At.Right < size.Length ? EndState.Sound : ends.Right),
        },
        _ => piece,
    })];

    private Loss? LossOf(string name, Rect at, BoardClass cls) => Milling.LossOf(cls, finished[name].Least, finished[name].Most, at.Length, at.Width);
}
