using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>The small changes after which a maker asks for a plan again.</summary>
public static class SmallChanges
{
    /// <summary>The problem without a board that the plan cuts; null if the plan cuts none of the shop's own.</summary>
    public static PlanningProblem? OneBoardGone(PlanningProblem problem, Plan plan, int seed)
    {
        var used = plan.Boards.Select(board => board.BoardId).OfType<string>().Distinct().ToList();
        if (used.Count == 0)
        {
            return null;
        }

        var gone = used[new Random(seed).Next(used.Count)];
        return problem with { Stock = [.. problem.Stock.Where(board => board.Id != gone)] };
    }

    /// <summary>The problem with one piece more of a part.</summary>
    public static PlanningProblem OnePieceMore(PlanningProblem problem, int seed)
    {
        var parts = problem.Design.Parts.ToList();
        var at = new Random(seed).Next(parts.Count);
        var part = parts[at];
        parts[at] = part with { Quantity = part.Quantity + 1, MostQuantity = part.MostQuantity + 1 };
        return problem with { Design = problem.Design with { Parts = parts } };
    }
}
