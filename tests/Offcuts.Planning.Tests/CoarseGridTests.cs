using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>Sizes that fall between the cells of a grid: with them rounded up, two halves may fit by cells beside a whole of which they are half, but not by the kerf between them.</summary>
public sealed class CoarseGridTests
{
    [Theory]
    [InlineData(PlanEffort.Glance)]
    [InlineData(PlanEffort.Quick)]
    public void What_fits_by_cells_only_is_not_planned(PlanEffort effort)
    {
        foreach (var seed in Enumerable.Range(1, 150))
        {
            var dice = new Random(seed);
            var whole = Length.FromTicks(2 * dice.Next(150_000, 250_000));
            var problem = new PlanningProblem
            {
                // Without it the blanks of two halves are longer than that of a whole anyway.
                Shop = new Shop { Recut = true, Rough = new Shop().Rough with { Length = Length.Zero } },
                Stock = [.. Enumerable.Range(1, 25).Select(number => new Board
                {
                    Id = $"B{number}",
                    Species = "white-ash",
                    Size = new Dimensions(Length.FromInches(1), Length.FromTicks(dice.Next(60_000, 80_000)), whole + Length.FromTicks(dice.Next(1, 400_000))),
                    LoggedAt = DateTimeOffset.UnixEpoch,
                })],
                Offers = [],
                Design = new Design { Name = "halves", Parts = [Part("whole", 6, whole), Part("half", 12, Length.FromTicks(whole.Ticks / 2)), Part("odd", 5, Length.FromTicks(dice.Next(90_000, 300_000)))] },
                Rates = WorthRates.Default,
                Today = RandomShops.Today,
            };
            Assert.Empty(Auditor.Audit(problem, Planner.Solve(problem, new PlanLimits(TimeSpan.FromMilliseconds(200)) { Effort = effort })));
        }
    }

    private static Part Part(string name, int quantity, Length length) => new()
    {
        Name = name,
        Quantity = quantity,
        Finished = new Dimensions(Length.FromInches(0, 3, 4), Length.FromTicks(25_400), length),
        Species = ["white-ash"],
    };
}
