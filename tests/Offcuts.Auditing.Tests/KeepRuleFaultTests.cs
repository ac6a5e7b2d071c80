using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>
/// Faults about what is kept. Of board A the sound plan keeps 240 x 103 and throws away 54 x 103 with a knot of 10 x 10 in it, at 34 from its left end and 60 from the
/// edge: beside it 54 x 60 and 34 x 103 are clear.
/// </summary>
public class KeepRuleFaultTests
{
    private static readonly string[] Ash = ["white-ash"];

    public static TheoryData<string, KeepRule, bool> Rules => new()
    {
        { "the same as without", Rule(), true },
        { "kept by its own entry", Rule(Keep(length: 240, width: 103)), true },
        { "too short for the entry", Rule(Keep(length: 241)), false },
        { "too narrow for the entry", Rule(Keep(width: 104)), false },
        { "too thin for the entry", Rule(new KeepEntry(KeepWord.Keep, Ash, [new(Thickness: Mm(26))])), false },
        { "of just the section", Rule(new KeepEntry(KeepWord.Keep, Ash, [new(Length: Mm(100), Section: Mm(25) * Mm(103))])), true },
        { "of too small a section", Rule(new KeepEntry(KeepWord.Keep, Ash, [new(Section: Mm(25) * Mm(104))])), false },
        { "never kept", Rule(new KeepEntry(KeepWord.Never, Ash, [])), false },
        { "never kept of another species", Rule(new KeepEntry(KeepWord.Never, ["black-cherry"], [])), true },
        { "always kept before it is never", Rule(new(KeepWord.Always, Ash, [new(Length: Mm(200))]), new(KeepWord.Never, Ash, [])), true },
        { "never kept before it is always", Rule(new(KeepWord.Never, Ash, []), new(KeepWord.Always, Ash, [])), false },
        { "under the length below which it goes", Rule(new KeepEntry(KeepWord.Never, null, [new(Length: Mm(241))])), false },
        { "not under it", Rule(new KeepEntry(KeepWord.Never, null, [new(Length: Mm(240))])), true },
        { "of two sizes the second", Rule(new KeepEntry(KeepWord.Keep, null, [new(Length: Mm(500)), new(Length: Mm(100), Width: Mm(100))])), true },
        { "waste that holds what would be kept below the knot", Rule(Keep(length: 54, width: 60)), false },
        { "waste that does not hold it by a hair", Rule(Keep(length: 54, width: 61)), true },
        { "waste that holds what would be kept before the knot", Rule(Keep(length: 34, width: 103)), false },
        { "waste that holds one of two sizes", Rule(new KeepEntry(KeepWord.Keep, null, [new(Length: Mm(100), Width: Mm(40)), new(Length: Mm(30), Width: Mm(100))])), false },
    };

    [Theory]
    [MemberData(nameof(Rules), DisableDiscoveryEnumeration = true)]
    public void A_leftover_is_what_the_rule_keeps(string what, KeepRule rule, bool isSound)
    {
        var problem = Problem with { Shop = Problem.Shop with { KeepRule = rule } };
        var findings = Auditor.Audit(problem, Sound).Where(finding => finding.Rule == AuditRule.Leftovers).ToList();
        Assert.True(findings.Count == 0 == isSound, $"{what}: {string.Join("; ", findings)}");
    }

    [Fact]
    public void The_worth_of_what_is_not_kept_is_nothing()
    {
        var problem = Problem with { Shop = Problem.Shop with { KeepRule = Rule(new KeepEntry(KeepWord.Never, Ash, [])) } };
        Assert.Equal(2, Auditor.Audit(problem, Sound).Count(finding => finding.Rule == AuditRule.Totals));
        var worthless = Sound with { WorthConsumed = Money.Zero, WorthReturned = Money.Zero };
        Assert.DoesNotContain(Auditor.Audit(problem, worthless), finding => finding.Rule == AuditRule.Totals);
    }

    private static KeepEntry Keep(int? length = null, int? width = null) => new(
        KeepWord.Keep, null, [new(length is { } along ? Mm(along) : null, width is { } across ? Mm(across) : null)]);

    private static KeepRule Rule(params KeepEntry[] entries) => new(entries);
}
