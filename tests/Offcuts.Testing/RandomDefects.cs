using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Puts random defects on the boards of a shop and makes parts tolerate some kinds. Draws from dice of its own, so the shop is the same otherwise.</summary>
public static class RandomDefects
{
    private static readonly string[] Kinds = ["knot", "Knot, loose", "stain", "split", "nail", "nail hole"];

    /// <summary>The shop with up to four defects on each board, and every third part or panel tolerant.</summary>
    public static PlanningProblem Add(PlanningProblem problem, int seed)
    {
        var dice = new Dice(seed, problem.Shop.Unit == DisplayUnit.Millimetre);
        return problem with
        {
            Stock = [.. problem.Stock.Select(board => board with { Defects = [.. Enumerable.Range(0, dice.From(0, 4)).Select(_ => Create(dice, board.Size))] })],
            Design = problem.Design with
            {
                Parts = [.. problem.Design.Parts.Select(part => part with { Tolerates = Tolerated(dice) })],
                Panels = [.. problem.Design.Panels.Select(panel => panel with { Tolerates = Tolerated(dice) })],
            },
        };
    }

    private static string[] Tolerated(Dice dice) => dice.Chance(3) ? dice.Chance(2) ? ["knot"] : ["Knot", "stain", "nail hole"] : [];

    // Some right across, some hair cracks narrower than a kerf, some at an end or edge.
    private static Defect Create(Dice dice, Dimensions board)
    {
        var length = dice.Chance(4) ? Length.FromTicks(dice.From(1, 400)) : Part(board.Length, dice.From(5, 30));
        var width = dice.Chance(4) ? board.Width : Part(board.Width, dice.From(2, 8));
        length = Length.Min(length, board.Length);
        return new Defect(
            dice.Pick(Kinds), new Rect(Part(board.Length - length, 8) * dice.From(0, 8), Part(board.Width - width, 8) * dice.From(0, 8), length, width));
    }

    private static Length Part(Length whole, int of) => Length.FromTicks(whole.Ticks / of);
}
