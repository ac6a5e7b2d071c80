using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>
/// The names that a line may use: of species by their names, by the abbreviations of the trade, or by the beginnings of their words; and
/// of places that the shop has named before. Beginnings mean what the shop owns, if it owns one such species; else what there is one of.
/// </summary>
/// <param name="catalogue">The species at hand.</param>
/// <param name="owned">Ids of the species that the shop owns boards of.</param>
/// <param name="places">The places where its boards lie.</param>
public sealed partial class QuickWords(SpeciesCatalogue catalogue, IReadOnlyCollection<string> owned, IReadOnlyCollection<string> places)
{
    private const int LongestName = 4;
    private const int ShortestPlace = 3;
    private const int FewestLetters = 3;

    // What the trade writes for species (from memory; lists differ).
    private static readonly Dictionary<string, string> Abbreviations = ReferenceTable.Read("species-abbreviations.csv")
        .ToDictionary(row => row["abbreviation"], row => row["species"], StringComparer.OrdinalIgnoreCase);

    private readonly List<Species> ownedSpecies = [.. owned.Select(catalogue.Find).OfType<Species>()];
    private readonly List<string> knownPlaces = [.. places.Where(place => place.Length >= ShortestPlace && char.IsLetter(place[0])).OrderByDescending(place => place.Length)];

    /// <summary>The species at hand.</summary>
    public SpeciesCatalogue Catalogue => catalogue;

    /// <summary>These and what a line has named.</summary>
    public QuickWords With(QuickCarry carry) => new(catalogue, Added(owned, carry.Species), Added(places, carry.Place));

    /// <summary>Takes a place that the shop has named; null if none stands here.</summary>
    internal string? TakeKnownPlace(LineScanner line)
    {
        foreach (var place in knownPlaces)
        {
            var end = line.At + place.Length;
            if (end <= line.Text.Length && line.Text.AsSpan(line.At, place.Length).Equals(place, StringComparison.OrdinalIgnoreCase)
                && (end == line.Text.Length || !char.IsLetterOrDigit(line.Text[end])) && catalogue.Find(place) is null)
            {
                line.TakeSigns(place.Length);
                return place;
            }
        }

        return null;
    }

    /// <summary>Takes a species' name, the longest that stands here; false if none does. One that may mean several is a fault.</summary>
    internal bool TryTakeSpecies(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        var words = Words().Match(line.Text, at) is { Success: true } match ? match.Groups["word"].Captures : null;
        for (var count = Math.Min(LongestName, words?.Count ?? 0); count > 0; count--)
        {
            var end = words![count - 1].Index + words[count - 1].Length;
            var name = line.Text[at..end];
            var meant = Meant(name);
            if (meant.Count == 0)
            {
                continue;
            }

            line.TakeSigns(end - at);
            if (meant.Count > 1)
            {
                draft.Fault(at, $"{LengthText.Quote(name)} may be {Several(meant)}: say which.");
            }
            else if (draft.Once("species", at))
            {
                draft.Species = meant[0];
            }

            return true;
        }

        return false;
    }

    /// <summary>What a name may mean; nothing for a name that means no species.</summary>
    private List<Species> Meant(string name)
    {
        if (catalogue.Find(name) is { } exact)
        {
            return [exact];
        }

        if (Abbreviations.TryGetValue(name.TrimEnd('.'), out var id) && catalogue.Find(id) is { } abbreviated)
        {
            return [abbreviated];
        }

        var beginnings = name.ToLowerInvariant().Split([' ', '-', '.'], StringSplitOptions.RemoveEmptyEntries);
        if (beginnings.Length == 0 || beginnings.Any(word => word.Length < 2))
        {
            return [];
        }

        var mine = ownedSpecies.FindAll(species => Begins(species, beginnings));
        return mine.Count > 0 ? mine
            : beginnings.Any(word => word.Length >= FewestLetters) ? [.. catalogue.All.Where(species => Begins(species, beginnings))]
            : [];
    }

    private static IReadOnlyCollection<string> Added(IReadOnlyCollection<string> names, string? name) =>
        name is null || names.Contains(name) ? names : [.. names, name];

    private static bool Begins(Species species, string[] beginnings) => species.Aliases.Prepend(species.Name).Any(name =>
    {
        var words = name.ToLowerInvariant().Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries).ToList();
        // A sheet is called one: oak is wood, oak ply is plywood.
        var isSheet = species.Kind != BoardKind.Sheet || words.Count == 1 || beginnings.Any(beginning => words[^1].StartsWith(beginning, StringComparison.Ordinal));
        foreach (var beginning in beginnings)
        {
            var found = words.FindIndex(word => word.StartsWith(beginning, StringComparison.Ordinal));
            if (found < 0)
            {
                return false;
            }

            words.RemoveAt(found);
        }

        return isSheet;
    });

    private static string Several(List<Species> meant)
    {
        const int Most = 4;
        var names = meant.Take(Most).Select(species => species.Name).ToList();
        return meant.Count > Most ? $"{string.Join(", ", names)} and others" : $"{string.Join(", ", names.SkipLast(1))} or {names[^1]}";
    }

    // Each word is a capture of its own, so that a name may end behind any of them.
    [GeneratedRegex(@"\G(?:(?<word>\p{L}[\p{L}'-]*\.?)(?: +|$|(?=[^\p{L}\p{N}])))+", RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}
