using System.Text.Json;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Fits;

/// <summary>The current versions of all designs, ready to be planned.</summary>
internal static class SavedDesigns
{
    /// <summary>The designs, what they leave open as their makers prefer it, and the references of those that cannot be read any more (their currency may be another now).</summary>
    public static (List<SavedDesign> Designs, List<string> Unreadable) Read(DesignStore store, SpeciesCatalogue catalogue, string currency)
    {
        var (designs, unreadable) = (new List<SavedDesign>(), new List<string>());
        foreach (var stored in store.List(0, Limits.MaxQuantity).Designs)
        {
            var entry = JsonSerializer.Deserialize(stored.Content, WireJson.Default.DesignEntry)!;
            if (Read(entry, catalogue, currency) is { } design)
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

    // What leaves more ways open than are ever planned is not told here: planning it tells.
    private static Design? Read(DesignEntry entry, SpeciesCatalogue catalogue, string currency)
    {
        var faults = new Faults();
        var design = DesignMapping.ToDesign(entry, catalogue, currency, "#", faults);
        if (faults.Any)
        {
            return null;
        }

        try
        {
            var settled = design.Bends ? DesignInstance.At(design, new Dictionary<string, long>(), faults.Add).Design : design;
            var usual = settled.HasAlternatives ? Alternatives.Of(settled, catalogue.All)[0].Design : settled;
            return faults.Any ? null : DesignResolver.Resolve(usual, catalogue.All);
        }
        catch (OffcutsException)
        {
            return null;
        }
    }
}
