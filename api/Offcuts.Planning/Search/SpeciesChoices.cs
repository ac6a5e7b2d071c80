using Offcuts.Domain;
using Offcuts.Planning.Explaining;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Search;

/// <summary>One way to choose species and batches: what is wanted of which, and what that leaves missing.</summary>
internal sealed record Scenario(Wanted Wanted, IReadOnlyList<MissingPart> Missing)
{
    /// <summary>From how many batches the groups come that had better come from few; one that is left open counts as from any number.</summary>
    public int Scattered { get; init; }
}

/// <summary>
/// Lists the ways to choose species and batches where several parts or strips must agree: each finish group that asks for one, and each other panel and
/// part that may be laminated. Of such a part they also choose the number of layers.
/// </summary>
internal sealed class SpeciesChoices(PlanningProblem problem)
{
    private const int MostScenarios = 24;

    /// <summary>More batches than are ever chosen.</summary>
    private const int AnyNumber = 1000;

    private readonly GroupOptions options = new(problem);
    private readonly MissingReasons reasons = new(problem);

    /// <summary>Whether some combinations were left out because there are too many.</summary>
    public bool IsTruncated { get; private set; }

    /// <summary>All combinations, the ones with most wood in stock first.</summary>
    public List<Scenario> List()
    {
        var combinations = new List<Dictionary<string, WoodChoice>> { new(StringComparer.Ordinal) };
        foreach (var key in options.Keys())
        {
            var open = options.Of(key);
            combinations = [.. combinations.SelectMany(known => open.Select(option =>
                new Dictionary<string, WoodChoice>(known, StringComparer.Ordinal) { [key] = option }))];
            if (combinations.Count > MostScenarios)
            {
                // What only narrows others down may be left out: nothing is cheaper with it.
                combinations = [.. combinations.OrderBy(Preferences)];
                IsTruncated |= Preferences(combinations[MostScenarios]) == 0;
                combinations = combinations[..MostScenarios];
            }
        }

        return [.. combinations.Select(ScenarioOf)];
    }

    private static int Preferences(Dictionary<string, WoodChoice> combination) => combination.Values.Count(choice => choice.IsPreference);

    /// <summary>The relaxation in which nothing need agree: its bound holds for every choice.</summary>
    public Scenario Relaxed() => ScenarioOf(new Dictionary<string, WoodChoice>(StringComparer.Ordinal));

    private Scenario ScenarioOf(Dictionary<string, WoodChoice> chosen)
    {
        var missing = new List<MissingPart>();
        var parts = new List<WantedPart>();
        var panels = new List<WantedPanel>();
        foreach (var part in problem.Design.Parts)
        {
            var (species, batches) = Chosen(part.Group, GroupOptions.OfPart(part.Name), part.Species);
            if (reasons.OfPart(part, part.Quantity, species, batches) is { } reason)
            {
                missing.Add(reason);
            }
            else
            {
                parts.Add(new WantedPart(
                    part, part.Quantity, species,
                    chosen.GetValueOrDefault(GroupOptions.OfLayers(part.Name)).Layers is { } count ? [count] : [.. Enumerable.Range(2, part.Layers - 1)], batches));
            }
        }

        foreach (var panel in problem.Design.Panels)
        {
            var (species, batches) = Chosen(panel.Group, GroupOptions.OfPanel(panel.Name), panel.Species);
            if (reasons.OfPanel(panel, panel.Quantity, species, batches) is { } reason)
            {
                missing.Add(reason);
            }
            else
            {
                panels.Add(new WantedPanel(panel, [.. Enumerable.Range(1, panel.Quantity)], species, batches));
            }
        }

        return new Scenario(new Wanted(parts, panels), missing)
        {
            Scattered = problem.Design.Groups.Sum(group => group.Batch == BatchChoice.Fewest && chosen.TryGetValue(GroupOptions.OfGroup(group.Name), out var choice)
                ? choice.Batches?.Count ?? AnyNumber
                : 0),
        };

        (IReadOnlyList<string> Species, IReadOnlyList<string>? Batches) Chosen(string? group, string own, IReadOnlyList<string> accepted)
        {
            var common = group is null ? default : chosen.GetValueOrDefault(GroupOptions.OfGroup(group));
            var species = common.Species ?? chosen.GetValueOrDefault(own).Species;
            return (species is null ? accepted : accepted.Contains(species) ? [species] : [], common.Batches);
        }
    }
}
