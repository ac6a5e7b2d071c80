using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

public class PlantedFaultTests
{
    private static readonly Board Stock = Problem.Stock[0];
    private static readonly Offer Offer = Problem.Offers[0];
    private static readonly Part Rail = Problem.Design.Parts[0];
    private static readonly Panel Seat = Problem.Design.Panels[0];

    /// <summary>A fault in the plan, by name, and the rule that it breaks.</summary>
    private static readonly Dictionary<string, (AuditRule Rule, Plan Plan)> InPlan = new()
    {
        ["no boards"] = (AuditRule.WellFormed, Sound with { Boards = null! }),
        ["endless piece"] = (AuditRule.WellFormed, WithPiece(1, 3, piece => new WastePiece(piece.At with { X = Length.FromTicks(long.MaxValue) }))),
        ["unknown status"] = (AuditRule.WellFormed, Sound with { Status = (PlanStatus)9 }),
        ["wrong number"] = (AuditRule.Numbering, With(2, cut => cut with { Number = 3 })),
        ["unknown board"] = (AuditRule.BoardIdentity, With(1, cut => cut with { BoardId = "B" })),
        ["from both"] = (AuditRule.BoardIdentity, With(1, cut => cut with { OfferId = "yard/ash" })),
        ["another surface"] = (AuditRule.BoardIdentity, With(1, cut => cut with { Surface = Surface.Surfaced })),
        ["hidden defect"] = (AuditRule.BoardIdentity, With(1, cut => cut with { Defects = [] })),
        ["second copy of one"] = (AuditRule.Supply, With(1, cut => cut with { Copy = 2 })),
        ["used twice"] = (AuditRule.Supply, Sound with { Boards = [.. Sound.Boards, Sound.Boards[0] with { Number = 3 }] }),
        ["off the board"] = (AuditRule.OnBoard, WithPiece(1, 3, piece => new WastePiece(piece.At with { Length = Mm(55) }))),
        ["no width"] = (AuditRule.OnBoard, WithPiece(1, 3, piece => new WastePiece(piece.At with { Width = Length.Zero }))),
        ["one on another"] = (AuditRule.Overlap, WithPiece(1, 1, piece => ((PartPiece)piece) with { At = At(0, 52, 300, 50) })),
        ["a hole"] = (AuditRule.Coverage, With(1, cut => cut with { Pieces = [.. cut.Pieces.Take(3)] })),
        ["half a cut"] = (AuditRule.SawCuts, With(1, cut => cut with
        {
            Cuts = [cut.Cuts[0] with { Kerf = At(300, 0, 3, 50) }, cut.Cuts[1], cut.Cuts[2]],
            Pieces = [.. cut.Pieces, new WastePiece(At(300, 50, 3, 53))],
        })),
        ["cuts out of order"] = (AuditRule.SawCuts, With(1, cut => cut with { Cuts = [cut.Cuts[1] with { Order = 1 }, cut.Cuts[0] with { Order = 2 }, cut.Cuts[2]] })),
        ["thin kerf"] = (AuditRule.SawCuts, With(2, cut => cut with
        {
            Cuts = [cut.Cuts[0] with { Kerf = At(0, 100, 400, 2) }],
            Pieces = [cut.Pieces[0], ((StripPiece)cut.Pieces[1]) with { At = At(0, 102, 400, 101), NetWidth = Mm(96) }],
        })),
        ["a piece too long"] = (AuditRule.BlankSize, WithPiece(1, 0, piece => ((PartPiece)piece) with { At = At(0, 0, 299, 50) })),
        ["turned"] = (AuditRule.BlankSize, WithPiece(1, 0, piece => ((PartPiece)piece) with { Turned = true })),
        ["counts for too much"] = (AuditRule.StripSize, WithPiece(2, 0, piece => ((StripPiece)piece) with { NetWidth = Mm(96) })),
        ["another copy"] = (AuditRule.Demand, WithPiece(1, 1, piece => ((PartPiece)piece) with { Copies = [new PartCopy(1)] })),
        ["nothing asked for"] = (AuditRule.Demand, WithPiece(1, 1, piece => ((PartPiece)piece) with { Part = "leg" })),
        ["one too few"] = (AuditRule.Demand, WithPiece(1, 1, piece => new LeftoverPiece(piece.At))),
        ["missing though made"] = (AuditRule.Demand, Sound with { Missing = [new MissingPart("rail", 1, MissingReason.TooFew)] }),
        ["missing for no reason"] = (AuditRule.MissingReason, Sound with { Missing = [new MissingPart("rail", 1, MissingReason.TooShort)] }),
        ["leftover over a knot"] = (AuditRule.Defects, WithPiece(1, 3, piece => new LeftoverPiece(piece.At))),
        ["leftover too small"] = (AuditRule.Leftovers, WithPiece(1, 3, piece => new LeftoverPiece(piece.At))),
        ["leftover thrown away"] = (AuditRule.Leftovers, WithPiece(1, 2, piece => new WastePiece(piece.At))),
        ["too few sub-panels"] = (AuditRule.SubPanels, Sound with { GlueUps = [Sound.GlueUps[0] with { SubPanels = [] }] }),
        ["needs less"] = (AuditRule.SubPanels, Sound with { GlueUps = [Sound.GlueUps[0] with { SubPanels = [Sound.GlueUps[0].SubPanels[0] with { NeededWidth = Mm(180) }] }] }),
        ["strip not listed"] = (AuditRule.GlueUps, Sound with
        {
            GlueUps = [Sound.GlueUps[0] with { SubPanels = [Sound.GlueUps[0].SubPanels[0] with { Strips = [new StripPlace(1, 2, Mm(95))] }] }],
        }),
        ["strip from elsewhere"] = (AuditRule.GlueUps, Sound with
        {
            GlueUps = [Sound.GlueUps[0] with { SubPanels = [new SubPanel(1, Mm(190), [new StripPlace(1, 2, Mm(95)), new StripPlace(2, 1, Mm(95))])] }],
        }),
        ["panel said to be another"] = (AuditRule.PanelSpecies, Sound with { GlueUps = [Sound.GlueUps[0] with { Species = "black-cherry" }] }),
        ["not bought"] = (AuditRule.Purchases, Sound with { Purchases = [] }),
        ["bought twice"] = (AuditRule.Purchases, Sound with { Purchases = [Sound.Purchases[0] with { Count = 2 }] }),
        ["bought for less"] = (AuditRule.Purchases, Sound with { Purchases = [new Purchase(Sound.Purchases[0].Offer with { Price = new Money(1) }, 1)] }),
        ["wood cost"] = (AuditRule.Totals, Sound with { WoodCost = new Money(1001) }),
        ["item cost"] = (AuditRule.Totals, Sound with { ItemCost = Money.Zero }),
        ["worth consumed"] = (AuditRule.Totals, Sound with { WorthConsumed = new Money(1) }),
        ["worth returned"] = (AuditRule.Totals, Sound with { WorthReturned = new Money(1) }),
        ["bound above cost"] = (AuditRule.Bound, Sound with { WoodBound = new Money(1001) }),
        ["worth bound above what is used up"] = (AuditRule.Bound, Sound with { WorthBound = Sound.WorthUsed + new Money(1) }),
        ["proved with a gap"] = (AuditRule.Status, Sound with { Status = PlanStatus.Proved }),
        ["not said to be proved"] = (AuditRule.Status, Sound with { WoodBound = Sound.WoodCost }),
    };

