using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Storage;

namespace Offcuts.Host.Shops;

/// <summary>Refuses another currency for the shop as long as what is stored has prices in the old one: nothing converts them.</summary>
internal sealed class CurrencyChange(Workshop workshop, OfferStore offers, StoredOffers stored, DesignStore designs)
{
    /// <summary>Looks at what is stored.</summary>
    /// <param name="wanted">The currency that the shop is to have.</param>
    /// <exception cref="OffcutsException">Prices that would be read as what they are not.</exception>
    public void Check(string wanted)
    {
        var (shop, catalogue) = workshop.Now();
        var now = shop.Currency;
        if (wanted == now)
        {
            return;
        }

        // Of lists from before their currency was kept it is the shop's, unless they cannot be read in that.
        var unkept = stored.AreReadable(shop, catalogue) ? now : wanted;
        var lists = offers.ListSuppliers().Where(list => (list.Currency ?? unkept) != wanted).ToList();
        if (lists.Count > 0)
        {
            throw new OffcutsException(
                ErrorCode.Conflict,
                $"The shop cannot count in {wanted} while it has prices in {lists[0].Currency ?? now}: delete the price lists first ({Names(lists)}), then store them anew in {wanted}.");
        }

        foreach (var design in designs.List(0, Limits.MaxQuantity).Designs)
        {
            var items = JsonSerializer.Deserialize(design.Content, WireJson.Default.DesignEntry)!.Items ?? [];
            if (items.FirstOrDefault(item => !MoneyText.TryFromDecimal(item.UnitPrice, wanted, out _, out _)) is { } item)
            {
                throw new OffcutsException(
                    ErrorCode.Conflict,
                    $"The shop cannot count in {wanted} as it counts in {now}: the design {design.Reference} has prices that {wanted} does not have ({item.Name}: {item.UnitPrice} {now}). Delete the design first, then store it anew with prices in {wanted}.");
            }
        }
    }

    /// <summary>Whose lists they are.</summary>
    public static string Names(IReadOnlyList<StoredPriceList> lists) => string.Join(", ", lists.Select(list => list.Name ?? list.Supplier));
}
