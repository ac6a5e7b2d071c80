using Offcuts.Auditing;
using Offcuts.Domain;
using Offcuts.Planning.Fitting;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Ordering;

/// <summary>Plans where suppliers ask more than their prices.</summary>
public class OrderTests
{
    private static readonly PlanLimits Limits = new(TimeSpan.FromSeconds(3));

    // Rails 600 x 60 mm of ash; a bought board of 700 x 100 gives one rail, so every number below is whole boards.
    [Fact]
    public void Delivery_may_make_the_dearer_wood_the_cheaper_order()
    {
        var plan = Solve(Rails(2, Offer("far", 500), Offer("near", 800)) with { Terms = [new SupplierTerms("far") { Delivery = new Money(1000) }] });
        Assert.Equal(("near", 1600, 0), (Supplier(plan), plan.WoodCost.MinorUnits, plan.ChargeCost.MinorUnits));

        var many = Solve(Rails(5, Offer("far", 500), Offer("near", 800)) with { Terms = [new SupplierTerms("far") { Delivery = new Money(1000) }] });
        Assert.Equal(("far", 2500, 1000), (Supplier(many), many.WoodCost.MinorUnits, many.ChargeCost.MinorUnits));
        Assert.Equal(new SupplierCharge("far", new Money(1000), Money.Zero), Assert.Single(many.Charges));
    }

    [Fact]
    public void What_an_order_lacks_of_the_minimum_is_paid()
    {
        var terms = new SupplierTerms("mill") { MinimumOrder = new Money(1500) };
        var few = Solve(Rails(2, Offer("mill", 500), Offer("shop", 700)) with { Terms = [terms] });
        Assert.Equal(("shop", 1400), (Supplier(few), few.Outlay.MinorUnits));

        // Of the mill alone: 1000 for two, and up to 1500.
        var only = Solve(Rails(2, Offer("mill", 500)) with { Terms = [terms] });
        Assert.Equal((1000, 500, 1500), (only.WoodCost.MinorUnits, only.ChargeCost.MinorUnits, only.TotalCost.MinorUnits));
    }

    [Fact]
    public void Items_of_the_supplier_count_for_its_minimum_and_bring_its_delivery_anyway()
    {
        var problem = Rails(2, Offer("mill", 500), Offer("shop", 700)) with { Terms = [new SupplierTerms("mill") { MinimumOrder = new Money(1500), Delivery = new Money(300) }] };
        var plan = Solve(problem with { Design = problem.Design with { Items = [new BoughtItem("screws", 1, new Money(600), "Mill")] } });
        Assert.Equal(("mill", 1000, 300, 1900), (Supplier(plan), plan.WoodCost.MinorUnits, plan.ChargeCost.MinorUnits, plan.TotalCost.MinorUnits));
    }

    [Fact]
    public void A_second_stop_must_save_what_it_is_worth()
    {
        Assert.Equal(1400, Solve(Two(0)).WoodCost.MinorUnits);
        var worth = Solve(Two(90));
        Assert.Equal((1400, 90, 1490, 1400), (worth.WoodCost.MinorUnits, worth.StopCost.MinorUnits, worth.Outlay.MinorUnits, worth.TotalCost.MinorUnits));
        var not = Solve(Two(110));
        Assert.Equal((1500, 0), (not.WoodCost.MinorUnits, not.StopCost.MinorUnits));
    }

    [Theory]
    [InlineData(1400, 1)]
    [InlineData(1399, 0)]
    public void A_ranking_leaves_out_by_the_money_that_is_spent(int most, int ranked)
    {
        var problem = Two(90);
        var places = new List<FitPlace>();
        var summary = new FitSearch(
            new FitStock(problem, null), new FitQuestion { MostMoney = new Money(most) }, new FitNotebook(),
            (_, asked, limits, cancellation) => Planner.Solve(asked, limits, null, cancellation))
            .Run([new SavedDesign("two", "", problem.Design)], told => places.AddRange(told is FitPlace place ? [place] : []), CancellationToken.None, CancellationToken.None);
        Assert.Equal((ranked, 1 - ranked), (places.Count, summary.TooDear));
        Assert.All(places, place => Assert.Equal((1400, 90), (place.Outcome.Cost.MinorUnits, place.Outcome.StopCost.MinorUnits)));
    }

    [Fact]
    public void A_price_step_counts_for_all_that_is_bought_of_the_offer()
    {
        var stepped = Offer("mill", 500) with { Steps = [new PriceStep(3, new Money(400)), new PriceStep(5, new Money(300))] };
        Assert.Equal(1000, Solve(Rails(2, stepped)).WoodCost.MinorUnits);
        Assert.Equal(1200, Solve(Rails(3, stepped)).WoodCost.MinorUnits);
        var five = Solve(Rails(5, stepped));
        Assert.Equal(new Money(300), Assert.Single(five.Purchases).Offer.Price);
        Assert.Equal(1500, five.WoodCost.MinorUnits);
    }

    [Fact]
    public void A_supplier_that_cannot_give_everything_does_not_hide_the_proof()
    {
        // The near one has two boards only; five are wanted, so the far one is needed and everything is ordered there.
        var problem = Rails(5, Offer("near", 500) with { Available = 2 }, Offer("far", 500)) with
        {
            Terms = [new SupplierTerms("near") { Delivery = new Money(100) }, new SupplierTerms("far") { Delivery = new Money(2000) }],
        };
        Assert.Equal(4500, Solve(problem).Outlay.MinorUnits);
    }

