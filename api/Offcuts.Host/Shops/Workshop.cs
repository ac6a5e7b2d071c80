using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.SpeciesLists;
using Offcuts.Storage;

namespace Offcuts.Host.Shops;

/// <summary>The shop and the species as they are now.</summary>
internal sealed class Workshop(ShopStore store)
{
    public Shop Shop()
    {
        if (store.FindShop() is not { } content)
        {
            return new Shop();
        }

        var faults = new Faults();
        var shop = ShopMapping.ToShop(JsonSerializer.Deserialize(content, WireJson.Default.ShopEntry)!, "#", faults);
        faults.ThrowIfAny();
        return shop;
    }

    public SpeciesCatalogue Catalogue() => SpeciesCatalogue.Default.With(Own().Select(SpeciesMapping.ToSpecies));

    public IReadOnlyList<Contracts.SpeciesEntry> Own() =>
        [.. store.ListSpecies().Select(content => JsonSerializer.Deserialize(content, WireJson.Default.SpeciesEntry)!)];
}
