using Offcuts.Domain;
using Offcuts.Planning.Explaining;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>One way to choose the species: what is wanted of which species, and what that leaves missing.</summary>
internal sealed record Scenario(Wanted Wanted, IReadOnlyList<MissingPart> Missing);

/// <summary>
/// Lists the ways to choose species where several parts or strips must agree: each finish group that asks for one species,
/// and each other panel.
/// </summary>
internal sealed class SpeciesChoices
{
    private const int MostScenarios = 24;
    private readonly PlanningProblem problem;
    private readonly MissingReasons reasons;
    private readonly HashSet<string> strictGroups;

    public SpeciesChoices(PlanningProblem problem)
    {
        this.problem = problem;
        reasons = new MissingReasons(problem);
        strictGroups = [.. problem.Design.Groups.Where(group => group.OneSpecies).Select(group => group.Name)];
    }

    /// <summary>Whether some combinations were left out because there are too many.</summary>
    public bool IsTruncated { get; private set; }

    /// <summary>All combinations, the ones with most wood in stock first.</summary>
    public List<Scenario> List()
    {
        var choices = Keys().Select(key => (Key: key, Options: Options(key))).ToList();
        var combinations = new List<Dictionary<string, string>> { new(StringComparer.Ordinal) };
        foreach (var (key, options) in choices)
        {
            combinations = [.. combinations.SelectMany(known => options.Select(option =>
                new Dictionary<string, string>(known, StringComparer.Ordinal) { [key] = option }))];
            if (combinations.Count > MostScenarios)
            {
                IsTruncated = true;
                combinations = combinations[..MostScenarios];
            }
        }

        return [.. combinations.Select(ScenarioOf)];
    }

    /// <summary>The relaxation in which nothing need agree: its bound holds for every choice.</summary>
    public Scenario Relaxed() => ScenarioOf(new Dictionary<string, string>(StringComparer.Ordinal));

    private string? KeyOf(string? group) => group is not null && strictGroups.Contains(group) ? "group " + group : null;

    private string KeyOf(Panel panel) => KeyOf(panel.Group) ?? "panel " + panel.Name;

    private List<string> Keys() => [.. problem.Design.Parts.Select(part => KeyOf(part.Group)).OfType<string>()
        .Concat(problem.Design.Panels.Select(KeyOf)).Distinct()];

    private List<string> Options(string key)
    {
        var parts = problem.Design.Parts.Where(part => KeyOf(part.Group) == key).ToList();
        var panels = problem.Design.Panels.Where(panel => KeyOf(panel) == key).ToList();
        var accepted = parts.SelectMany(part => part.Species).Concat(panels.SelectMany(panel => panel.Species)).Distinct().ToList();
        var served = accepted.Select(species => (Species: species, Count:
            parts.Count(part => Accepts(part.Species, species) && reasons.OfPart(part, 1, [species]) is null)
            + panels.Count(panel => Accepts(panel.Species, species) && reasons.OfPanel(panel, 1, [species]) is null))).ToList();
        var most = served.Select(option => option.Count).DefaultIfEmpty(0).Max();
        var best = served.Where(option => option.Count == most).Select(option => option.Species).ToList();
        return most == 0 ? [.. best.Take(1)] : [.. best.OrderByDescending(InStock).ThenBy(species => species, StringComparer.Ordinal)];
    }

    private static bool Accepts(IReadOnlyList<string> accepted, string species) => accepted.Contains(species);

    private decimal InStock(string species) => problem.Stock.Where(board => board.Species == species)
        .Sum(board => BoardMeasure.BoardFeet(board.Size) * board.Quantity);

    private Scenario ScenarioOf(Dictionary<string, string> chosen)
    {
        var missing = new List<MissingPart>();
        var parts = new List<WantedPart>();
        var panels = new List<WantedPanel>();
        foreach (var part in problem.Design.Parts)
        {
            var species = Chosen(KeyOf(part.Group), part.Species);
            if (reasons.OfPart(part, part.Quantity, species) is { } reason)
            {
                missing.Add(reason);
            }
            else
            {
                parts.Add(new WantedPart(part, part.Quantity, species));
            }
        }

        foreach (var panel in problem.Design.Panels)
        {
            var species = Chosen(KeyOf(panel), panel.Species);
            if (reasons.OfPanel(panel, panel.Quantity, species) is { } reason)
            {
                missing.Add(reason);
            }
            else
            {
                panels.Add(new WantedPanel(panel, [.. Enumerable.Range(1, panel.Quantity)], species));
            }
        }

        return new Scenario(new Wanted(parts, panels), missing);

        IReadOnlyList<string> Chosen(string? key, IReadOnlyList<string> accepted) =>
            key is null || !chosen.TryGetValue(key, out var species) ? accepted
            : accepted.Contains(species) ? [species] : [];
    }
}
