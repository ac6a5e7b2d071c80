using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>One board of 303 x 203 with a kerf of 3 gives four blanks by so many turns of the cutting direction.</summary>
public class StageTests
{
    private static readonly Board Board = new()
    {
        Id = "B",
        Kind = BoardKind.Sheet,
        Species = "birch-plywood",
        Size = new Dimensions(Mm(18), Mm(203), Mm(303)),
        LoggedAt = DateTimeOffset.UnixEpoch,
    };

    [Theory]
    [InlineData(true, FirstCut.Crosscut, true)]
    [InlineData(false, FirstCut.Crosscut, false)]
    [InlineData(true, FirstCut.Rip, false)]
    public void Three_turns_need_recutting_and_the_right_first_cut(bool recut, FirstCut first, bool sound)
    {
        // Crosscut at 150; the left section is ripped at 100; its lower strip is crosscut at 70.
        var problem = Problem(recut, (150, 203), (150, 100), (70, 100), (77, 100));
        var plan = Plan(problem, first,
            [
                new SawCut(1, FirstCut.Crosscut, At(150, 0, 3, 203)),
                new SawCut(2, FirstCut.Rip, At(0, 100, 150, 3)),
                new SawCut(3, FirstCut.Crosscut, At(70, 0, 3, 100)),
            ],
            [At(153, 0, 150, 203), At(0, 103, 150, 100), At(0, 0, 70, 100), At(73, 0, 77, 100)]);
        var findings = Auditor.Audit(problem, plan);
        Assert.Equal(sound ? [] : [AuditRule.Stages], findings.Select(finding => finding.Rule).Distinct());
    }

    private static PlanningProblem Problem(bool recut, params (int Length, int Width)[] parts) => new()
    {
        Shop = new Shop { Kerf = Mm(3), Recut = recut },
        Stock = [Board],
        Design = new Design
        {
            Name = "box",
            Parts = [.. parts.Select((part, index) => new Part
            {
                Name = $"part {index}", Finished = new Dimensions(Mm(18), Mm(part.Width), Mm(part.Length)), Species = ["birch-plywood"],
            })],
        },
    };

    private static Plan Plan(PlanningProblem problem, FirstCut first, IReadOnlyList<SawCut> cuts, IReadOnlyList<Rect> pieces) => new()
    {
        Status = PlanStatus.Proved,
        Boards =
        [
            new BoardCut
            {
                Number = 1, BoardId = "B", Kind = Board.Kind, Species = Board.Species, Surface = Board.Surface, Size = Board.Size, FirstCut = first, Cuts = cuts,
                Pieces = [.. pieces.Select((at, index) => new PartPiece(at, $"part {index}", 1, false))],
            },
        ],
        WoodCost = Money.Zero,
        ItemCost = Money.Zero,
        WoodBound = Money.Zero,
        WorthConsumed = Worth.OfBoard(Board, problem.Rates.Of(Board.Species), problem.Shop.KeptOf(Board.Species), problem.Today),
        WorthReturned = Money.Zero,
        Run = new PlanRun(1, TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, true, "by hand"),
    };
}
