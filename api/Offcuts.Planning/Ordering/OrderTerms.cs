using Offcuts.Domain;

namespace Offcuts.Planning.Ordering;

/// <summary>What makes the money of a plan other than the sum of its boards' prices: terms of suppliers, further stops, price steps.</summary>
internal sealed class OrderTerms
{
    /// <summary>With more choices than these only the sets of up to two suppliers, and all of them, are looked at.</summary>
    private const int MostChoices = 512;
    private readonly HashSet<string> itemSuppliers;
    private readonly HashSet<string> mattering;
    private readonly Dictionary<string, long> items;
    private readonly bool givesAway;

    public OrderTerms(PlanningProblem problem)
    {
        Problem = problem;
        Stepped = [.. problem.Offers.Where(offer => offer.Steps.Count > 0 && offer.Available != 0)];
        itemSuppliers = [.. problem.Design.Items.Where(item => item.Supplier is not null).Select(item => Slug.Of(item.Supplier!)).Where(name => name.Length > 0)];
        items = problem.Design.Items.Where(item => item.Supplier is not null).GroupBy(item => Slug.Of(item.Supplier!), StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Sum(item => item.Cost.MinorUnits), StringComparer.Ordinal);
        var suppliers = problem.Offers.Where(offer => offer.Available != 0).Select(offer => Slug.Of(offer.Supplier)).ToHashSet(StringComparer.Ordinal);
        var stopsCount = problem.Shop.SecondStop > Money.Zero && suppliers.Union(itemSuppliers).Count() > 1;
        givesAway = problem.Offers.Any(offer => StepPrices.UnitPrice(offer) == Money.Zero || offer.Steps.Any(step => step.Price == Money.Zero));
        mattering = [.. suppliers.Where(supplier => stopsCount || SupplierOrders.TermsOf(problem, supplier).Any)];
    }

    public PlanningProblem Problem { get; }

    /// <summary>The offers with price steps.</summary>
    public List<Offer> Stepped { get; }

    /// <summary>Whether the money is anything else than the sum of the boards' prices.</summary>
    public bool Any => mattering.Count > 0 || Stepped.Count > 0 || itemSuppliers.Any(supplier => SupplierOrders.TermsOf(Problem, supplier).Any)
        || (Problem.Shop.SecondStop > Money.Zero && itemSuppliers.Count > 1);

    /// <summary>Whether it matters that something is bought of the offer's supplier.</summary>
    public bool Matters(Offer offer) => mattering.Contains(Slug.Of(offer.Supplier));

    /// <summary>The price of one unit of the n-th offer with steps, at a step.</summary>
    public Money PriceOf(int offer, int step) => step == 0 ? StepPrices.UnitPrice(Stepped[offer]) : Stepped[offer].Steps[step - 1].Price;

    /// <summary>The choice that covers all others: every supplier, every last step.</summary>
    public OrderChoice Widest => new(mattering, [.. Stepped.Select(offer => offer.Steps.Count)]);

    /// <summary>The choice in which no wood is bought of anyone with terms.</summary>
    public OrderChoice Least => new(new HashSet<string>(StringComparer.Ordinal), [.. Stepped.Select(_ => 0)]);

    /// <summary>All choices; <paramref name="isTruncated"/> says whether some were left out because there are too many.</summary>
    public IReadOnlyList<OrderChoice> Choices(out bool isTruncated)
    {
        var ordered = mattering.Order(StringComparer.Ordinal).ToList();
        var steps = Stepped.Aggregate<Offer, List<List<int>>>([[]], (known, offer) => [.. known.SelectMany(list =>
            Enumerable.Range(0, known.Count > MostChoices ? 1 : offer.Steps.Count + 1).Select(step => (List<int>)[.. list, step]))]);
        var all = ordered.Count <= 9 && (steps.Count << ordered.Count) <= MostChoices;
        isTruncated = !all;
        var sets = all ? Subsets(ordered) : [[], .. ordered.Select(one => (List<string>)[one]), .. Pairs(ordered), ordered];
        var choices = sets.DistinctBy(set => string.Join(' ', set)).SelectMany(set => steps.Where(each => Suits(set, each)).Select(each =>
            new OrderChoice(set.ToHashSet(StringComparer.Ordinal), each)));
        return [.. choices.Take(2 * MostChoices)];
    }

