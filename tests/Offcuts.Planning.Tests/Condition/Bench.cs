using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Condition;

/// <summary>One board and one part, planned and audited.</summary>
internal static class Bench
{
    /// <summary>A length in 64ths of an inch.</summary>
    public static Length In(decimal inches) => Length.FromSixtyFourths((long)(inches * 64));

    public static Dimensions Size(decimal thickness, decimal width, decimal length) => new(In(thickness), In(width), In(length));

    public static Board Board(Dimensions size, Surface surface = Surface.Rough) => new()
    {
        Id = "K7M",
        Species = "white-ash",
        Size = size,
        Surface = surface,
        LoggedAt = DateTimeOffset.UnixEpoch,
    };

    public static Part Part(Dimensions finished) => new() { Name = "part", Finished = finished, Species = ["white-ash"] };

    /// <summary>The plan, which the auditor passes.</summary>
    public static Plan Plan(Board board, Part part, Shop? shop = null)
    {
        var problem = new PlanningProblem
        {
            Shop = shop ?? new Shop(),
            Design = new Design { Name = "one part", Parts = [part] },
            Stock = [board],
            Today = RandomShops.Today,
        };
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(5)));
        Assert.Empty(Auditor.Audit(problem, plan));
        return plan;
    }

    /// <summary>The one blank of the plan.</summary>
    public static PartPiece Blank(Plan plan) => Assert.Single(Assert.Single(plan.Boards).Pieces.OfType<PartPiece>());

    /// <summary>Why the part is missing.</summary>
    public static MissingPart Missing(Plan plan) => Assert.Single(plan.Missing);
}
