namespace Offcuts.Auditing.Whole;

/// <summary>
/// Rule 8: no board is used more often than its quantity and no offer more often than it is available; each copy has its own number from 1.
/// The purchases list every size that is bought once, with its count and the offer's price for what is bought of it.
/// </summary>
internal static class Supply
{
    public static void Check(AuditScope scope)
    {
        foreach (var group in scope.Cuts.Where(cut => cut.Stock is not null).GroupBy(cut => cut.Stock!))
        {
            CheckCopies(scope.Findings, group.Key.Id, [.. group.Select(cut => cut.Board.Copy)], group.Key.Quantity);
        }

        foreach (var group in scope.Cuts.Where(cut => cut.Offer is not null).GroupBy(cut => cut.Offer!.Offer.Id))
        {
            var copies = group.Select(cut => cut.Board.Copy).ToList();
            CheckCopies(scope.Findings, group.Key, copies, scope.Offers[group.Key].Available ?? copies.Count);
        }

        CheckPurchases(scope);
    }

    private static void CheckCopies(Findings findings, string id, List<int> copies, int most)
    {
        findings.Require(copies.Count <= most, AuditRule.Supply, $"{copies.Count} of {id} are used, there are {most}.");
        findings.Require(
            copies.Distinct().Count() == copies.Count && copies.All(copy => copy >= 1 && copy <= most),
            AuditRule.Supply, $"The copies of {id} are numbered {string.Join(", ", copies)}.");
    }

    private static void CheckPurchases(AuditScope scope)
    {
        var bought = scope.Cuts.Where(cut => cut.Offer is not null)
            .GroupBy(cut => (cut.Offer!.Offer.Id, cut.Offer.Size, Price: scope.Prices.Of(cut))).ToDictionary(group => group.Key, group => group.Count());
        foreach (var purchase in scope.Plan.Purchases)
        {
            var key = (purchase.Offer.Offer.Id, purchase.Offer.Size, purchase.Offer.Price);
            scope.Findings.Require(
                bought.Remove(key, out var count) && count == purchase.Count,
                AuditRule.Purchases, $"{purchase.Count} of {key.Id} {key.Size} at {key.Price} are bought, the boards need {count} of it.");
        }

        foreach (var (key, count) in bought)
        {
            scope.Findings.Add(AuditRule.Purchases, $"{count} of {key.Id} {key.Size} at {key.Price} are cut but not bought.");
        }
    }
}
