using Offcuts.Domain;

namespace Offcuts.Auditing.Whole;

/// <summary>Rule 16: a supplier of whom anything is ordered charges its delivery and what the order lacks of its minimum; every one after the first counts as a stop.</summary>
internal static class Charges
{
    public static void Check(AuditScope scope)
    {
        var goods = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var (supplier, price) in Wood(scope).Concat(Items(scope)))
        {
            goods[supplier] = goods.GetValueOrDefault(supplier) + price;
        }

        var claimed = scope.Plan.Charges.ToList();
        foreach (var (supplier, price) in goods)
        {
            var terms = scope.Problem.Terms.FirstOrDefault(each => Slug.Of(each.Supplier) == supplier);
            var (delivery, lacking) = (terms?.Delivery.MinorUnits ?? 0, Math.Max(0, (terms?.MinimumOrder.MinorUnits ?? 0) - price));
            var own = claimed.FindAll(charge => charge.Supplier == supplier);
            claimed.RemoveAll(charge => charge.Supplier == supplier);
            scope.Findings.Require(
                own.Count <= 1 && own.Sum(charge => charge.Delivery.MinorUnits) == delivery && own.Sum(charge => charge.TopUp.MinorUnits) == lacking,
                AuditRule.Charges, $"The order of {supplier} comes to {price} minor units; its terms charge {delivery} and {lacking}.");
        }

        scope.Findings.Require(claimed.Count == 0, AuditRule.Charges, $"Nothing is ordered of {string.Join(", ", claimed.Select(charge => charge.Supplier))}.");
        var stops = scope.Problem.Shop.SecondStop.MinorUnits * Math.Max(0, goods.Count - 1);
        scope.Findings.Require(
            scope.Plan.StopCost.MinorUnits == stops, AuditRule.Charges, $"Further stops count {scope.Plan.StopCost.MinorUnits} minor units; {goods.Count} suppliers make {stops}.");
    }

    private static IEnumerable<(string Supplier, long Price)> Wood(AuditScope scope) => scope.Cuts.Where(cut => cut.Offer is not null)
        .Select(cut => (Slug.Of(cut.Offer!.Offer.Supplier), scope.Prices.Of(cut).MinorUnits));

    private static IEnumerable<(string Supplier, long Price)> Items(AuditScope scope) => scope.Problem.Design.Items
        .Select(item => (Supplier: Slug.Of(item.Supplier ?? ""), (item.UnitPrice * item.Quantity).MinorUnits)).Where(item => item.Supplier.Length > 0);
}
