using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>The least worth for the money in tiny cases, against trying everything.</summary>
public sealed class WorthExhaustiveTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(20)) { BoundsWorth = true };

    public static TheoryData<bool, int> Blocks => new()
    {
        { false, 0 }, { false, 1 }, { false, 2 }, { true, 0 }, { true, 1 }, { true, 2 },
    };

    [Theory]
    [MemberData(nameof(Blocks))]
    public void No_bound_is_above_the_least_and_no_plan_below_it(bool recut, int block)
    {
        var (faults, known, sharp) = (new List<string>(), 0, 0);
        foreach (var seed in Enumerable.Range(1 + (block * 40), 40))
        {
            var (tiny, problem) = Case(seed, recut);
            var plan = Planner.Solve(problem, Limits);
            if (plan.Status == PlanStatus.Incomplete)
            {
                continue;
            }

            var least = new TryEveryLeftover(tiny, problem).LeastWorth(plan.WoodCost.MinorUnits);
            faults.AddRange(Auditor.Audit(problem, plan).Select(finding => $"seed {seed}: {finding}"));
            if (plan.WorthBound is not { } bound || bound.MinorUnits > least || plan.WorthUsed.MinorUnits < least || plan.WorthGap?.MinorUnits != plan.WorthConsumed.MinorUnits - plan.WorthReturned.MinorUnits - bound.MinorUnits)
            {
                faults.Add(string.Create(
                    CultureInfo.InvariantCulture, $"seed {seed}: bound {plan.WorthBound?.MinorUnits}, least {least}, used up {plan.WorthUsed.MinorUnits}, gap {plan.WorthGap?.MinorUnits}"));
            }

            known++;
            sharp += plan.WorthBound?.MinorUnits >= least - Math.Abs(least.GetValueOrDefault() / 20) ? 1 : 0;
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
        Assert.True(known >= 20 && sharp >= known / 4, $"{sharp} of {known} bounds are within a twentieth of the least.");
    }

    /// <summary>Wood dear enough that its worth tells plans apart, while handling counts next to nothing; small pieces are kept, and in some cases boards are old.</summary>
    private static (TinyCase Tiny, PlanningProblem Problem) Case(int seed, bool recut)
    {
        var dice = new Dice(seed, metric: true);
        var tiny = TinyCases.Create(seed, recut);
        var problem = TinyCases.ToProblem(tiny);
        var rate = new Money(10_000_000);
        return (tiny, problem with
        {
            Shop = problem.Shop with { Keep = new Dimensions(Length.FromMillimetres(1), Length.FromMillimetres(dice.From(2, 8)), Length.FromMillimetres(dice.From(4, 20))) },
            Rates = new WorthRates(new Money(100), new Dictionary<string, Money> { ["plate"] = rate, ["oak"] = rate }),
            Today = dice.Chance(3) ? new DateOnly(1972, 5, 1) : problem.Today,
        });
    }
}
