using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>
/// Random warp, ends, skip-planed stock and trims for a shop that has none. The dice are its own, so that the shops themselves stay as they are.
/// </summary>
public static class RandomCondition
{
    /// <summary>The shop with its boards in a state, and settings that heed it.</summary>
    public static PlanningProblem Applied(PlanningProblem problem, int seed)
    {
        var dice = new Dice(seed ^ 0x5eed, problem.Shop.Unit == DisplayUnit.Millimetre);
        return problem with
        {
            Shop = WithTrims(problem.Shop, dice),
            Stock = [.. problem.Stock.Select(board => Worn(board, dice))],
            Offers = [.. problem.Offers.Select(offer => offer with { Surface = Planed(offer.Kind, offer.Surface, dice) })],
        };
    }

    private static Shop WithTrims(Shop shop, Dice dice) => shop with
    {
        FlatEnough = dice.Chance(3) ? Length.Zero : shop.FlatEnough,
        // Thinner than a kerf, usual, and longer than what is worth keeping.
        EndTrimChecked = dice.Pick([Length.Zero, dice.Size(0.0625m, 1), dice.Size(1.5m, 40), dice.Size(5, 120)]),
        EndTrimUnknown = dice.Pick([Length.Zero, dice.Size(0.5m, 12), dice.Size(1, 25)]),
        FactoryEdgeTrim = dice.Pick([Length.Zero, dice.Size(0.0625m, 1), dice.Size(0.5m, 12)]),
    };

    private static Board Worn(Board board, Dice dice) => board with
    {
        Surface = Planed(board.Kind, board.Surface, dice),
        Ends = new Ends(State(dice), State(dice)),
        Warp = board.Kind == BoardKind.Sheet || dice.Chance(4) ? default : new Warp(
            Sagitta(dice, 12, board.Size.Length), Sagitta(dice, 12, board.Size.Length), Sagitta(dice, 6, board.Size.Width), Sagitta(dice, 8, board.Size.Width)),
    };

    private static Surface Planed(BoardKind kind, Surface surface, Dice dice) =>
        kind == BoardKind.Solid && surface == Surface.Rough && dice.Chance(3) ? Surface.SkipPlaned : surface;

    private static EndState State(Dice dice) => dice.Pick([EndState.Unknown, EndState.Checked, EndState.Sound]);

    /// <summary>Up to so many 32nds of an inch, often none, never more than a quarter of the side.</summary>
    private static Length Sagitta(Dice dice, int mostThirtySeconds, Length side) => dice.Chance(2)
        ? Length.Zero
        : Length.Min(Length.FromTicks(side.Ticks / 4), dice.Size(dice.From(1, mostThirtySeconds) / 32m, dice.From(1, mostThirtySeconds)));
}
