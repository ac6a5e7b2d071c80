using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>Random small shops whose designs leave freedoms: every plan goes to the auditor, and each freedom is used somewhere.</summary>
public class FreedomTests
{
    private const int BlockSize = 100;

    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 4)];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_plan_passes_the_auditor(int block)
    {
        var faults = new List<string>();
        var plans = new List<(PlanningProblem Problem, Plan Plan)>();
        foreach (var seed in Enumerable.Range(1 + (block * BlockSize), BlockSize))
        {
            var problem = RandomFreedom.Add(RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Smallest)), seed);
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromMilliseconds(40)));
            plans.Add((problem, plan));
            faults.AddRange(Auditor.Audit(problem, plan).Select(finding => string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {finding}")));
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
        AssertUsed("width", (size, least) => size.Width > least.Width);
        AssertUsed("length", (size, least) => size.Length > least.Length);
        AssertUsed("thickness", (size, least) => size.Thickness > least.Thickness);

        AssertAny("a leftover is cut further", each => Pieces(each.Plan).Any(piece => piece.Use == PieceUse.More) && each.Plan.Boards.Any(board => board.Cuts.Count > 4));
        AssertAny("there is a spare", each => Pieces(each.Plan).Any(piece => piece.Use == PieceUse.Spare));
        AssertAny("there is no room for a spare", each => each.Plan.Counts.Any(count => count.Spares == 0 && each.Problem.Design.Parts.Any(part => part.Name == count.Part && part.Spares > 0)));
        AssertAny("a group of one batch is made", each => each.Problem.Design.Groups.Any(group => group.Batch == BatchChoice.One
            && each.Problem.Design.Parts.Any(part => part.Group == group.Name && Pieces(each.Plan).Any(piece => piece.Part == part.Name))));
        AssertAny("there are gaps", each => each.Plan.Counts.Any(count => count.Gaps is not null));

        void AssertAny(string what, Predicate<(PlanningProblem Problem, Plan Plan)> isSo) => Assert.True(plans.Exists(isSo), $"In no plan {what}.");

        void AssertUsed(string what, Func<Dimensions, Dimensions, bool> isUsed) => Assert.True(
            plans.Exists(each => Pieces(each.Plan).Any(piece => piece.Finished is { } size && isUsed(size, PartOf(each.Problem, piece).Finished))),
            $"No piece has a larger {what} than it must have.");
    }

    private static IEnumerable<PartPiece> Pieces(Plan plan) => plan.Boards.SelectMany(board => board.Pieces).OfType<PartPiece>();

    private static Part PartOf(PlanningProblem problem, PartPiece piece) => problem.Design.Parts.Single(part => part.Name == piece.Part);
}
