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
    /// <summary>The shop with its keep rule, whose classes stand for the species that are in them now.</summary>
    public Shop Shop()
    {
        var rule = WrittenKeepRule();
        return rule.Entries.Count == 0 ? Settings() : Settings() with { KeepRule = rule.Resolved(Catalogue()) };
    }

    /// <summary>The keep rule as it was written.</summary>
    public KeepRule WrittenKeepRule()
    {
        if (store.FindKeepRule() is not { } content)
        {
            return KeepRule.None;
        }

        var faults = new Faults();
        var rule = KeepRuleMapping.ToRule(JsonSerializer.Deserialize(content, WireJson.Default.KeepRuleEntry)!, Catalogue(), "#", faults);
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
