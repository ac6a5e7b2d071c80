using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Layout;

/// <summary>
/// Cuts more pieces than the fewest, and spares, from what the cut boards leave: first from waste, then from leftovers where the design lets
/// them. Large ones come first, each where it fits best: as single blanks, several in a row where one would be too short for the machines, or
/// resawn. No board is opened for them, so they cost nothing.
/// </summary>
internal sealed class ExtraPieces(PlanningProblem problem, IReadOnlyList<SawnBoard> boards, IReadOnlyList<MissingPart> missing)
{
    private readonly Dictionary<(string Part, PieceUse Use), int> wanted = Wanted(problem, missing);
    private readonly PartOptions options = new(problem.Shop, new Milling(problem.Shop));

    /// <summary>Cuts all that there is room for.</summary>
    public void Cut()
    {
        var parts = problem.Design.Parts.Where(part => wanted.ContainsKey((part.Name, PieceUse.More)) || wanted.ContainsKey((part.Name, PieceUse.Spare)))
            .OrderByDescending(part => part.Finished.Face.SquareTicks).ThenBy(part => part.Name, StringComparer.Ordinal).ToList();
        foreach (var source in new[] { ExtraSource.Waste, ExtraSource.Leftovers })
        {
            foreach (var use in new[] { PieceUse.More, PieceUse.Spare })
            {
                foreach (var part in parts.Where(part => source == ExtraSource.Waste || part.MayUseLeftovers(use)))
                {
                    Cut(part, use, source);
                }
            }
        }
    }

    private void Cut(Part part, PieceUse use, ExtraSource source)
    {
        for (var left = wanted.GetValueOrDefault((part.Name, use)); left > 0;)
        {
            if (Best(part, left, use, source) is not { } place)
            {
                wanted[(part.Name, use)] = left;
                return;
            }

            place.Cut();
            left -= place.Pieces;
        }

        wanted.Remove((part.Name, use));
    }

    /// <summary>The place that loses least for each piece: worth of a leftover, else area of what it is cut from.</summary>
    private ExtraPlace? Best(Part part, int left, PieceUse use, ExtraSource source)
    {
        ExtraPlace? best = null;
        foreach (var board in boards)
        {
            foreach (var blank in board.BlanksOf(part.Name, left, options))
            {
                foreach (var spot in ExtraSpot.On(board, problem.Shop).Where(spot => spot.IsFrom(source)))
                {
                    foreach (var place in ExtraPlace.All(board, spot, blank, use, problem))
                    {
                        best = best is null || place.LosesLessThan(best) ? place : best;
                    }
                }
            }
        }

        return best;
    }

    private static Dictionary<(string Part, PieceUse Use), int> Wanted(PlanningProblem problem, IReadOnlyList<MissingPart> missing)
    {
        var wanted = new Dictionary<(string, PieceUse), int>();
        foreach (var part in problem.Design.Parts.Where(part => missing.All(lacking => lacking.Name != part.Name)))
        {
            if (part.MostQuantity is { } most && most > part.Quantity)
            {
                wanted.Add((part.Name, PieceUse.More), most - part.Quantity);
            }

            if (part.Spares > 0)
            {
                wanted.Add((part.Name, PieceUse.Spare), part.Spares);
            }
        }

        return wanted;
    }
}
