using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Everything asked for is made once, or listed as missing.</summary>
internal static class DemandChecks
{
    public static void Run(AuditSheet sheet)
    {
        var missing = sheet.Plan.Missing.GroupBy(part => part.Name).ToDictionary(group => group.Key, group => group.Sum(part => part.Quantity), StringComparer.Ordinal);
        var pieces = sheet.Plan.Boards.SelectMany(board => board.Pieces).ToList();
        foreach (var part in sheet.Problem.Design.Parts)
        {
            var copies = pieces.OfType<PartPiece>().Where(piece => piece.Part == part.Name).Select(piece => piece.Copy);
            Count(sheet, part.Name, part.Quantity, copies, missing.GetValueOrDefault(part.Name));
        }

        foreach (var panel in sheet.Problem.Design.Panels)
        {
            var copies = sheet.Plan.GlueUps.Where(glueUp => glueUp.Panel == panel.Name).Select(glueUp => glueUp.Copy);
            Count(sheet, panel.Name, panel.Quantity, copies, missing.GetValueOrDefault(panel.Name));
        }

        foreach (var name in missing.Keys.Where(name => sheet.PartNamed(name) is null && sheet.PanelNamed(name) is null))
        {
            sheet.Find(AuditRule.Demand, $"{name} is listed as missing but is not in the design.");
        }
    }

    private static void Count(AuditSheet sheet, string name, int asked, IEnumerable<int> copies, int missing)
    {
        var made = copies.Order().ToList();
        sheet.Require(
            made.SequenceEqual(Enumerable.Range(1, Math.Max(0, asked - missing))) && missing >= 0 && missing <= asked, AuditRule.Demand,
            $"{asked} of {name} are asked for; copies {string.Join(", ", made)} are made and {missing} are missing.");
    }
}
