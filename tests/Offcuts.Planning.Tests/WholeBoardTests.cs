using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;
using Offcuts.Planning.Search;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>Boards cut up at random without a scrap: the fewest boards for the pieces are those that they came from (as Falkenauer 1996 made his triplets).</summary>
public class WholeBoardTests
{
    private const int Length = 1000;
    private const int Boards = 30;

    [Theory]
    [InlineData(1, 60, 3)]
    [InlineData(2, 60, 3)]
    [InlineData(3, 120, 3)]
    [InlineData(4, 50, 4)]
    [InlineData(5, 50, 4)]
    public void Pieces_of_boards_without_waste_take_just_those_boards(int seed, int boards, int mostPieces)
    {
        var problem = Create(seed, boards, mostPieces);
        var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromSeconds(30)));
        Assert.Empty(Auditor.Audit(problem, plan));
        Assert.Equal((boards, boards, PlanStatus.Proved), (plan.WoodCost.MinorUnits, plan.WoodBound.MinorUnits, plan.Status));
    }

    [Fact]
    public void A_dive_is_completed_for_the_least_total_or_not_at_all()
    {
        var completed = 0;
        foreach (var seed in Enumerable.Range(1, 6))
        {
            var problem = Create(seed, Boards, mostPieces: 3);
            var model = new ModelBuilder(problem).Build(Wanted.All(problem.Design));
            var (pricer, clock, met) = (new PatternPricer(model), new SearchClock(TimeSpan.FromSeconds(30), CancellationToken.None), new List<Pattern>());
            var start = GreedyStart.Run(model, pricer, clock, [], met.Add);
            for (var discrepancies = 0; discrepancies < 3; discrepancies++)
            {
                var dive = new Dive(model, pricer, [.. met], clock, met.Add);
                dive.Run(null, discrepancies, new Random(seed));
                if (new Completion(model, clock).Run(dive.Cuts, start.Cuts.Sum(cut => cut.Count), Boards, met) is { } plan)
                {
                    completed++;
                    Assert.True(plan.IsComplete);
                    Assert.Equal(Boards, plan.Money);
                }

                // Fewer boards than the pieces fill are never enough.
                Assert.Null(new Completion(model, clock).Run(dive.Cuts, Boards, Boards - 1, met));
            }
        }

        Assert.True(completed >= 3, $"{completed} of 18");
    }

    private static PlanningProblem Create(int seed, int boards, int mostPieces)
    {
        var random = new Random(seed);
        var pieces = Enumerable.Range(0, boards).SelectMany(_ => Pieces(random, mostPieces)).ToList();
        return PublishedProblems.Empty(0) with
        {
            Design = new Design
            {
                Name = "whole boards",
                Parts = [.. pieces.GroupBy(piece => piece).Select(alike => PublishedProblems.CreatePart($"{alike.Key}", alike.Key, 100, alike.Count()))],
            },
            Offers = [PublishedProblems.CreateOffer("board", Length, 100, 1)],
        };
    }

    private static IEnumerable<int> Pieces(Random random, int most)
    {
        var left = Length;
        for (var n = random.Next(2, most + 1); n > 1; n--)
        {
            var piece = random.Next(left / (2 * n), 1 + (left * 3 / (2 * n)));
            left -= piece;
            yield return piece;
        }

        yield return left;
    }
}
