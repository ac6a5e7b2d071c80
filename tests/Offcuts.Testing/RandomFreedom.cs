using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Gives the parts of a random shop's design the freedoms that a maker may leave, by dice of their own.</summary>
public static class RandomFreedom
{
    /// <summary>The problem with tolerances, ranges of quantity, spacing and spares on some parts, and batches.</summary>
    public static PlanningProblem Add(PlanningProblem problem, int seed)
    {
        var dice = new Dice(seed ^ 0x5eed, problem.Shop.Unit == DisplayUnit.Millimetre);
        var parts = problem.Design.Parts.Select(part => WithExtras(WithTolerance(part, dice), dice)).ToList();
        return problem with
        {
            Stock = [.. problem.Stock.Select(board => dice.Chance(3) ? board : board with { Batch = dice.Pick(["left", "right"]) })],
            Design = problem.Design with
            {
                Parts = parts,
                Groups = [.. problem.Design.Groups.Select(group => group with { Batch = dice.Pick(Enum.GetValues<BatchChoice>()) })],
            },
        };
    }

    private static Part WithExtras(Part part, Dice dice)
    {
        var most = dice.Chance(2) ? part.Quantity + dice.From(1, 4) : (int?)null;
        var pieces = most ?? part.Quantity;
        return part with
        {
            MostQuantity = most,
            Spacing = dice.Chance(3) ? new Spacing((part.Finished.Width * pieces) + dice.Between(1, 12), dice.Chance(2) || part.Quantity == 1) : null,
            Spares = dice.Chance(2) ? dice.From(1, 2) : 0,
            Extras = dice.Chance(2) ? dice.Pick([ExtraSource.Waste, ExtraSource.Leftovers]) : null,
        };
    }

    // Thickness from a little below to above: surfaced boards and sheets have what the part asked for before.
    private static Part WithTolerance(Part part, Dice dice)
    {
        if (dice.Chance(3))
        {
            return part;
        }

        var thinner = dice.Chance(2) ? dice.Size(0.0625m, 2) : Length.Zero;
        return part with
        {
            Finished = part.Finished with { Thickness = part.Finished.Thickness - thinner },
            Most = new Dimensions(
                part.Finished.Thickness + (dice.Chance(3) ? dice.Size(0.5m, 12) : Length.Zero),
                part.Finished.Width + (dice.Chance(2) ? dice.Between(0, 2) : Length.Zero),
                part.Finished.Length + (dice.Chance(2) ? dice.Between(0, 4) : Length.Zero)),
        };
    }
}
