using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>All panels of one name are of one species, and so is all of a finish group that asks for it.</summary>
internal static class OneSpecies
{
    public static void Check(AuditScope scope)
    {
        foreach (var panel in scope.Problem.Design.Panels)
        {
            var species = SpeciesOf(scope, panel.Name).Concat(
                scope.Plan.GlueUps.Where(glueUp => glueUp.Panel == panel.Name).Select(glueUp => glueUp.Species)).Distinct().ToList();
            scope.Findings.Require(
                species.Count <= 1, AuditRule.PanelSpecies, $"Panel {panel.Name} is of several species: {string.Join(", ", species)}.");
        }

        foreach (var group in scope.Problem.Design.Groups.Where(group => group.OneSpecies || group.Batch == BatchChoice.One))
        {
            var species = SpeciesOfGroup(scope, group.Name);
            scope.Findings.Require(
                species.Count <= 1, AuditRule.FinishGroup, $"Group {group.Name} is of several species: {string.Join(", ", species)}.");
        }
    }

    /// <summary>The species of which the plan makes members of a group.</summary>
    internal static List<string> SpeciesOfGroup(AuditScope scope, string group)
    {
        var design = scope.Problem.Design;
        var members = design.Parts.Where(part => part.Group == group).Select(part => part.Name)
            .Concat(design.Panels.Where(panel => panel.Group == group).Select(panel => panel.Name));
        return [.. members.SelectMany(name => SpeciesOf(scope, name)).Distinct()];
    }

    private static IEnumerable<string> SpeciesOf(AuditScope scope, string member) => scope.Plan.Boards
        .Where(board => board.Pieces.Any(piece => piece is PartPiece part ? part.Part == member : piece is StripPiece strip && strip.Panel == member))
        .Select(board => board.Species).Distinct();
}
