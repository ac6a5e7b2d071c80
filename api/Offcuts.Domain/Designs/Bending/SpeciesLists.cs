namespace Offcuts.Domain;

/// <summary>A list of species of which an earlier one is preferred where the money is equal.</summary>
/// <param name="Name">What the choice is called: <c>species of frame</c>.</param>
/// <param name="Accepted">Ids and classes in their order.</param>
/// <param name="IsOfOne">Whether all that it is for is of one species anyhow.</param>
/// <param name="IsIn">Whether a design still has what it is for.</param>
/// <param name="Narrowed">The design with fewer species in its place.</param>
internal sealed record SpeciesList(
    string Name, IReadOnlyList<string> Accepted, bool IsOfOne, Func<Design, bool> IsIn, Func<Design, IReadOnlyList<string>, Design> Narrowed);

/// <summary>Lists of species in order, and the choices that they are.</summary>
internal static class SpeciesLists
{
    /// <summary>Those of groups, then of parts, then of panels; a member without a list of its own has its group's.</summary>
    public static IEnumerable<SpeciesList> InOrder(Design design) =>
    [
        .. design.Groups.Where(group => group.SpeciesInOrder).Select(group => new SpeciesList(
            $"species of {group.Name}", group.Species, group.OneSpecies || group.Batch == BatchChoice.One, at => at.Groups.Any(other => other.Name == group.Name),
            (at, species) => at with { Groups = [.. at.Groups.Select(other => other.Name == group.Name ? other with { Species = species, SpeciesInOrder = false } : other)] })),
        .. design.Parts.Where(part => part.Freedom.SpeciesInOrder && part.Species.Count > 0).Select(part => new SpeciesList(
            $"species of {part.Name}", part.Species, part.Layers > 1, at => at.Parts.Any(other => other.Name == part.Name),
            (at, species) => at with { Parts = [.. at.Parts.Select(other => other.Name == part.Name ? other with { Species = species, Freedom = Settled(other.Freedom) } : other)] })),
        .. design.Panels.Where(panel => panel.Freedom.SpeciesInOrder && panel.Species.Count > 0).Select(panel => new SpeciesList(
            $"species of {panel.Name}", panel.Species, true, at => at.Panels.Any(other => other.Name == panel.Name),
            (at, species) => at with { Panels = [.. at.Panels.Select(other => other.Name == panel.Name ? other with { Species = species, Freedom = Settled(other.Freedom) } : other)] })),
    ];

    /// <summary>
    /// The answers, the preferred first: where all is of one species, each species; else the first alone, the first two and so on, so that a later one is
    /// used only if the wood costs less for it.
    /// </summary>
    public static IEnumerable<(string Text, IReadOnlyList<string> Species)> Answers(SpeciesList list, IReadOnlyList<Species> catalogue, int most)
    {
        List<string> species = [.. DesignResolver.Concrete(list.Accepted, catalogue)];
        var names = species.ToDictionary(id => id, id => catalogue.FirstOrDefault(each => each.Id == id)?.Name ?? id, StringComparer.Ordinal);
        var steps = species.Count <= most ? Enumerable.Range(1, species.Count) : Enumerable.Range(1, most - 1).Append(species.Count);
        foreach (var step in steps)
        {
            List<string> answer = list.IsOfOne && step < species.Count ? [species[step - 1]]
                : list.IsOfOne && species.Count <= most ? [species[^1]]
                : species[..step];
            yield return (answer.Count == 1 ? names[answer[0]] : $"{string.Join(", ", answer.Take(answer.Count - 1).Select(id => names[id]))} or {names[answer[^1]]}", answer);
        }
    }

    /// <summary>The design with no list in order any more, also where a member has none of its own to put in order.</summary>
    public static Design Settled(Design design) => design with
    {
        Groups = [.. design.Groups.Select(group => group with { SpeciesInOrder = false })],
        Parts = [.. design.Parts.Select(part => part with { Freedom = Settled(part.Freedom) })],
        Panels = [.. design.Panels.Select(panel => panel with { Freedom = Settled(panel.Freedom) })],
    };

    private static MemberFreedom Settled(MemberFreedom freedom) => freedom with { SpeciesInOrder = false };
}
