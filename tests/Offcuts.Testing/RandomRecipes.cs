using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Random shops that resaw, face-glue and refuse or allow short blanks, by dice of their own: the shops themselves stay as they are.</summary>
public static class RandomRecipes
{
    /// <summary>The problem with thick boards, thin and thick parts, and what makes recipes of use.</summary>
    public static PlanningProblem Apply(PlanningProblem problem, int seed, bool metric)
    {
        var dice = new Dice(seed ^ 0x5EED, metric);
        var shop = problem.Shop with
        {
            ShortBlanks = dice.Pick([ShortBlanks.Allow, ShortBlanks.Warn, ShortBlanks.Refuse, ShortBlanks.Refuse]),
            ResawHeight = dice.Chance(4) ? null : dice.Size(dice.From(3, 12), 150),
            ResawCleanup = dice.Chance(3) ? Length.Zero : problem.Shop.ResawCleanup,
            ShortestAtPlaner = dice.Chance(3) ? dice.Size(18, 450) : problem.Shop.ShortestAtPlaner,
        };
        return problem with
        {
            Shop = shop,
            Stock = [.. problem.Stock.Select(board => board.Kind == BoardKind.Solid && board.Surface == Surface.Rough && dice.Chance(2)
                ? board with { Size = board.Size with { Thickness = dice.Pick([dice.Size(2, 50), dice.Size(3, 75)]) } }
                : board)],
            Design = problem.Design with { Parts = [.. problem.Design.Parts.Select(part => Apply(part, dice))] },
        };
    }

    private static Part Apply(Part part, Dice dice)
    {
        if (part.Species.Contains("birch-plywood"))
        {
            return part;
        }

        var thickness = dice.From(0, 3) switch
        {
            0 => dice.Size(0.25m, 6),
            1 => dice.Size(1.5m, 38),
            2 => dice.Size(2.5m, 63),
            _ => part.Finished.Thickness,
        };
        return part with
        {
            Finished = part.Finished with { Thickness = thickness, Length = dice.Chance(3) ? dice.Between(2, 8) : part.Finished.Length },
            Layers = part.HasTolerance || dice.Chance(3) ? 1 : dice.From(2, 3),
        };
    }
}