    [Fact]
    public void Plans_of_random_shops_pass_the_auditor_and_no_bound_is_above_a_plan_that_can_be_made()
    {
        var (judged, proved) = (0, 0);
        foreach (var seed in Enumerable.Range(7000, 40))
        {
            var problem = RandomTerms.Add(RandomShops.Create(seed, RandomShops.Kind(seed, ShopScale.Smallest) with { MustBuy = true }), seed);
            var plan = Planner.Solve(problem, new PlanLimits(TimeSpan.FromMilliseconds(800)));
            var findings = Auditor.Audit(problem, plan);
            Assert.True(findings.Count == 0, FormattableString.Invariant($"seed {seed}: {string.Join("; ", findings)}"));
            Assert.Equal(Outlay(problem, plan), plan.Outlay.MinorUnits);
            proved += plan.Status == PlanStatus.Proved && plan.WoodCost > Money.Zero ? 1 : 0;
            foreach (var suppliers in (string[][])[["yard"], ["store"], ["yard", "store"]])
            {
                // Planned by the prices alone, and then charged by the terms: a plan like any other.
                var plain = problem with
                {
                    Terms = [],
                    Shop = problem.Shop with { SecondStop = Money.Zero },
                    Offers = [.. problem.Offers.Where(offer => suppliers.Contains(offer.Supplier)).Select(offer => offer with { Steps = [] })],
                };
                var other = Planner.Solve(plain, new PlanLimits(TimeSpan.FromMilliseconds(200)));
                if (Lacks(other).SequenceEqual(Lacks(plan)))
                {
                    judged++;
                    Assert.True(
                        plan.WoodBound.MinorUnits <= Outlay(problem, other),
                        FormattableString.Invariant($"seed {seed}: the bound is {plan.WoodBound.MinorUnits}, but of {string.Join(' ', suppliers)} it costs {Outlay(problem, other)}."));
                }
            }
        }

        Assert.True(judged >= 30 && proved >= 10, FormattableString.Invariant($"Only {judged} plans were compared, {proved} were proved."));
    }

    // By the words of rule 16, from the plan's boards and the price lists.
    private static long Outlay(PlanningProblem problem, Plan plan)
    {
        var wood = plan.Boards.Where(board => board.OfferId is not null).GroupBy(board => board.OfferId!).Select(offer =>
        {
            var sold = problem.Offers.First(each => each.Id == offer.Key);
            decimal Units(BoardCut board) => sold.Form switch
            {
                ByThePiece => 1,
                ByRunningLength running => board.Size.Length.Millimetres / (running.Unit == RunningUnit.Foot ? 304.8m : 1000m),
                ByVolume volume => volume.Unit == VolumeUnit.BoardFoot ? BoardMeasure.BoardFeet(board.Size) : BoardMeasure.CubicMetres(board.Size),
                _ => throw new InvalidOperationException(),
            };
            var all = decimal.Round(offer.Sum(Units), 9);
            var price = sold.Steps.Where(step => step.From <= all).Select(step => step.Price).DefaultIfEmpty(StepPrices.UnitPrice(sold)).Min();
            return (sold.Supplier, Cost: offer.Sum(board => (long)decimal.Ceiling(decimal.Round(price.MinorUnits * Units(board), 9))));
        }).GroupBy(offer => offer.Supplier).ToDictionary(supplier => supplier.Key, supplier => supplier.Sum(offer => offer.Cost));
        var terms = problem.Terms.ToDictionary(each => each.Supplier);
        return wood.Sum(order => terms[order.Key].Delivery.MinorUnits + Math.Max(order.Value, terms[order.Key].MinimumOrder.MinorUnits))
            + (problem.Shop.SecondStop.MinorUnits * Math.Max(0, wood.Count - 1));
    }

    private static IEnumerable<(string, int)> Lacks(Plan plan) => plan.Missing.Select(missing => (missing.Name, missing.Quantity)).Order();

    private static Plan Solve(PlanningProblem problem)
    {
        var plan = Planner.Solve(problem, Limits);
        Assert.Empty(Auditor.Audit(problem, plan));
        Assert.Equal(PlanStatus.Proved, plan.Status);
        return plan;
    }

    private static string Supplier(Plan plan) => Assert.Single(plan.Purchases.Select(purchase => purchase.Offer.Offer.Supplier).Distinct());

    private static Offer Offer(string supplier, int price, string species = "white-ash") => new()
    {
        Id = $"{supplier}/{species}",
        Supplier = supplier,
        Species = species,
        Thickness = Mm(25),
        Form = new ByThePiece(Mm(100), Mm(700), new Money(price)),
    };

    private static PlanningProblem Rails(int count, params Offer[] offers) => new()
    {
        Shop = new Shop(),
        Stock = [],
        Offers = offers,
        Design = new Design
        {
            Name = "frame",
            Parts = [new Part { Name = "rail", Quantity = count, Finished = new Dimensions(Mm(20), Mm(60), Mm(600)), Species = ["white-ash"] }],
        },
    };

    // One rail of each species: cherry only at the shop, ash 100 cheaper at the mill.
    private static PlanningProblem Two(int stop)
    {
        var problem = Rails(1, Offer("mill", 500), Offer("shop", 600), Offer("shop", 900, "black-cherry"));
        return problem with
        {
            Shop = problem.Shop with { SecondStop = new Money(stop) },
            Design = problem.Design with { Parts = [problem.Design.Parts[0], problem.Design.Parts[0] with { Name = "other", Species = ["black-cherry"] }] },
        };
    }

    private static Length Mm(int millimetres) => Length.FromMillimetres(millimetres);
}
