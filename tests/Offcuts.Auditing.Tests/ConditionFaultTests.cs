using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>
/// Faults about warp, ends and edges, planted in a plan laid out by hand. In millimetres: kerf 3, blanks 10 longer, 5 wider and 5 thicker than finished. The
/// board of 30 x 103 x 600 has 8 of bow, 4 of crook and 6 of twist; its left end is checked and loses 20.
/// </summary>
public class ConditionFaultTests
{
    // The rail's blank is 300 long, half the board: it keeps 2 of the bow and 1 of the crook, so it is 51 wide. Twist by hand:
    // 1920 ticks x 300 x 51 / (600 x 103) = 475.3, rounded up.
    private static readonly Loss RailLoss = new(Mm(2) + Length.FromTicks(476), Mm(1));

    private static readonly Board Bent = SoundPlan.Problem.Stock[0] with
    {
        Size = new Dimensions(Mm(30), Mm(103), Mm(600)),
        Defects = [],
        Warp = new Warp(Mm(8), Mm(4), Length.Zero, Mm(6)),
        Ends = new Ends(EndState.Checked, EndState.Sound),
    };

    private static readonly PlanningProblem Problem = SoundPlan.Problem with
    {
        Shop = SoundPlan.Problem.Shop with { EndTrimChecked = Mm(20), EndTrimUnknown = Mm(15) },
        Design = new Design
        {
            Name = "rail",
            Parts = [new Part { Name = "rail", Finished = new Dimensions(Mm(20), Mm(45), Mm(290)), Species = ["white-ash"] }],
        },
        Stock = [Bent],
        Offers = [],
    };

    private static readonly Plan Sound = SoundPlan.Sound with
    {
        Status = PlanStatus.Proved,
        Boards =
        [
            SoundPlan.Sound.Boards[0] with
            {
                Size = Bent.Size,
                Defects = [],
                Cuts =
                [
                    new SawCut(1, FirstCut.Crosscut, At(17, 0, 3, 103)),
                    new SawCut(2, FirstCut.Crosscut, At(320, 0, 3, 103)),
                    new SawCut(3, FirstCut.Rip, At(20, 51, 300, 3)),
                ],
                Pieces =
                [
                    new WastePiece(At(0, 0, 17, 103)),
                    new PartPiece(At(20, 0, 300, 51), "rail", 1, false) { Loss = RailLoss },
                    new LeftoverPiece(At(20, 54, 300, 49)) { Ends = Ends.BothSound },
                    new LeftoverPiece(At(323, 0, 277, 103)) { Ends = Ends.BothSound },
                ],
            },
        ],
        GlueUps = [],
        Purchases = [],
        WoodCost = Money.Zero,
        ItemCost = Money.Zero,
        WoodBound = Money.Zero,
        WorthConsumed = WorthOf(103, 600),
        WorthReturned = WorthOf(49, 300) + WorthOf(103, 277),
    };

    private static readonly Dictionary<string, (AuditRule Rule, Plan Plan)> InPlan = new()
    {
        ["loss not said"] = (AuditRule.Loss, WithPiece(1, piece => piece with { Loss = null })),
        ["a tick too little lost"] = (AuditRule.Loss, WithPiece(1, piece => piece with { Loss = RailLoss with { Thickness = RailLoss.Thickness - Length.FromTicks(1) } })),
        ["another crook"] = (AuditRule.Loss, WithPiece(1, piece => piece with { Loss = RailLoss with { Width = Mm(2) } })),
        ["loss beyond all limits"] = (AuditRule.WellFormed, WithPiece(1, piece => piece with { Loss = RailLoss with { Width = Length.FromTicks(long.MaxValue) } })),
        ["a leftover that loses"] = (AuditRule.Loss, WithPiece(2, piece => piece with { Loss = RailLoss })),
        ["sawn as if straight"] = (AuditRule.BlankSize, WithPiece(1, piece => piece with { At = At(20, 0, 300, 50) })),
        ["a checked end kept"] = (AuditRule.EndTrim, WithPiece(0, piece => new LeftoverPiece(piece.At))),
        ["a sawn end called unknown"] = (AuditRule.LeftoverEnds, WithPiece(2, piece => new LeftoverPiece(piece.At))),
        ["its own end called checked"] = (AuditRule.LeftoverEnds, WithPiece(3, piece => new LeftoverPiece(piece.At) { Ends = new Ends(EndState.Sound, EndState.Checked) })),
        ["warp as a poor excuse"] = (AuditRule.MissingReason, Sound with { Missing = [new MissingPart("rail", 1, MissingReason.TooWarped)] }),
    };

