using CsCheck;
using Offcuts.Domain;
using Xunit;

namespace Offcuts.Auditing.Tests;

/// <summary>However broken a plan is, the auditor answers and does not throw; and no change of a place goes unseen.</summary>
public class FuzzTests
{
    private static readonly Gen<long> Ticks = Gen.OneOf(Gen.Long, Gen.Long[-5, 5], Gen.Long[-40_000, 400_000], Gen.OneOf(Gen.Const(long.MaxValue), Gen.Const(long.MinValue), Gen.Const(Length.MaxTicks)));

    private static readonly Gen<Rect> Places = Gen.Select(Ticks, Ticks, Ticks, Ticks, (x, y, length, width) =>
        new Rect(Length.FromTicks(x), Length.FromTicks(y), Length.FromTicks(length), Length.FromTicks(width)));

    [Fact]
    public void Any_place_of_a_piece_is_answered_and_none_but_its_own_passes() => Gen.Select(Gen.Int[1, 2], Gen.Int[0, 3], Places).Sample((board, piece, place) =>
    {
        var plan = SoundPlan.WithPiece(board, piece, each => each with { At = place });
        var unchanged = plan.Boards.Zip(SoundPlan.Sound.Boards).All(pair => pair.First.Pieces.SequenceEqual(pair.Second.Pieces));
        Assert.Equal(unchanged, Auditor.Audit(SoundPlan.Problem, plan).Count == 0);
    });

    [Fact]
    public void Any_saw_cut_is_answered() => Gen.Select(Gen.Int[1, 2], Gen.Int[0, 2], Places, Gen.Int).Sample((board, cut, place, order) =>
    {
        var plan = SoundPlan.With(board, each => each with
        {
            Cuts = [.. each.Cuts.Select((saw, index) => index == cut ? saw with { Kerf = place, Order = order } : saw)],
        });
        _ = Auditor.Audit(SoundPlan.Problem, plan);
    });

    [Fact]
    public void Any_numbers_are_answered() => Gen.Select(Gen.Long, Gen.Int, Ticks, Gen.Int[-1, 4]).Sample((money, count, width, number) =>
    {
        var plan = SoundPlan.Sound with
        {
            Status = (PlanStatus)number,
            WoodCost = new Money(money),
            WoodBound = new Money(money / -2),
            WorthConsumed = new Money(money),
            Missing = [new MissingPart("rail", count, (MissingReason)number), new MissingPart("seat", count, MissingReason.TooNarrow)],
            Purchases = [SoundPlan.Sound.Purchases[0] with { Count = count }],
            GlueUps = [new GlueUp("seat", count, "", [new SubPanel(number, Length.FromTicks(width), [new StripPlace(count, number, Length.FromTicks(width))])])],
        };
        Assert.NotEmpty(Auditor.Audit(SoundPlan.Problem, plan));
    });

    [Fact]
    public void What_is_not_there_is_answered()
    {
        Plan[] plans =
        [
            SoundPlan.Sound with { Boards = [null!] },
            SoundPlan.Sound with { GlueUps = [null!] },
            SoundPlan.Sound with { Purchases = [null!] },
            SoundPlan.Sound with { Missing = [null!] },
            SoundPlan.Sound with { Run = null! },
            SoundPlan.WithPiece(1, 0, _ => null!),
            SoundPlan.With(1, cut => cut with { Cuts = [null!] }),
            SoundPlan.With(1, cut => cut with { Size = default }),
            SoundPlan.With(1, cut => cut with { Species = null! }),
        ];
        Assert.All(plans, plan => Assert.Contains(Auditor.Audit(SoundPlan.Problem, plan), finding => finding.Rule == AuditRule.WellFormed));
    }
}
