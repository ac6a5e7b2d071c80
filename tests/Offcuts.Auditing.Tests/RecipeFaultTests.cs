using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

/// <summary>Faults of resawn, laminated and short blanks, planted into the sound plan: its rails are 300 long, 20 thick, from a board 25 thick.</summary>
public sealed class RecipeFaultTests
{
    private static readonly Dictionary<string, (AuditRule Rule, PlanningProblem Problem, Plan Plan)> Faults = new()
    {
        ["more copies than the blank holds"] = (AuditRule.Recipe, Problem, WithRail(rail => rail with { Copies = [new PartCopy(1), new PartCopy(2)] })),
        ["no recipe"] = (AuditRule.Recipe, Problem, WithRail(rail => rail with { Recipe = default })),
        ["two in a row on one length"] = (AuditRule.BlankSize, Problem, WithRail(rail => rail with { Recipe = new Recipe(2, 1, 1) })),
        ["in a row though long enough"] = (AuditRule.Recipe, Safe(200), WithRail(rail => rail with { Recipe = new Recipe(1, 1, 1, Carried: true) })),
        ["shorter than is safe"] = (AuditRule.ShortBlank, Safe(301), Sound),
        ["resawn without a saw"] = (AuditRule.MachineWidth, Problem, WithRail(rail => rail with { Recipe = new Recipe(1, 2, 1) })),
        ["resawn too thin"] = (AuditRule.Thickness, InShop(Problem.Shop with { ResawHeight = Mm(100) }), WithRail(rail => rail with { Recipe = new Recipe(1, 2, 1) })),
        ["layers not allowed"] = (AuditRule.Recipe, Problem, WithRail(rail => rail with { Recipe = new Recipe(1, 1, 2) })),
        ["half a leg"] = (AuditRule.Laminations, Layered, WithRail(rail => rail with { Recipe = new Recipe(1, 1, 2) })),
        ["layers not listed"] = (AuditRule.Laminations, Layered, Glued with { Laminations = [] }),
        ["layers from elsewhere"] = (AuditRule.Laminations, Layered, Glued with { Laminations = [new Lamination("rail", 1, "white-ash", [new LayerPlace(1, 1), new LayerPlace(2, 2)])] }),
        ["layers of two species"] = (AuditRule.LaminatedPart, Layered, Glued with { Laminations = [Glued.Laminations[0] with { Species = "black-cherry" }] }),
    };

    private static PlanningProblem Layered => Problem with
    {
        Design = Problem.Design with { Parts = [Problem.Design.Parts[0] with { Quantity = 1, Layers = 2 }] },
    };

    /// <summary>Both rails' blanks as the two layers of one rail, each 10 thick.</summary>
    private static Plan Glued => With(1, cut => cut with
    {
        Pieces = [.. cut.Pieces.Select((piece, index) => piece is PartPiece rail
            ? rail with { Copies = [new PartCopy(1, index + 1)], Recipe = new Recipe(1, 1, 2) }
            : piece)],
    }) with
    {
        Laminations = [new Lamination("rail", 1, "white-ash", [new LayerPlace(1, 1), new LayerPlace(2, 1)])],
    };

    public static TheoryData<string> Names => [.. Faults.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_fault_is_found_and_named(string fault) =>
        Assert.Contains(Auditor.Audit(Faults[fault].Problem, Faults[fault].Plan), finding => finding.Rule == Faults[fault].Rule);

    [Fact]
    public void Sound_layers_pass() => Assert.Empty(Auditor.Audit(
        Layered with { Design = Layered.Design with { Panels = Problem.Design.Panels } }, Glued));

    private static PlanningProblem Safe(int shortest) => InShop(Problem.Shop with { ShortBlanks = ShortBlanks.Refuse, ShortestAtPlaner = Mm(shortest), ShortestAtJointer = Mm(shortest) });

    private static PlanningProblem InShop(Shop shop) => Problem with { Shop = shop };

    private static Plan WithRail(Func<PartPiece, PartPiece> change) => WithPiece(1, 0, piece => change((PartPiece)piece));
}
