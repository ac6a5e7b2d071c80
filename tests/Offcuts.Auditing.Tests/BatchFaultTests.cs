using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>The sound plan makes its one group from a board in stock and a bought board: two batches, however the board in stock is named.</summary>
public class BatchFaultTests
{
    [Fact]
    public void Where_no_batch_is_asked_for_several_pass()
    {
        Assert.Empty(Auditor.Audit(For(BatchChoice.Any, "left"), Sound));
        Assert.Empty(Auditor.Audit(For(BatchChoice.Fewest, "left"), Sound));
    }

    [Theory]
    [InlineData("left", "several batches")]
    [InlineData(null, "no batch")]
    public void Where_one_is_asked_for_several_or_none_are_found(string? batch, string says) => Assert.Contains(
        Auditor.Audit(For(BatchChoice.One, batch), Sound),
        finding => finding.Rule == AuditRule.Batch && finding.Detail.Contains(says, StringComparison.Ordinal));

    [Fact]
    public void One_batch_passes()
    {
        var problem = For(BatchChoice.One, "left");
        problem = problem with { Design = problem.Design with { Panels = [problem.Design.Panels[0] with { Group = null }] } };
        Assert.Empty(Auditor.Audit(problem, Sound));
    }

    private static PlanningProblem For(BatchChoice choice, string? batch) => Problem with
    {
        Stock = [Problem.Stock[0] with { Batch = batch }],
        Design = Problem.Design with { Groups = [Problem.Design.Groups[0] with { Batch = choice }] },
    };
}
