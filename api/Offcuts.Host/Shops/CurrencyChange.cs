using Offcuts.Domain;
using Offcuts.Host.Plans;
using Offcuts.Storage;

namespace Offcuts.Host.Shops;

/// <summary>Refuses another currency for the shop as long as there are price lists in the old one: nothing converts them.</summary>
/// <remarks>Designs with prices that the new one does not have are named by what reads them, and the others count.</remarks>
internal sealed class CurrencyChange(Workshop workshop, OfferStore offers, StoredOffers stored)
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
    }

    /// <summary>Whose lists they are.</summary>
    public static string Names(IReadOnlyList<StoredPriceList> lists) => string.Join(", ", lists.Select(list => list.Name ?? list.Supplier));
}
