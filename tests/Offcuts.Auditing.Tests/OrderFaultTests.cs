using Offcuts.Domain;
using Xunit;
using static Offcuts.Auditing.Tests.SoundPlan;

namespace Offcuts.Auditing.Tests;

// Rule 16: the yard delivers for 2.00 and takes no order below 15.00; the sound plan buys a board for 10.00 there.
public class OrderFaultTests
{
    private static readonly PlanningProblem Charging = Problem with
    {
        Terms = [new SupplierTerms("yard") { Delivery = new Money(200), MinimumOrder = new Money(1500) }],
    };

    private static readonly Plan Charged = Sound with { Charges = [new SupplierCharge("yard", new Money(200), new Money(500))] };

    private static readonly Dictionary<string, (AuditRule Rule, PlanningProblem Problem, Plan Plan)> Faults = new()
    {
        ["nothing charged"] = (AuditRule.Charges, Charging, Sound),
        ["delivery for less"] = (AuditRule.Charges, Charging, With(new SupplierCharge("yard", new Money(199), new Money(500)))),
        ["below the minimum"] = (AuditRule.Charges, Charging, With(new SupplierCharge("yard", new Money(200), Money.Zero))),
        ["charged twice"] = (AuditRule.Charges, Charging, With(new SupplierCharge("yard", new Money(100), new Money(250)), new SupplierCharge("yard", new Money(100), new Money(250)))),
        ["charged by another"] = (AuditRule.Charges, Charging, With(Charged.Charges[0], new SupplierCharge("mill", new Money(1), Money.Zero))),
        ["charged for nothing"] = (AuditRule.Charges, Problem, Charged),
        ["a stop that is none"] = (AuditRule.Charges, Charging, Charged with { StopCost = new Money(100) }),
        ["a stop that counts too little"] = (AuditRule.Charges, WithItems(Charging, stop: 300), Charged with { StopCost = new Money(200) }),
        ["bound above the outlay"] = (AuditRule.Bound, Charging, Charged with { WoodBound = new Money(1701) }),
        ["proved by the wood alone"] = (AuditRule.Status, Charging, Charged with { WoodBound = new Money(1000), Status = PlanStatus.Proved }),
        ["no charges"] = (AuditRule.WellFormed, Charging, Charged with { Charges = null! }),
        ["a step not reached"] = (AuditRule.Purchases, Stepped(from: 2), Bought(price: 900)),
        ["a step not used"] = (AuditRule.Purchases, Stepped(from: 1), Sound),
        ["wood at the price before the step"] = (AuditRule.Totals, Stepped(from: 1), Bought(price: 900) with { WoodCost = new Money(1000) }),
    };

    public static TheoryData<string> Names => [.. Faults.Keys];

    [Fact]
    public void What_the_terms_say_passes()
    {
        Assert.Empty(Auditor.Audit(Charging, Charged));
        Assert.Empty(Auditor.Audit(Stepped(from: 1), Bought(price: 900) with { WoodBound = new Money(800) }));
        Assert.Empty(Auditor.Audit(WithItems(Charging, stop: 300), Charged with { StopCost = new Money(300) }));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_fault_is_found_and_named(string fault) =>
        Assert.Contains(Auditor.Audit(Faults[fault].Problem, Faults[fault].Plan), finding => finding.Rule == Faults[fault].Rule);

    private static Plan With(params SupplierCharge[] charges) => Sound with { Charges = charges };

    // The screws come from another supplier.
    private static PlanningProblem WithItems(PlanningProblem problem, int stop) => problem with
    {
        Shop = problem.Shop with { SecondStop = new Money(stop) },
        Design = problem.Design with { Items = [problem.Design.Items[0] with { Supplier = "Screw House" }] },
    };

    private static PlanningProblem Stepped(int from) => Problem with { Offers = [Problem.Offers[0] with { Steps = [new PriceStep(from, new Money(900))] }] };

    private static Plan Bought(int price) => Sound with { Purchases = [new Purchase(Sound.Purchases[0].Offer with { Price = new Money(price) }, 1)], WoodCost = new Money(price) };
}
