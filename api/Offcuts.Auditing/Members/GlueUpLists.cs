using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// Rule 3, the panel: its sub-panels are as many as the planer demands, none is wider than it takes, together they make the panel, the strips of each
/// add up to its width, and the lists and the strips on the boards are the same, one to one.
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
    /// How many sub-panels a panel has. n of them and n - 1 seams suffice if their widths add up to G + (n - 1) s; with none wider than the planer's
    /// width P the least n is (G - s) / (P - s), rounded up. Null if no number does.
    /// </summary>
    internal static long? SubPanels(Shop shop, Panel panel)
    {
        var glued = panel.Finished.Width + shop.PanelOversize;
        if (glued <= shop.PlanerWidth)
        {
            return 1;
        }

        if (shop.PlanerWidth <= shop.SeamAllowance)
        {
            return null;
        }

        return CeilingOfQuotient((glued - shop.SeamAllowance).Ticks, (shop.PlanerWidth - shop.SeamAllowance).Ticks);
    }

    private static long CeilingOfQuotient(long dividend, long divisor) => (dividend + divisor - 1) / divisor;

    private static void CheckWidths(AuditScope scope, GlueUp glueUp, Panel panel)
    {
        var name = FormattableString.Invariant($"{glueUp.Panel} {glueUp.Copy}");
        if (SubPanels(scope.Problem.Shop, panel) is not { } count)
        {
            scope.Findings.Add(AuditRule.SubPanels, $"{name} cannot pass the planer in any number of sub-panels.");
            return;
        }

        scope.Findings.Require(
            glueUp.SubPanels.Count == count, AuditRule.SubPanels, $"{name} must have {count} sub-panels, it has {glueUp.SubPanels.Count}.");
        CheckSum(scope, name, glueUp, panel);
        foreach (var (index, sub) in glueUp.SubPanels.Index())
        {
            var reached = sub.Strips.Aggregate(Int128.Zero, (sum, strip) => sum + strip.NetWidth.Ticks);
            scope.Findings.Require(sub.Number == index + 1, AuditRule.SubPanels, $"{name}: sub-panel {index + 1} has the number {sub.Number}.");
            scope.Findings.Require(
                sub.NeededWidth <= scope.Problem.Shop.PlanerWidth, AuditRule.SubPanels,
                $"{name}: sub-panel {sub.Number} is {sub.NeededWidth} wide, the planer takes {scope.Problem.Shop.PlanerWidth}.");
            scope.Findings.Require(
                reached >= sub.NeededWidth.Ticks, AuditRule.SubPanels, $"{name}: the strips of sub-panel {sub.Number} reach {reached} ticks of {sub.NeededWidth.Ticks}.");
            scope.Findings.Require(
                sub.Strips.Select(strip => strip.Order).SequenceEqual(Enumerable.Range(1, sub.Strips.Count)),
                AuditRule.GlueUps, $"{name}: the strips of sub-panel {sub.Number} are not numbered from 1 in order.");
        }
    }

    /// <summary>
    /// The widths of the sub-panels add up to the panel with its seams; an equal share that is rounded up makes at most a tick more of each. None is
    /// narrower than a strip, unless equal shares are.
    /// </summary>
    private static void CheckSum(AuditScope scope, string name, GlueUp glueUp, Panel panel)
    {
        var shop = scope.Problem.Shop;
        var seams = glueUp.SubPanels.Count - 1;
        var needed = (Int128)panel.Finished.Width.Ticks + shop.PanelOversize.Ticks + (shop.SeamAllowance.Ticks * (Int128)seams);
        var sum = glueUp.SubPanels.Aggregate(Int128.Zero, (total, sub) => total + sub.NeededWidth.Ticks);
        scope.Findings.Require(
            sum >= needed && sum <= needed + seams, AuditRule.SubPanels, $"{name}: the sub-panels are {sum} ticks wide together, {needed} are needed.");
        var least = Int128.Min((panel.NarrowestStrip ?? shop.NarrowestStrip).Ticks, needed / Math.Max(1, glueUp.SubPanels.Count));
        foreach (var sub in glueUp.SubPanels.Where(sub => sub.NeededWidth.Ticks < least))
        {
            scope.Findings.Add(AuditRule.SubPanels, $"{name}: sub-panel {sub.Number} is {sub.NeededWidth} wide, less than a strip.");
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
