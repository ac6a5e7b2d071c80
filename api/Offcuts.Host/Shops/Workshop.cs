using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Keeping;
using Offcuts.Host.SpeciesLists;
using Offcuts.Storage;

namespace Offcuts.Host.Shops;

/// <summary>The shop and the species as they are now.</summary>
internal sealed class Workshop(ShopStore store)
{
    /// <summary>Both, the species read once; the classes of the keep rule stand for the species that are in them now.</summary>
    public (Shop Shop, SpeciesCatalogue Catalogue) Now()
    {
        var catalogue = Catalogue();
        return (Shop(catalogue), catalogue);
    }

    /// <summary>The shop by itself.</summary>
    public Shop Shop() => Shop(Catalogue);

    /// <summary>The shop, by species that are at hand.</summary>
    public Shop Shop(SpeciesCatalogue catalogue) => Shop(() => catalogue);

    /// <summary>The keep rule as it was written.</summary>
    public KeepRule WrittenKeepRule(SpeciesCatalogue catalogue) => store.FindKeepRule() is { } content ? ReadKeepRule(content, catalogue) : KeepRule.None;

    // Without a keep rule no species are needed.
    private Shop Shop(Func<SpeciesCatalogue> species)
    {
        if (store.FindKeepRule() is not { } content)
        {
            return Settings();
        }

        var catalogue = species();
        return Settings() with { KeepRule = ReadKeepRule(content, catalogue).Resolved(catalogue) };
    }

    private static KeepRule ReadKeepRule(string content, SpeciesCatalogue catalogue)
    {
        var faults = new Faults();
        var rule = KeepRuleMapping.ToRule(JsonSerializer.Deserialize(content, WireJson.Default.KeepRuleEntry)!, catalogue, "#", faults);
        faults.ThrowIfAny();
        return rule;
    }

    private Shop Settings()
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
