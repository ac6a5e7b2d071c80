using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Restart;

/// <summary>A plan asked for again after one board is gone, or with one piece more.</summary>
public sealed class SmallChangeTests
{
    [Theory]
    [InlineData("plain", ShopScale.Smallest, 40)]
    [InlineData("plain", ShopScale.Tiny, 20)]
    [InlineData("recipes", ShopScale.Tiny, 25)]
    [InlineData("defects", ShopScale.Tiny, 15)]
    public void With_one_board_gone_the_first_plan_is_the_one_before_and_what_it_lacks(string kind, ShopScale scale, int shops) => Check(
        kind, scale, shops, earlier => SmallChanges.OneBoardGone(earlier.Problem, earlier.Plan, 1), ChangeReasonKind.BoardGone);

    [Theory]
    [InlineData("plain", ShopScale.Smallest, 40)]
    [InlineData("plain", ShopScale.Tiny, 20)]
    [InlineData("recipes", ShopScale.Tiny, 25)]
    public void With_one_piece_more_the_first_plan_is_the_one_before_and_what_it_lacks(string kind, ShopScale scale, int shops) => Check(
        kind, scale, shops, earlier => SmallChanges.OnePieceMore(earlier.Problem, 1), null);

    /// <summary>
    /// Where both plans make everything, the first one keeps every board that is still there, and in the end it costs no more than from nothing.
    /// </summary>
    private static void Check(string kind, ShopScale scale, int shops, Func<EarlierPlan, PlanningProblem?> change, ChangeReasonKind? reason)
    {
        var (kept, compared) = (0, 0);
        foreach (var seed in Enumerable.Range(300, shops))
        {
            var earlier = Replanned.Before(Replanned.Shop(kind, scale, seed));
            if (change(earlier) is not { } changed || changed.Shop.Kerf == Length.Zero || earlier.Plan.Missing.Count > 0)
            {
                continue;
            }

            var again = Replanned.From(earlier, changed);
            var boards = again.FirstChanges.Boards;
            var gone = boards.Where(board => board.Reasons.Any(each => each.Kind == reason)).ToList();
            if (again.First.Missing.Count == 0)
            {
                var rest = boards.Where(board => board.EarlierNumber is not null).Except(gone).ToList();
                Assert.All(rest, board => Assert.True(IsKept(board, again), again.Say(seed, board)));
                kept += rest.Count(board => board.Kind == BoardChangeKind.Kept);
            }

            Assert.True(reason is null || gone.Count > 0, FormattableString.Invariant($"seed {seed}: nothing said of the board that is gone"));
            var cold = Planner.Solve(changed, Replanned.Limits);
            Assert.Equal(cold.MissingCount, again.Plan.MissingCount);
            if (again.IsFinished && cold.Run.Finished)
            {
                compared++;
                Assert.True(again.Plan.WoodCost <= cold.WoodCost, FormattableString.Invariant($"seed {seed}: {again.Plan.WoodCost.MinorUnits} from the plan before, {cold.WoodCost.MinorUnits} from nothing"));
            }
        }

        Assert.True(kept > 2 && compared > 0, FormattableString.Invariant($"{kept} boards kept, {compared} plans compared"));
    }

    // What the new pieces make superfluous may go: a wider strip or a blank of several pieces covers more than was lacking.
    private static bool IsKept(BoardChange board, Replanned again) => board.Kind == BoardChangeKind.Kept
        || again.Problem.Design.Panels.Count > 0
        || again.First.Boards.Concat(again.Earlier.Plan.Boards).SelectMany(each => each.Pieces).OfType<PartPiece>().Any(piece => piece.Copies.Count > 1);
}
