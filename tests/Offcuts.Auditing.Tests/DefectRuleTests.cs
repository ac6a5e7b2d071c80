using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>Rules 5 and 6 on a board of 303 x 203 with one defect and a kerf of 3.</summary>
public class DefectRuleTests
{
    private static readonly SawCut[] FourTurns =
    [
        new(1, FirstCut.Crosscut, At(150, 0, 3, 203)), new(2, FirstCut.Rip, At(0, 100, 150, 3)),
        new(3, FirstCut.Crosscut, At(70, 0, 3, 100)), new(4, FirstCut.Rip, At(0, 50, 70, 3)),
    ];

    private static readonly Rect[] FivePieces = [At(153, 0, 150, 203), At(0, 103, 150, 100), At(73, 0, 77, 100), At(0, 0, 70, 50), At(0, 53, 70, 47)];

    [Theory]
    [InlineData(150, 0, 3, 203, true)] // The first cut runs in a split right across: its left area is ripped first.
    [InlineData(152, 0, 1, 203, true)] // It ends where the split does.
    [InlineData(151, 0, 1, 203, false)] // It begins before the split and ends behind it: along neither edge.
    [InlineData(60, 100, 5, 3, false)] // A knot beside the second cut only.
    public void An_area_freed_along_a_defect_has_its_stages_for_itself(int x, int y, int length, int width, bool sound)
    {
        var findings = Audit(new Defect("split", At(x, y, length, width)), [], FourTurns, [.. FivePieces.Select((at, index) => new PartPiece(at, $"part {index}", 1, false))]);
        Assert.Equal(sound ? [] : [AuditRule.Stages], findings);
    }

    [Theory]
    [InlineData("knot", "knot", true)]
    [InlineData("Knot, sound", "knot", true)]
    [InlineData("split", "knot", false)]
    [InlineData("knot with a nail", "knot", false)]
    public void A_blank_lies_over_a_defect_only_if_its_part_tolerates_the_kind(string kind, string tolerated, bool sound)
    {
        var findings = Audit(new Defect(kind, At(20, 20, 10, 10)), [tolerated], [], [new PartPiece(At(0, 0, 303, 203), "part 0", 1, false)]);
        Assert.Equal(sound ? [] : [AuditRule.Defects], findings);
    }

    [Fact]
    public void A_leftover_lies_over_no_defect_whatever_the_parts_tolerate()
    {
        SawCut[] cut = [new(1, FirstCut.Crosscut, At(150, 0, 3, 203))];
        var findings = Audit(
            new Defect("knot", At(200, 20, 10, 10)), ["knot"], cut, [new PartPiece(At(0, 0, 150, 203), "part 0", 1, false), new LeftoverPiece(At(153, 0, 150, 203))]);
        Assert.Contains(AuditRule.Defects, findings);
    }

    private static List<AuditRule> Audit(Defect defect, IReadOnlyList<string> tolerated, IReadOnlyList<SawCut> cuts, IReadOnlyList<Piece> pieces)
    {
        var board = new Board
        {
            Id = "B",
            Kind = BoardKind.Sheet,
            Species = "birch-plywood",
            Surface = Surface.Surfaced,
            Size = new Dimensions(Mm(18), Mm(203), Mm(303)),
            Defects = [defect],
            LoggedAt = DateTimeOffset.UnixEpoch,
        };
        var problem = new PlanningProblem
        {
            Shop = new Shop { Kerf = Mm(3) },
            Stock = [board],
            Design = new Design
            {
                Name = "box",
                Parts = [.. pieces.OfType<PartPiece>().Select(piece => new Part
                {
                    Name = piece.Part, Finished = new Dimensions(Mm(18), piece.At.Width, piece.At.Length), Species = [board.Species], Tolerates = tolerated,
                })],
            },
        };
        var plan = new Plan
        {
            Status = PlanStatus.Proved,
            Boards =
            [
                new BoardCut
                {
                    Number = 1, BoardId = "B", Kind = board.Kind, Species = board.Species, Surface = board.Surface, Size = board.Size, Defects = board.Defects,
                    FirstCut = FirstCut.Crosscut, Cuts = cuts, Pieces = pieces,
                },
            ],
            WoodCost = Money.Zero,
            ItemCost = Money.Zero,
            WoodBound = Money.Zero,
            WorthConsumed = Worth.OfBoard(board, problem.Rates.Of(board.Species), problem.Shop.KeptOf(board.Species), problem.Today),
            WorthReturned = new Money(pieces.OfType<LeftoverPiece>().Sum(piece =>
                Worth.Of(new Dimensions(Mm(18), piece.At.Width, piece.At.Length), problem.Rates.Of(board.Species), problem.Shop.KeptOf(board.Species)).MinorUnits)),
            Run = new PlanRun(1, TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, true, "by hand"),
        };
        return [.. Auditor.Audit(problem, plan).Select(finding => finding.Rule).Distinct()];
    }
}