    /// <summary>No plan of the choice has a smaller outlay: the charges, and the goods for at least as much as the wood, the minimum orders and the steps ask.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="wood">A bound on the money for wood at the choice's prices, in minor units.</param>
    public long LeastOutlay(OrderChoice choice, long wood) => Fixed(choice) + Math.Max(
        wood,
        choice.Suppliers.Sum(supplier => Math.Max(Lacking(supplier), LeastForSteps(choice, supplier)))
            + Stepped.Where(offer => !Matters(offer)).Select(offer => Slug.Of(offer.Supplier)).Distinct().Sum(supplier => LeastForSteps(choice, supplier)));

    /// <summary>What the outlay of every plan of a choice has beyond its goods.</summary>
    public long Fixed(OrderChoice choice)
    {
        var used = choice.Suppliers.Union(itemSuppliers).ToList();
        var delivery = used.Sum(supplier => SupplierOrders.TermsOf(Problem, supplier).Delivery.MinorUnits);
        var stops = Problem.Shop.SecondStop.MinorUnits * Math.Max(0, used.Count - 1);
        // Where only items are bought of a supplier, its order comes to no more.
        return delivery + stops + itemSuppliers.Except(choice.Suppliers).Sum(Lacking);
    }

    /// <summary>A plan made at some prices, with the money that it costs by the terms.</summary>
    public Plan Priced(Plan plan)
    {
        var own = Problem.Offers.ToDictionary(offer => offer.Id, StringComparer.Ordinal);
        var purchases = StepPrices.Priced([.. plan.Purchases.Select(purchase => purchase with
        {
            Offer = new OfferSize(own[purchase.Offer.Offer.Id], purchase.Offer.Size, OfferSize.PriceOf(own[purchase.Offer.Offer.Id], purchase.Offer.Size)),
        })]);
        var orders = SupplierOrders.Of(Problem, purchases);
        var priced = plan with
        {
            Purchases = purchases,
            WoodCost = new Money(purchases.Sum(purchase => purchase.Cost.MinorUnits)),
            Charges = [.. orders.Select(order => order.Charge).Where(charge => charge.Total > Money.Zero)],
            StopCost = SupplierOrders.StopCost(Problem, orders),
        };

        // The bound is one for the prices of one choice of suppliers. Where nothing is spent, and nothing is given away, it holds for every choice.
        return priced with { WorthBound = priced.Outlay == Money.Zero && !givesAway ? plan.WorthBound : null };
    }

    // Of an offer that is not bought, only the price before any step is a choice.
    private bool Suits(List<string> suppliers, List<int> steps) => Stepped.Zip(steps).All(pair =>
        pair.Second == 0 || !Matters(pair.First) || suppliers.Contains(Slug.Of(pair.First.Supplier)));

    private long Lacking(string supplier) =>
        Math.Max(0, SupplierOrders.TermsOf(Problem, supplier).MinimumOrder.MinorUnits - items.GetValueOrDefault(supplier));

    // A piece's price is rounded up, so that many cost no less than their units.
    private long LeastForSteps(OrderChoice choice, string supplier) => Stepped.Index()
        .Where(offer => choice.Steps[offer.Index] > 0 && Slug.Of(offer.Item.Supplier) == supplier)
        .Sum(offer => (long)decimal.Floor(offer.Item.Steps[choice.Steps[offer.Index] - 1].From * PriceOf(offer.Index, choice.Steps[offer.Index]).MinorUnits));

    private static IEnumerable<List<string>> Subsets(List<string> all) =>
        Enumerable.Range(0, 1 << all.Count).Select(mask => all.Where((_, at) => (mask >> at & 1) == 1).ToList());

    private static IEnumerable<List<string>> Pairs(List<string> all) =>
        all.SelectMany((one, at) => all.Skip(at + 1).Select(other => (List<string>)[one, other]));
}
