using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Places;

/// <summary>Places between the wire and the domain.</summary>
internal static class PlaceMapping
{
    public static Place ToPlace(PlaceEntry entry, string name, Faults faults)
    {
        var place = new Place(name, faults.Word<Reach>("#/reach", entry.Reach), entry.LimitM3, entry.Note);
        faults.AddRules("#", () => PlaceRules.Check(place), ("#/limit", "#/limitM3"));
        return place;
    }

    public static PlaceRecord ToRecord(PlaceInUse known) => new(
        known.Place.Name, Words.Of(known.Place.Reach), known.Place.LimitCubicMetres, known.Place.Note,
        known.IsSet, known.Boards, decimal.Round(known.CubicMetres, 9));

    public static IReadOnlyList<ReachRecord> ToRecords(IReadOnlyDictionary<string, Reach> reaches) =>
        [.. reaches.OrderBy(entry => entry.Key, StringComparer.Ordinal).Select(entry => new ReachRecord(entry.Key, Words.Of(entry.Value)))];

    public static Dictionary<string, Reach> ToReaches(IReadOnlyList<ReachRecord> records, string at, Faults faults)
    {
        var reaches = new Dictionary<string, Reach>(StringComparer.Ordinal);
        foreach (var (index, record) in faults.Entries(at, records, Limits.MaxQuantity))
        {
            faults.Text($"{at}/{index}/place", record.Place, Limits.MaxLine, required: true);
            if (!reaches.TryAdd(record.Place, faults.Word<Reach>($"{at}/{index}/reach", record.Reach)))
            {
                faults.Add($"{at}/{index}/place", $"'{record.Place}' stands twice: leave one out.");
            }
        }

        return reaches;
    }
}
