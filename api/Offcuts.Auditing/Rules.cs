using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>Rules 1 to 3 as the auditor reads them.</summary>
internal static class Rules
{
    public static Allowances AllowancesFor(Shop shop, BoardKind kind, Surface surface)
    {
        if (kind == BoardKind.Sheet)
        {
            return shop.Sheet;
        }

        return surface == Surface.Surfaced ? shop.Surfaced : shop.Rough;
    }

    public static bool ThicknessSuits(Shop shop, BoardKind kind, Surface surface, Length board, Length finished)
    {
        var untouched = kind == BoardKind.Sheet || surface == Surface.Surfaced;
        if (untouched && board == finished)
        {
            return true;
        }

        return kind == BoardKind.Solid && board - AllowancesFor(shop, kind, surface).Thickness >= finished;
    }

    /// <summary>The widest blank; null where nothing is milled.</summary>
    public static Length? WidestBlank(Shop shop, BoardKind kind, Surface surface, Length board, Length finished)
    {
        if (kind == BoardKind.Sheet || (surface == Surface.Surfaced && board == finished))
        {
            return null;
        }

        return surface == Surface.Rough && shop.JointerWidth < shop.PlanerWidth ? shop.JointerWidth : shop.PlanerWidth;
    }

    /// <summary>Number and width of the sub-panels of a panel; number 0 if it cannot be made.</summary>
    public static (int Count, Length Width) SubPanels(Shop shop, Panel panel)
    {
        var glued = panel.Finished.Width.Ticks + shop.PanelOversize.Ticks;
        for (var n = 1; n <= 100; n++)
        {
            var each = (glued + ((n - 1) * shop.SeamAllowance.Ticks) + (n - 1)) / n;
            if (each <= shop.PlanerWidth.Ticks)
            {
                return (n, Length.FromTicks(each));
            }
        }

        return (0, Length.Zero);
    }

    public static (Length Narrowest, Length Widest) StripLimits(Shop shop, Panel panel) =>
        (panel.NarrowestStrip ?? shop.NarrowestStrip, panel.WidestStrip ?? shop.WidestStrip);
}