    /// <summary>The plan is sound, but not for this problem: the change, by name, and the rule that the plan breaks then.</summary>
    private static readonly Dictionary<string, (AuditRule Rule, PlanningProblem Problem)> InProblem = new()
    {
        ["reserved"] = (AuditRule.BoardIdentity, Problem with { Stock = [Stock with { Status = BoardStatus.Reserved }] }),
        ["knot where a rail lies"] = (AuditRule.Defects, Problem with { Stock = [Stock with { Defects = [new Defect("knot", At(100, 10, 5, 5))] }] }),
        ["paint grade"] = (AuditRule.Appearance, Problem with { Stock = [Stock with { Appearance = Appearance.Paint }] }),
        ["sold out"] = (AuditRule.Supply, Problem with { Offers = [Offer with { Available = 0 }] }),
        ["another species wanted"] = (AuditRule.Species, Changed(part: Rail with { Species = ["black-cherry"] })),
        ["too thin to mill"] = (AuditRule.Thickness, Changed(part: Rail with { Finished = Rail.Finished with { Thickness = Mm(21) } })),
        ["narrow jointer"] = (AuditRule.MachineWidth, Problem with { Shop = Problem.Shop with { JointerWidth = Mm(49) } }),
        ["narrower strips"] = (AuditRule.StripSize, Changed(panel: Seat with { WidestStrip = Mm(94) })),
        ["wider strips"] = (AuditRule.StripSize, Changed(panel: Seat with { NarrowestStrip = Mm(96) })),
        ["narrow planer"] = (AuditRule.SubPanels, Problem with { Shop = Problem.Shop with { PlanerWidth = Mm(189) } }),
        ["wider panel"] = (AuditRule.SubPanels, Changed(panel: Seat with { Finished = Seat.Finished with { Width = Mm(185) } })),
        ["one more wanted"] = (AuditRule.Demand, Changed(part: Rail with { Quantity = 3 })),
    };

    public static TheoryData<string> PlanFaults => [.. InPlan.Keys];

    public static TheoryData<string> ProblemFaults => [.. InProblem.Keys];

    [Fact]
    public void A_sound_plan_passes() => Assert.Empty(Auditor.Audit(Problem, Sound));

    [Theory]
    [MemberData(nameof(PlanFaults))]
    public void A_fault_in_the_plan_is_found_and_named(string fault) =>
        Assert.Contains(Auditor.Audit(Problem, InPlan[fault].Plan), finding => finding.Rule == InPlan[fault].Rule);

    [Theory]
    [MemberData(nameof(ProblemFaults))]
    public void A_plan_for_another_problem_is_found_out(string fault) =>
        Assert.Contains(Auditor.Audit(InProblem[fault].Problem, Sound), finding => finding.Rule == InProblem[fault].Rule);

    [Fact]
    public void A_finish_group_of_two_species_is_found()
    {
        var cherry = Problem with { Offers = [Offer with { Species = "black-cherry" }] };
        var plan = With(2, cut => cut with { Species = "black-cherry" }) with { GlueUps = [Sound.GlueUps[0] with { Species = "black-cherry" }] };
        Assert.Contains(Auditor.Audit(cherry, plan), finding => finding.Rule == AuditRule.FinishGroup);
    }

    private static PlanningProblem Changed(Part? part = null, Panel? panel = null) => Problem with
    {
        Design = Problem.Design with { Parts = [part ?? Rail], Panels = [panel ?? Seat] },
    };
}
