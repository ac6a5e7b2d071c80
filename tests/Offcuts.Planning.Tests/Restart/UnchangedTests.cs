using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Restart;

/// <summary>A plan asked for again though nothing has changed: every board stays as it was, unless a cheaper plan is found.</summary>
public sealed class UnchangedTests
{
    [Theory]
    [InlineData("plain", ShopScale.Smallest, 60)]
    [InlineData("plain", ShopScale.Tiny, 20)]
    [InlineData("recipes", ShopScale.Tiny, 20)]
    [InlineData("defects", ShopScale.Tiny, 20)]
    [InlineData("condition", ShopScale.Tiny, 20)]
    public void Every_board_is_kept(string kind, ShopScale scale, int shops)
    {
        var (kept, finished) = (0, 0);
        foreach (var seed in Enumerable.Range(1, shops))
        {
            // A blade that takes nothing leaves no cuts on record by which to tell the sections apart.
            var problem = Replanned.Shop(kind, scale, seed);
            if (problem.Shop.Kerf == Length.Zero)
            {
                continue;
            }

            // Where not everything can be had, what is given up may be another part the next time.
            var again = Replanned.From(Replanned.Before(problem), problem);
            if (again.Earlier.Plan.Missing.Count > 0)
            {
                continue;
            }

            Assert.All(again.FirstChanges.Boards, board => Assert.True(board.Kind == BoardChangeKind.Kept, again.Say(seed, board)));
            Assert.Equal(again.Earlier.Plan.WoodCost, again.First.WoodCost);
            Assert.True(again.Plan.WoodCost <= again.Earlier.Plan.WoodCost, FormattableString.Invariant($"seed {seed}"));

            // Money goes before what is kept: the earlier search may have missed a cheaper plan that this one finds.
            if (again.IsFinished && again.Plan.WoodCost == again.Earlier.Plan.WoodCost)
            {
                finished++;
                Assert.All(again.Changes.Boards, board => Assert.True(board.Kind == BoardChangeKind.Kept, again.Say(seed, board)));
                Assert.Empty(again.Changes.Parts);
                Assert.Empty(again.Changes.Purchases);
            }

            kept += again.FirstChanges.Boards.Count;
        }

        Assert.True(kept > shops / 2 && finished > 0, FormattableString.Invariant($"{kept} boards kept, {finished} searches finished"));
    }

    /// <summary>Pieces that grew within their tolerances grow again from the same blanks. Only where a board was sawn longer than its blanks need may it be sawn better.</summary>
    [Fact]
    public void Freedom_within_the_design_changes_next_to_nothing()
    {
        var (kept, all, grown) = (0, 0, 0);
        foreach (var seed in Enumerable.Range(1, 25))
        {
            var problem = Replanned.Shop("freedom", ShopScale.Tiny, seed);
            var again = Replanned.From(Replanned.Before(problem), problem);
            Assert.True(again.Plan.WoodCost <= again.Earlier.Plan.WoodCost, FormattableString.Invariant($"seed {seed}"));
            kept += again.FirstChanges.Boards.Count(board => board.Kind == BoardChangeKind.Kept);
            all += again.Earlier.Plan.Boards.Count;
            grown += again.First.Boards.SelectMany(board => board.Pieces).OfType<PartPiece>()
                .Count(piece => piece.Finished is { } size && size.Face.SquareTicks > problem.Design.Parts.First(part => part.Name == piece.Part).Finished.Face.SquareTicks);
        }

        Assert.True(kept >= 0.9 * all && grown > 5, FormattableString.Invariant($"{kept} of {all} boards kept, {grown} pieces grown"));
    }
}
