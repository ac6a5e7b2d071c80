using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// Rule 9: what is made and what is missing add up to what the design asks for, and no copy is made twice. Extra pieces count apart, and the layers of
/// a copy as one.
/// </summary>
internal static class Demand
{
    public static void Check(AuditScope scope)
    {
        var blanks = scope.Plan.Boards.SelectMany(board => board.Pieces.OfType<PartPiece>()).ToLookup(piece => piece.Part);
        var panels = scope.Plan.GlueUps.ToLookup(glueUp => glueUp.Panel, glueUp => glueUp.Copy);
        foreach (var part in scope.Problem.Design.Parts)
        {
            var pieces = Copies(blanks[part.Name]).ToLookup(made => made.Use, made => made.Copy);
            Check(scope, part.Name, part.Quantity, [.. pieces[PieceUse.Asked]], [.. pieces[PieceUse.More]]);
            Extras.Check(scope, part, [.. pieces[PieceUse.More]], [.. pieces[PieceUse.Spare]]);
        }

        foreach (var panel in scope.Problem.Design.Panels)
        {
            Check(scope, panel.Name, panel.Quantity, [.. panels[panel.Name]], []);
        }

        foreach (var missing in scope.Plan.Missing)
        {
            scope.Findings.Require(
                scope.Parts.ContainsKey(missing.Name) || scope.Panels.ContainsKey(missing.Name),
                AuditRule.Demand, $"{missing.Name} is listed as missing, but the design does not ask for it.");
            scope.Findings.Require(missing.Quantity > 0, AuditRule.Demand, $"{missing.Quantity} of {missing.Name} are listed as missing.");
        }

        foreach (var twice in scope.Plan.Missing.GroupBy(missing => missing.Name).Where(group => group.Count() > 1))
        {
            scope.Findings.Add(AuditRule.Demand, $"{twice.Key} is listed as missing more than once.");
        }
    }

    /// <summary>The copies that blanks give: each as often as it is made, a face-glued one once.</summary>
    internal static IEnumerable<(PieceUse Use, int Copy, Length Width)> Copies(IEnumerable<PartPiece> pieces)
    {
        var glued = new HashSet<(PieceUse, int)>();
        return pieces.SelectMany(piece => piece.Copies
            .Where(copy => piece.Recipe.Layers <= 1 || glued.Add((piece.Use, copy.Copy)))
            .Select(copy => (piece.Use, copy.Copy, piece.Finished?.Width ?? Length.Zero))).ToList();
    }

    private static void Check(AuditScope scope, string name, int asked, List<int> copies, List<int> more)
    {
        var missing = scope.Plan.Missing.Where(part => part.Name == name).Sum(part => (long)part.Quantity);
        scope.Findings.Require(
            copies.Count + missing == asked, AuditRule.Demand, $"{asked} of {name} are asked for; {copies.Count} are made and {missing} missing.");
        List<int> all = [.. copies, .. more];
        scope.Findings.Require(
            all.Distinct().Count() == all.Count && all.TrueForAll(copy => copy >= 1 && copy <= asked + more.Count),
            AuditRule.Demand, $"The copies of {name} are numbered {string.Join(", ", all)}.");
    }
}
