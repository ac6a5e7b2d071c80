using CsCheck;
using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Xunit;
using static Offcuts.Planning.Tests.Condition.Bench;

namespace Offcuts.Planning.Tests.Condition;

/// <summary>What warp takes from blanks, against worked values and against the geometry of an exact arc.</summary>
public class WarpTests
{
    // 4/4 x 6 x 96 in, badly out of flat.
    private static readonly Board Bent = Board(Size(1, 6, 96)) with { Warp = new Warp(In(0.5m), In(0.25m), In(0.125m), In(0.25m)) };

    /// <summary>
    /// The blank of 23 1/2 x 2 1/2 in is 24 in long, a quarter of the board: it keeps 1/16 of the bow (1/32 in) and of the crook (1/64 in), which
    /// makes it 2 3/4 + 1/64 in wide. By hand in ticks of 1/8128 in: cup 1016 (177/384)^2 = 215.9, twist 2032 (1/4) (177/384) = 234.2, each rounded up.
    /// </summary>
    [Fact]
    public void A_short_narrow_blank_keeps_little_of_the_warp()
    {
        var blank = Blank(Plan(Bent, Part(Size(0.6875m, 2.5m, 23.5m))));
        Assert.Equal((In(24), In(2.75m + 0.015625m)), (blank.At.Length, blank.At.Width));
        Assert.Equal(new Loss(In(0.03125m) + Length.FromTicks(216 + 235), In(0.015625m)), blank.Loss);
    }

    [Fact]
    public void A_part_that_only_warp_prevents_is_missing_for_that()
    {
        // 1 in less 3/16 in of milling and all of the bow but a sliver leaves no 3/4 in.
        var missing = Missing(Plan(Bent, Part(Size(0.75m, 4, 95))));
        Assert.Equal((MissingReason.TooWarped, "K7M", In(1)), (missing.Reason, missing.Closest, missing.Has!.Value));
        Assert.True(missing.Needed > In(1.4m) && missing.Needed < In(1.8m), $"{missing.Needed}");
        Assert.Equal(MissingReason.TooShort, Missing(Plan(Bent, Part(Size(0.75m, 4, 96)))).Reason);
        Assert.Empty(Plan(Bent with { Warp = default }, Part(Size(0.75m, 4, 95))).Missing);
    }

    [Fact]
    public void Stock_at_its_thickness_may_keep_what_is_flat_enough()
    {
        var board = Board(Size(0.75m, 6, 96), Surface.Surfaced) with { Warp = new Warp(In(0.5m), default, default, default) };
        // 24 in keep 1/32 in of the bow, which counts for nothing; the next quarter of an inch more is too much.
        Assert.Null(Blank(Plan(board, Part(Size(0.75m, 3, 23.5m)))).Loss);
        Assert.Equal(MissingReason.TooWarped, Missing(Plan(board, Part(Size(0.75m, 3, 23.75m)))).Reason);
        Assert.Equal(MissingReason.TooWarped, Missing(Plan(board, Part(Size(0.75m, 3, 23.5m)), new Shop { FlatEnough = Length.Zero })).Reason);
    }

    [Fact]
    public void Surfaced_wood_that_is_not_flat_must_pass_the_jointer()
    {
        var flat = Board(Size(1, 11, 60), Surface.Surfaced);
        var part = Part(Size(0.75m, 10, 40));
        Assert.Empty(Plan(flat, part).Missing);
        Assert.Equal(MissingReason.TooWarped, Missing(Plan(flat with { Warp = new Warp(In(0.125m), default, default, default) }, part)).Reason);
        Assert.Empty(Plan(flat with { Warp = new Warp(In(0.125m), default, default, default) }, part, new Shop { JointerWidth = In(12) }).Missing);
    }

