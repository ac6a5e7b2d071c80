using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Storage;

namespace Offcuts.Host.Fits;

/// <summary>The current versions of all designs, ready to be planned.</summary>
internal static class SavedDesigns
{
    /// <summary>The designs, what they leave open as their makers prefer it, and the references of those that cannot be read any more (their currency may be another now).</summary>
    public static (List<SavedDesign> Designs, List<string> Unreadable) Read(DesignStore store, SpeciesCatalogue catalogue, string currency)
    {
        var (designs, unreadable) = (new List<SavedDesign>(), new List<string>());
        foreach (var (stored, written) in Written(store, catalogue, currency))
        {
            if (written is not null && Ready(written, catalogue) is { } design)
            {
                designs.Add(new SavedDesign(stored.Reference, stored.Version, design));
            }
            else
            {
                unreadable.Add(stored.Reference);
            }
        }

        return (designs, unreadable);
    }

    /// <summary>The current versions of all designs as they are written; null for one that cannot be read any more.</summary>
    public static IEnumerable<(StoredDesign Stored, Design? Design)> Written(DesignStore store, SpeciesCatalogue catalogue, string currency) =>
        store.List(0, Limits.MaxQuantity).Designs.Select(stored =>
        {
            var faults = new Faults();
            var design = DesignMapping.ToDesign(JsonSerializer.Deserialize(stored.Content, WireJson.Default.DesignEntry)!, catalogue, currency, "#", faults);
            return (stored, faults.Any ? null : design);
        });

    // What leaves more ways open than are ever planned is not told here: planning it tells.
    private static Design? Ready(Design design, SpeciesCatalogue catalogue)
    {
        try
        {
            var faults = new Faults();
            var usual = DesignSettings.Usual(design, catalogue, "#", faults);
            return faults.Any ? null : DesignResolver.Resolve(usual, catalogue.All);
        }
        catch (OffcutsException)
        {
            return null;
        }
    }
}
