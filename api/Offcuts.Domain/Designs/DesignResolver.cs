namespace Offcuts.Domain;

/// <summary>Replaces the species names and classes in a design by concrete species ids.</summary>
public static class DesignResolver
{
    /// <summary>
    /// The design with every part and panel naming concrete species ids: its own, else its group's; a class stands for all
    /// species in it, in catalogue order. An id that the catalogue does not know stays as it is and stands for itself.
    /// </summary>
    public static Design Resolve(Design design, IReadOnlyList<Species> catalogue)
    {
        var groups = design.Groups.ToDictionary(group => group.Name, StringComparer.Ordinal);
        return design with
        {
            Parts = [.. design.Parts.Select(part => part with { Species = OfMember(part.Species, part.Group) })],
            Panels = [.. design.Panels.Select(panel => panel with { Species = OfMember(panel.Species, panel.Group) })],
        };

        IReadOnlyList<string> OfMember(IReadOnlyList<string> own, string? group) =>
            Concrete(own.Count > 0 || group is null ? own : groups[group].Species, catalogue);
    }

    /// <summary>The ids that a list of ids and classes stands for, in its order.</summary>
    internal static IReadOnlyList<string> Concrete(IReadOnlyList<string> accepted, IReadOnlyList<Species> catalogue)
    {
        return [.. accepted.SelectMany(OfToken).Distinct(StringComparer.Ordinal)];

        IEnumerable<string> OfToken(string token)
        {
            if (catalogue.Any(species => species.Id == token))
            {
                return [token];
            }

            var members = catalogue.Where(species => species.Classes.Contains(token)).Select(species => species.Id).ToList();
            return members.Count > 0 ? members : [token];
        }
    }
}