    private static readonly Dictionary<string, (AuditRule Rule, PlanningProblem Problem)> InProblem = new()
    {
        ["more bow than the thickness gives"] = (AuditRule.Thickness, With(Bent with { Warp = Bent.Warp with { Bow = Mm(16) } })),
        ["more crook"] = (AuditRule.BlankSize, With(Bent with { Warp = Bent.Warp with { Crook = Mm(8) } })),
        ["less twist"] = (AuditRule.Loss, With(Bent with { Warp = Bent.Warp with { Twist = Length.Zero } })),
        ["a jointer for the straight blank"] = (AuditRule.MachineWidth, Problem with { Shop = Problem.Shop with { JointerWidth = Mm(50) } }),
        ["more comes off"] = (AuditRule.EndTrim, Problem with { Shop = Problem.Shop with { EndTrimChecked = Mm(21) } }),
        ["an end nobody looked at"] = (AuditRule.EndTrim, With(Bent with { Ends = new Ends(EndState.Checked, EndState.Unknown) })),
        ["skip-planed"] = (AuditRule.BoardIdentity, With(Bent with { Surface = Surface.SkipPlaned })),
    };

    public static TheoryData<string> PlanFaults => [.. InPlan.Keys];

    public static TheoryData<string> ProblemFaults => [.. InProblem.Keys];

    [Fact]
    public void A_sound_plan_passes() => Assert.Empty(Auditor.Audit(Problem, Sound));

    [Theory]
    [MemberData(nameof(PlanFaults))]
    public void A_fault_in_the_plan_is_found_and_named(string fault) =>
        Assert.Contains(Auditor.Audit(Problem, InPlan[fault].Plan), finding => finding.Rule == InPlan[fault].Rule);

    [Theory]
    [MemberData(nameof(ProblemFaults))]
    public void A_plan_for_another_problem_is_found_out(string fault) =>
        Assert.Contains(Auditor.Audit(InProblem[fault].Problem, Sound), finding => finding.Rule == InProblem[fault].Rule);

    [Fact]
    public void Warp_is_a_reason_where_it_is_one()
    {
        // Of 20 of bow a quarter, 5, stays: 23.5 of 30 less the twist is not 25.
        var problem = With(Bent with { Warp = Bent.Warp with { Bow = Mm(20) } });
        var plan = Sound with { Boards = [], Status = PlanStatus.Incomplete, WorthConsumed = Money.Zero, WorthReturned = Money.Zero };
        Assert.Empty(Auditor.Audit(problem, plan with { Missing = [new MissingPart("rail", 1, MissingReason.TooWarped, "A")] }));
        var excuse = Auditor.Audit(problem, plan with { Missing = [new MissingPart("rail", 1, MissingReason.WrongThickness, "A")] });
        Assert.Contains(excuse, finding => finding.Rule == AuditRule.MissingReason);
    }

    private static Money WorthOf(int width, int length) => Worth.Of(new Dimensions(Mm(30), Mm(width), Mm(length)), new Money(600), SoundPlan.Problem.Shop.KeptOf("white-ash"));

    private static PlanningProblem With(Board board) => Problem with { Stock = [board] };

    private static Plan WithPiece(int piece, Func<Piece, Piece> change) => Sound with
    {
        Boards = [Sound.Boards[0] with { Pieces = [.. Sound.Boards[0].Pieces.Select((each, index) => index == piece ? change(each) : each)] }],
    };
}
