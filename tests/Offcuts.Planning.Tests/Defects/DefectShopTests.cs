using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Defects;

/// <summary>Random small shops whose boards are full of defects, each plan given to the auditor.</summary>
public class DefectShopTests
{
    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 4)];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_plan_passes_the_auditor(int block)
    {
        var (faults, held, beside) = (new List<string>(), 0, 0);
        foreach (var seed in Enumerable.Range(1 + (block * 100), 100))
        {
            var scale = block % 2 == 0 ? ShopScale.Smallest : ShopScale.Tiny;
            var problem = RandomDefects.Add(RandomShops.Create(seed, new ShopKind(scale, MustBuy: seed % 2 == 1, Metric: seed % 4 >= 2)), seed);
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromMilliseconds(60)));
            faults.AddRange(Auditor.Audit(problem, plan).Select(finding => string.Create(CultureInfo.InvariantCulture, $"seed {seed}, {scale}: {finding}")));
            held += plan.Boards.Count(board => board.Defects.Any(defect => board.Pieces.Any(piece => piece is PartPiece or StripPiece && piece.At.Overlaps(defect.Area))));
            beside += plan.Boards.Count(board => board.Defects.Count > 0 && board.Pieces.Count(piece => piece is PartPiece or StripPiece) > 1);
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));

        // A generator or planner that stopped doing either would make this check hollow.
        Assert.True(held > 0 && beside > 0, string.Create(CultureInfo.InvariantCulture, $"{held} boards with a tolerated defect in a part, {beside} with several parts beside defects"));
    }
}
