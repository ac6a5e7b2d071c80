using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>Rule 3 on a panel of two sub-panels of unequal widths: 100 and 90 mm of a strip each, where the planer takes 110 mm and a seam nothing.</summary>
public class SubPanelFaultTests
{
    private static readonly PlanningProblem Divided = SoundPlan.Problem with
    {
        Shop = SoundPlan.Problem.Shop with { PlanerWidth = Mm(110), SeamAllowance = Length.Zero },
    };

    /// <summary>A fault, by name, with what the auditor must say of it.</summary>
    private static readonly Dictionary<string, (PlanningProblem Problem, Plan Plan, string Says)> Faults = new()
    {
        ["wider than the planer"] = (WithPlaner(99), Halves(100, 90), "the planer takes"),
        ["said to be wider than the planer"] = (Divided, Halves(111, 79), "the planer takes"),
        ["do not add up"] = (Divided, Halves(100, 89), "ticks wide together"),
        ["add up to too much"] = (Narrower, Halves(100, 90), "ticks wide together"),
        ["wider than its strips"] = (Divided, Halves(99, 91), "reach"),
        ["narrower than a strip"] = (Divided, Halves(100, 39), "less than a strip"),
        ["one too few"] = (WithSeam(95, 5), Halves(100, 90), "must have 3 sub-panels"),
        ["one too many"] = (WithPlaner(300), Halves(100, 90), "must have 1 sub-panels"),
    };

    public static TheoryData<string> Names => [.. Faults.Keys];

    [Fact]
    public void Unequal_sub_panels_pass() => Assert.Empty(Auditor.Audit(Divided, Halves(100, 90)));

    [Fact]
    public void Equal_shares_that_are_rounded_up_to_a_tick_pass()
    {
        var odd = Divided with { Shop = Divided.Shop with { PanelOversize = Divided.Shop.PanelOversize - Length.FromTicks(1) } };
        var half = Length.FromTicks((Mm(190).Ticks + 1) / 2);
        Assert.Empty(Auditor.Audit(odd, Halves(100, 90) with { GlueUps = [Listed(Mm(100), Mm(90))] }));
        Assert.DoesNotContain(
            Auditor.Audit(odd, Halves(100, 90) with { GlueUps = [Listed(half, half)] }), finding => finding.Detail.Contains("together", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_fault_is_found_and_named(string fault) => Assert.Contains(
        Auditor.Audit(Faults[fault].Problem, Faults[fault].Plan),
        finding => finding.Rule == AuditRule.SubPanels && finding.Detail.Contains(Faults[fault].Says, StringComparison.Ordinal));

    private static PlanningProblem Narrower => Divided with { Shop = Divided.Shop with { PanelOversize = Mm(1) } };

    private static PlanningProblem WithPlaner(int width) => WithSeam(width, 0);

    private static PlanningProblem WithSeam(int planer, int seam) =>
        Divided with { Shop = Divided.Shop with { PlanerWidth = Mm(planer), SeamAllowance = Mm(seam) } };

    /// <summary>The sound plan with the bought board ripped at 105 mm to a strip of each sub-panel, which are said to be so wide.</summary>
    private static Plan Halves(int first, int second) => With(2, cut => cut with
    {
        Cuts = [new SawCut(1, FirstCut.Rip, At(0, 105, 400, 3))],
        Pieces = [new StripPiece(At(0, 0, 400, 105), "seat", 1, 1, 1, Mm(100)), new StripPiece(At(0, 108, 400, 95), "seat", 1, 2, 1, Mm(90))],
    }) with
    { GlueUps = [Listed(Mm(first), Mm(second))] };

    private static GlueUp Listed(Length first, Length second) => new(
        "seat", 1, "white-ash", [new SubPanel(1, first, [new StripPlace(1, 2, Mm(100))]), new SubPanel(2, second, [new StripPlace(1, 2, Mm(90))])]);
}
