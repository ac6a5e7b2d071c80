using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>Parts with tolerances: the rails of the sound plan, now 20..22 x 44..47 x 288..292, finished to 20 x 45 x 290 from the same blanks.</summary>
public class ToleranceFaultTests
{
    private static readonly PlanningProblem Free = Problem with
    {
        Design = Problem.Design with
        {
            Parts = [Problem.Design.Parts[0] with { Finished = new(Mm(20), Mm(44), Mm(288)), Most = new(Mm(22), Mm(47), Mm(292)) }],
        },
    };

    [Fact]
    public void A_size_within_the_tolerances_passes() => Assert.Empty(Auditor.Audit(Free, With(20, 45, 290)));

    [Theory]
    [InlineData(19, 45, 290)]
    [InlineData(20, 43, 290)]
    [InlineData(20, 48, 290)]
    [InlineData(20, 45, 287)]
    [InlineData(20, 45, 293)]
    [InlineData(21, 45, 290)]
    public void A_size_outside_them_or_thicker_than_the_board_gives_is_found(int thickness, int width, int length) =>
        Assert.Contains(Auditor.Audit(Free, With(thickness, width, length)), finding => finding.Rule == AuditRule.FinishedSize);

    [Fact]
    public void A_blank_for_another_size_is_found() =>
        Assert.Contains(Auditor.Audit(Free, With(20, 46, 290)), finding => finding.Rule == AuditRule.BlankSize);

    [Fact]
    public void A_size_that_is_not_said_is_found() => Assert.Contains(Auditor.Audit(Free, Sound), finding => finding.Rule == AuditRule.FinishedSize);

    [Fact]
    public void Another_size_for_a_part_without_tolerances_is_found() =>
        Assert.Contains(Auditor.Audit(Problem, With(20, 44, 290)), finding => finding.Rule == AuditRule.FinishedSize);

    [Fact]
    public void Surfaced_wood_within_the_range_keeps_its_thickness()
    {
        var surfaced = Free with { Stock = [Free.Stock[0] with { Surface = Surface.Surfaced, Size = Free.Stock[0].Size with { Thickness = Mm(22) } }] };
        Assert.DoesNotContain(Auditor.Audit(surfaced, OnSurfaced(22)), finding => finding.Rule is AuditRule.FinishedSize or AuditRule.Thickness);
        Assert.Contains(Auditor.Audit(surfaced, OnSurfaced(20)), finding => finding.Rule == AuditRule.FinishedSize);

        Plan OnSurfaced(int thickness)
        {
            var plan = With(thickness, 45, 290);
            return plan with
            {
                Boards = [plan.Boards[0] with { Surface = Surface.Surfaced, Size = surfaced.Stock[0].Size }, plan.Boards[1]],
            };
        }
    }

    private static Plan With(int thickness, int width, int length) => SoundPlan.With(1, board => board with
    {
        Pieces = [.. board.Pieces.Select(piece => piece is PartPiece part ? part with { Finished = new(Mm(thickness), Mm(width), Mm(length)) } : piece)],
    });
}
