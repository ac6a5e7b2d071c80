using System.Globalization;
using Offcuts.Auditing;
using Offcuts.Domain;
using Xunit;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>Tiny cases against trying everything by the cutting rules of DEVELOPERS.md.</summary>
public abstract class ExhaustiveTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(2));

    public static TheoryData<int> Blocks => [.. Enumerable.Range(0, 3)];

    [Theory]
    [MemberData(nameof(Blocks))]
    public void The_money_agrees_with_trying_everything(int block) => Check(Enumerable.Range(1 + (block * 100), 100));

    [Fact]
    public void Cases_that_were_wrong_once_agree() => Check(WrongOnce);

    /// <summary>Seeds that found a fault of the planner, and are not among the first.</summary>
    protected abstract IEnumerable<int> WrongOnce { get; }

    /// <summary>In how many of a hundred cases a dearer plan than the least is not a fault, as long as nothing false is said of it.</summary>
    protected virtual int MissesAllowed => 0;

    private void Check(IEnumerable<int> seeds)
    {
        var (faults, misses) = (new List<string>(), new List<string>());
        foreach (var seed in seeds)
        {
            var (problem, least) = Case(seed);
            var verdict = new TinyVerdict(Planner.Solve(problem, Limits), least);
            var findings = Auditor.Audit(problem, verdict.Plan).Select(finding => finding.ToString()).ToList();
            faults.AddRange(findings.Append(verdict.Falsehood()).OfType<string>().Select(Told));
            misses.AddRange(new[] { verdict.Miss() }.OfType<string>().Select(Told));

            string Told(string fault) => string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {fault}: {verdict}");
        }

        Assert.True(faults.Count == 0 && misses.Count <= MissesAllowed, string.Join("\n", faults.Concat(misses)));
    }

    /// <summary>The problem of a seed and the least money, null if not everything can be made.</summary>
    protected abstract (PlanningProblem Problem, int? Least) Case(int seed);

    protected static (PlanningProblem Problem, int? Least) Blanks(int seed, bool recut)
    {
        var tiny = TinyCases.Create(seed, recut);
        return (TinyCases.ToProblem(tiny), new TryEverything(tiny).LeastMoney());
    }
}

public sealed class TwoCutExhaustiveTests : ExhaustiveTests
{
    protected override (PlanningProblem Problem, int? Least) Case(int seed) => Blanks(seed, recut: false);

    protected override IEnumerable<int> WrongOnce => [731, 754, 903];
}

public sealed class ThreeCutExhaustiveTests : ExhaustiveTests
{
    protected override (PlanningProblem Problem, int? Least) Case(int seed) => Blanks(seed, recut: true);

    protected override IEnumerable<int> WrongOnce => [305, 731, 754, 1114, 1159, 11169, 11318, 13275, 14517, 14607, 14757, 15677, 16607];
}

public sealed class DefectExhaustiveTests : ExhaustiveTests
{
    /// <summary>Areas of one board that compete for the same parts are not always shared out for the best (seeds 50 and 101).</summary>
    protected override int MissesAllowed => 1;

    protected override (PlanningProblem Problem, int? Least) Case(int seed)
    {
        var tiny = TinyCases.WithDefects(TinyCases.Create(seed, recut: seed % 2 == 0), seed);
        return (TinyCases.ToProblem(tiny), new TryEverything(tiny).LeastMoney());
    }

    protected override IEnumerable<int> WrongOnce => [];
}

public sealed class PanelExhaustiveTests : ExhaustiveTests
{
    /// <summary>Strips of two boards whose widths must complement each other are not always found (seeds 40 and 285).</summary>
    protected override int MissesAllowed => 1;

    protected override (PlanningProblem Problem, int? Least) Case(int seed)
    {
        var tiny = TinyPanel.Create(seed);
        return (tiny.ToProblem(), new TryEveryStrip(tiny).LeastMoney());
    }

    protected override IEnumerable<int> WrongOnce => [307, 325, 340, 378, 10314, 14203, 14574, 14772, 15027, 15614, 16667];
}

public sealed class UnequalHalvesExhaustiveTests : ExhaustiveTests
{
    /// <summary>As with equal halves, strips whose widths must complement each other are not always found (seeds 40 and 285).</summary>
    protected override int MissesAllowed => 1;

    protected override (PlanningProblem Problem, int? Least) Case(int seed)
    {
        var tiny = TinyPanel.CreateHalves(seed);
        return (tiny.ToProblem(), new TryEveryStrip(tiny).LeastMoney());
    }

    protected override IEnumerable<int> WrongOnce => [];
}

public sealed class TwoPanelsExhaustiveTests : ExhaustiveTests
{
    /// <summary>As with one panel, strips whose widths must complement each other are not always found (of seeds 1000 to 1700: 1098, 1239, 1259, 1668).</summary>
    protected override int MissesAllowed => 1;

    protected override (PlanningProblem Problem, int? Least) Case(int seed)
    {
        var tiny = TinyTwoPanels.Create(seed);
        return (tiny.ToProblem(), new TryEveryMix(tiny).LeastMoney());
    }

    protected override IEnumerable<int> WrongOnce => [];
}

/// <summary>
/// The same cases where much wood of another species lies about that can make one part only, which may be of any: what costs money is then searched by itself
/// (<see cref="Search.PaidCore"/>), and the least money is what it was.
/// </summary>
public sealed class BesideMuchWoodExhaustiveTests : ExhaustiveTests
{
    private const int OwnedBoards = 12;

    protected override (PlanningProblem Problem, int? Least) Case(int seed)
    {
        var (problem, least) = Blanks(seed, recut: seed % 2 == 0);
        var extra = problem.Design.Parts[0] with
        {
            Name = "extra",
            Quantity = 2,
            Species = [.. problem.Offers.Select(offer => offer.Species).Append("pine").Distinct()],
            Group = null,
            Finished = problem.Design.Parts[0].Finished with { Length = Length.FromMillimetres(8), Width = Length.FromMillimetres(5) },
        };
        var owned = Enumerable.Range(0, OwnedBoards).Select(n => new Board
        {
            Id = BoardIds.FromNumber(100 + n),
            Kind = problem.Offers[0].Kind,
            Species = "pine",
            Surface = Surface.Surfaced,
            LoggedAt = DateTimeOffset.UnixEpoch,
            Size = new Dimensions(problem.Offers[0].Thickness, Length.FromMillimetres(14 + n), Length.FromMillimetres(30 + n)),
        });
        return (problem with { Design = problem.Design with { Parts = [.. problem.Design.Parts, extra] }, Stock = [.. problem.Stock, .. owned] }, least);
    }

    protected override IEnumerable<int> WrongOnce => [];
}
