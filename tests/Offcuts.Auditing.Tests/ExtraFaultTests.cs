using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>
/// The sound plan for a design that asks for one rail, up to two, side by side across 300 mm, and one spare: the second rail is made more than asked.
/// Blanks, 300 x 50, are of the keep size, so it may come from a leftover.
/// </summary>
public class ExtraFaultTests
{
    private static readonly Part Rail = Problem.Design.Parts[0] with
    {
        Quantity = 1,
        MostQuantity = 2,
        Spares = 1,
        Spacing = new Spacing(Mm(300), Ends: true),
        Extras = ExtraSource.Leftovers,
    };

    private static readonly Plan WithMore = WithPiece(1, 1, piece => (PartPiece)piece with { Use = PieceUse.More }) with
    {
        Counts = [new PartCount("rail", 2, 0, new EqualGaps(Mm(210), 3))],
    };

    private static readonly Plan WithSpare = WithPiece(1, 1, piece => (PartPiece)piece with { Use = PieceUse.Spare, Copies = [new PartCopy(1)] }) with
    {
        Counts = [new PartCount("rail", 1, 1, new EqualGaps(Mm(255), 2))],
    };

    public static TheoryData<string> Faults => [.. InPlan.Keys];

    private static Dictionary<string, (AuditRule Rule, Part Part, Plan Plan)> InPlan => new()
    {
        ["one more than wanted"] = (AuditRule.Extras, Rail with { MostQuantity = null }, WithMore),
        ["no spare wanted"] = (AuditRule.Extras, Rail with { Spares = 0 }, WithSpare),
        ["from a leftover"] = (AuditRule.Extras, Rail with { Extras = null }, WithMore),
        ["spare from a leftover"] = (AuditRule.Extras, Rail with { Extras = ExtraSource.Waste }, WithSpare),
        ["spares numbered with the rest"] = (AuditRule.Extras, Rail, WithPiece(1, 1, piece => (PartPiece)piece with { Use = PieceUse.Spare })),
        ["more though one is missing"] = (AuditRule.Extras, Rail with { Quantity = 2, MostQuantity = 3 }, WithMore with { Missing = [new MissingPart("rail", 1, MissingReason.TooFew)] }),
        ["more instead of asked"] = (AuditRule.Demand, Rail with { Quantity = 2, MostQuantity = 3 }, WithMore),
        ["a copy twice"] = (AuditRule.Demand, Rail, WithPiece(1, 1, piece => (PartPiece)piece with { Use = PieceUse.More, Copies = [new PartCopy(1)] })),
        ["not counted"] = (AuditRule.Counts, Rail, WithMore with { Counts = [] }),
        ["counted twice"] = (AuditRule.Counts, Rail, WithMore with { Counts = [WithMore.Counts[0], WithMore.Counts[0]] }),
        ["counted wrongly"] = (AuditRule.Counts, Rail, WithMore with { Counts = [WithMore.Counts[0] with { Count = 1 }] }),
        ["spares counted wrongly"] = (AuditRule.Counts, Rail, WithSpare with { Counts = [WithSpare.Counts[0] with { Spares = 0 }] }),
        ["too few gaps"] = (AuditRule.Counts, Rail, WithMore with { Counts = [WithMore.Counts[0] with { Gaps = new EqualGaps(Mm(210), 1) }] }),
        ["gaps too wide"] = (AuditRule.Counts, Rail, WithMore with { Counts = [WithMore.Counts[0] with { Gaps = new EqualGaps(Mm(211), 3) }] }),
        ["no gaps"] = (AuditRule.Counts, Rail, WithMore with { Counts = [WithMore.Counts[0] with { Gaps = null }] }),
        ["gaps nobody asked for"] = (AuditRule.Counts, Rail with { Spacing = null }, WithMore),
        ["wider than the span"] = (AuditRule.Counts, Rail with { Spacing = new Spacing(Mm(89), true) }, WithMore with { Counts = [WithMore.Counts[0] with { Gaps = new EqualGaps(Mm(-1), 3) }] }),
        ["no count at all"] = (AuditRule.WellFormed, Rail, WithMore with { Counts = null! }),
        ["unknown use"] = (AuditRule.WellFormed, Rail, WithPiece(1, 1, piece => (PartPiece)piece with { Use = (PieceUse)7 })),
    };

    [Fact]
    public void One_more_passes() => Assert.Empty(Auditor.Audit(For(Rail), WithMore));

    [Fact]
    public void A_spare_passes() => Assert.Empty(Auditor.Audit(For(Rail), WithSpare));

    [Theory]
    [MemberData(nameof(Faults))]
    public void A_fault_is_found_and_named(string fault) =>
        Assert.Contains(Auditor.Audit(For(InPlan[fault].Part), InPlan[fault].Plan), finding => finding.Rule == InPlan[fault].Rule);

    [Fact]
    public void A_board_cut_for_extras_alone_is_found()
    {
        var plan = With(1, board => board with
        {
            Pieces = [.. board.Pieces.Select(piece => piece is PartPiece part ? part with { Use = part.Copies[0].Copy == 1 ? PieceUse.Spare : PieceUse.More } : piece)],
        });
        Assert.Contains(Auditor.Audit(For(Rail), plan), finding => finding.Rule == AuditRule.Extras && finding.Detail.Contains("nothing", StringComparison.Ordinal));
    }

    private static PlanningProblem For(Part rail) => Problem with { Design = Problem.Design with { Parts = [rail] } };
}
