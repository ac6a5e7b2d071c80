using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// Rule 3, the panel: its sub-panels are as many and as wide as the planer demands, the strips of each add up to the width needed, and the lists
/// and the strips on the boards are the same, one to one.
/// </summary>
internal static class GlueUpLists
{
    private sealed record Entry(string Panel, int Copy, int SubPanel, int Order, int BoardNumber, Length NetWidth);

    public static void Check(AuditScope scope)
    {
        foreach (var glueUp in scope.Plan.GlueUps)
        {
            if (scope.Panels.TryGetValue(glueUp.Panel, out var panel))
            {
                CheckWidths(scope, glueUp, panel);
            }
            else
            {
                scope.Findings.Add(AuditRule.Demand, $"There is a glue-up for {glueUp.Panel}, a panel that the design does not have.");
            }
        }

        CheckEntries(scope);
    }

    /// <summary>
    /// How many sub-panels a panel has and how wide each is. n sub-panels of width w and n - 1 seams suffice if n w >= G + (n - 1) s; with w at
    /// most the planer's width P the least n is (G - s) / (P - s), rounded up. Null if no number does.
    /// </summary>
    internal static (long Count, Length Width)? SubPanels(Shop shop, Panel panel)
    {
        var glued = panel.Finished.Width + shop.PanelOversize;
        if (glued <= shop.PlanerWidth)
        {
            return (1, glued);
        }

        if (shop.PlanerWidth <= shop.SeamAllowance)
        {
            return null;
        }

        var count = CeilingOfQuotient((glued - shop.SeamAllowance).Ticks, (shop.PlanerWidth - shop.SeamAllowance).Ticks);
        return (count, Length.FromTicks(CeilingOfQuotient((glued + (shop.SeamAllowance * (count - 1))).Ticks, count)));
    }

    private static long CeilingOfQuotient(long dividend, long divisor) => (dividend + divisor - 1) / divisor;

    private static void CheckWidths(AuditScope scope, GlueUp glueUp, Panel panel)
    {
        var name = FormattableString.Invariant($"{glueUp.Panel} {glueUp.Copy}");
        if (SubPanels(scope.Problem.Shop, panel) is not { } needed)
        {
            scope.Findings.Add(AuditRule.SubPanels, $"{name} cannot pass the planer in any number of sub-panels.");
            return;
        }

        scope.Findings.Require(
            glueUp.SubPanels.Count == needed.Count, AuditRule.SubPanels, $"{name} must have {needed.Count} sub-panels, it has {glueUp.SubPanels.Count}.");
        foreach (var (index, sub) in glueUp.SubPanels.Index())
        {
            var reached = sub.Strips.Aggregate(Int128.Zero, (sum, strip) => sum + strip.NetWidth.Ticks);
            scope.Findings.Require(sub.Number == index + 1, AuditRule.SubPanels, $"{name}: sub-panel {index + 1} has the number {sub.Number}.");
            scope.Findings.Require(
                sub.NeededWidth == needed.Width, AuditRule.SubPanels, $"{name}: sub-panel {sub.Number} needs {needed.Width}, the plan says {sub.NeededWidth}.");
            scope.Findings.Require(
                reached >= needed.Width.Ticks, AuditRule.SubPanels, $"{name}: the strips of sub-panel {sub.Number} reach {reached} ticks of {needed.Width.Ticks}.");
            scope.Findings.Require(
                sub.Strips.Select(strip => strip.Order).SequenceEqual(Enumerable.Range(1, sub.Strips.Count)),
                AuditRule.GlueUps, $"{name}: the strips of sub-panel {sub.Number} are not numbered from 1 in order.");
        }
    }

    private static void CheckEntries(AuditScope scope)
    {
        var listed = scope.Plan.GlueUps.SelectMany(glueUp => glueUp.SubPanels.SelectMany(sub => sub.Strips.Select(strip =>
            new Entry(glueUp.Panel, glueUp.Copy, sub.Number, strip.Order, strip.BoardNumber, strip.NetWidth)))).ToList();
        var cut = scope.Plan.Boards.SelectMany(board => board.Pieces.OfType<StripPiece>().Select(strip =>
            new Entry(strip.Panel, strip.Copy, strip.SubPanel, strip.Order, board.Number, strip.NetWidth))).ToList();
        foreach (var entry in listed.Except(cut))
        {
            scope.Findings.Add(AuditRule.GlueUps, $"No board has the strip {entry} of the glue-up list.");
        }

        foreach (var entry in cut.Except(listed))
        {
            scope.Findings.Add(AuditRule.GlueUps, $"No glue-up list has the strip {entry} of the boards.");
        }

        foreach (var twice in listed.GroupBy(entry => entry).Concat(cut.GroupBy(entry => entry)).Where(group => group.Count() > 1))
        {
            scope.Findings.Add(AuditRule.GlueUps, $"The strip {twice.Key} is there twice.");
        }
    }
}