    [Fact]
    public void A_turned_blank_is_longer_by_the_crook()
    {
        var part = Part(Size(0.75m, 4.75m, 11.25m)) with { Grain = Grain.Free };
        // The blank of 11 3/4 x 5 in, upright: 1 in of crook over 40 in leaves 8128 (11.75 / 40)^2 = 701.4 ticks, up to 6/64 in.
        var board = Board(Size(1, 12, 40)) with { Warp = new Warp(default, In(1), default, default) };
        var upright = Blank(Plan(board, part with { Grain = Grain.Fixed }));
        Assert.Equal((In(0.09375m), In(5.09375m)), (upright.Loss!.Width, upright.At.Width));
        // On a short wide board it lies turned: 1/64 in of crook over 5 1/4 in leaves 127 (5 / 5.25)^2 = 115.2 ticks for 5 in, up to 1/64 in.
        var wide = Board(Size(1, 11.8125m, 5.25m)) with { Warp = new Warp(default, In(0.015625m), default, default) };
        var turned = Blank(Plan(wide, part));
        Assert.Equal((true, In(5), In(11.765625m)), (turned.Turned, turned.At.Length, turned.At.Width));
    }

    [Fact]
    public void Strips_of_a_cupped_board_are_only_so_wide_as_their_cup_allows()
    {
        var board = Board(Size(1, 8, 40)) with { Quantity = 3, Warp = new Warp(default, In(0.25m), In(0.25m), default) };
        var problem = new PlanningProblem
        {
            Shop = new Shop(),
            Design = new Design
            {
                Name = "panel",
                Panels = [new Panel { Name = "top", Finished = Size(0.75m, 9.75m, 30), Species = ["white-ash"], WidestStrip = In(8) }],
            },
            Stock = [board],
            Today = Testing.RandomShops.Today,
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)));
        Assert.Empty(Auditing.Auditor.Audit(problem, plan));
        Assert.Empty(plan.Missing);
        // 1/16 in is to spare: cup (w/8)^2 / 4 <= 1/16 holds up to half the width, 4 in.
        var strips = plan.Boards.SelectMany(cut => cut.Pieces.OfType<StripPiece>()).ToList();
        Assert.All(strips, strip => Assert.True(strip.At.Width <= In(4) && strip.Loss!.Width > Length.Zero, $"{strip}"));
    }

    /// <summary>
    /// An exact circular arc of sagitta s over the chord L has the radius (L^2/4 + s^2) / 2s; over a shorter chord l its sagitta is R - sqrt(R^2 - l^2/4), which is
    /// convex in l^2. So the square law never counts less than there is, and for shallow arcs hardly more.
    /// </summary>
    [Fact]
    public void The_square_law_is_never_below_the_exact_arc_and_close_to_it() =>
        Gen.Select(Gen.Int[1, 96], Gen.Int[1, 100], Gen.Int[1, 64]).Sample((inches, percent, sixtyFourths) =>
        {
            var (length, sagitta) = (In(inches), Length.Min(Length.FromSixtyFourths(sixtyFourths), Length.FromTicks(In(inches).Ticks / 8)));
            var part = Length.FromTicks(Math.Max(1, length.Ticks * percent / 100));
            var counted = new Flattening(new Warp(sagitta, default, default, default), length, length).Faces(part, part).Ticks;
            double whole = length.Ticks, s = sagitta.Ticks, chord = part.Ticks;
            var radius = ((whole * whole / 4) + (s * s)) / (2 * s);
            var exact = radius - Math.Sqrt((radius * radius) - (chord * chord / 4));
            return counted >= exact - 0.001 && counted <= (exact * 1.07) + 1.001;
        });

    [Fact]
    public void A_larger_blank_never_keeps_less() =>
        Gen.Select(Gen.Long[1, 500], Gen.Long[1, 500], Gen.Long[0, 500], Gen.Long[0, 200]).Sample((along, across, more, sagitta) =>
        {
            var warp = Length.FromTicks(sagitta);
            var flattening = new Flattening(new Warp(warp, warp, warp, warp), Length.FromTicks(1000), Length.FromTicks(700));
            var (small, large) = (Length.FromTicks(along), Length.FromTicks(along + more));
            var width = Length.FromTicks(across);
            return flattening.Faces(small, width) <= flattening.Faces(large, width) && flattening.Crook(small) <= flattening.Crook(large)
                && flattening.Faces(width, small) <= flattening.Faces(width, large)
                && new Flattening(default, Length.FromTicks(1000), Length.FromTicks(700)).Faces(small, width) == Length.Zero;
        });
}
