using System.CommandLine;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Shop;

/// <summary>One length among the shop's settings.</summary>
/// <param name="Option">The option that sets it.</param>
/// <param name="Of">Reads it, in millimetres.</param>
/// <param name="With">Sets it, in millimetres.</param>
internal sealed record ShopLength(Option<string> Option, Func<ShopRecord, decimal> Of, Func<ShopRecord, decimal, ShopRecord> With);

/// <summary>All lengths among the shop's settings, in the order in which they are shown.</summary>
internal static class ShopLengths
{
    public static readonly IReadOnlyList<ShopLength> All =
    [
        Setting("--kerf", "width of the saw's cut", shop => shop.KerfMm, (shop, mm) => shop with { KerfMm = mm }),
        Setting("--rough-thickness", "what milling takes from the thickness of rough stock", shop => shop.Rough.ThicknessMm, (shop, mm) => shop with { Rough = shop.Rough with { ThicknessMm = mm } }),
        Setting("--rough-width", "and from its width", shop => shop.Rough.WidthMm, (shop, mm) => shop with { Rough = shop.Rough with { WidthMm = mm } }),
        Setting("--rough-length", "and from its length", shop => shop.Rough.LengthMm, (shop, mm) => shop with { Rough = shop.Rough with { LengthMm = mm } }),
        Setting("--surfaced-thickness", "what milling takes from the thickness of surfaced stock", shop => shop.Surfaced.ThicknessMm, (shop, mm) => shop with { Surfaced = shop.Surfaced with { ThicknessMm = mm } }),
        Setting("--surfaced-width", "and from its width", shop => shop.Surfaced.WidthMm, (shop, mm) => shop with { Surfaced = shop.Surfaced with { WidthMm = mm } }),
        Setting("--surfaced-length", "and from its length", shop => shop.Surfaced.LengthMm, (shop, mm) => shop with { Surfaced = shop.Surfaced with { LengthMm = mm } }),
        Setting("--skip-planed-thickness", "what milling takes from the thickness of skip-planed stock", shop => shop.SkipPlaned.ThicknessMm, (shop, mm) => shop with { SkipPlaned = shop.SkipPlaned with { ThicknessMm = mm } }),
        Setting("--skip-planed-width", "and from its width", shop => shop.SkipPlaned.WidthMm, (shop, mm) => shop with { SkipPlaned = shop.SkipPlaned with { WidthMm = mm } }),
        Setting("--skip-planed-length", "and from its length", shop => shop.SkipPlaned.LengthMm, (shop, mm) => shop with { SkipPlaned = shop.SkipPlaned with { LengthMm = mm } }),
        Setting("--flat-enough", "how far surfaced stock of the right thickness may be out of flat", shop => shop.FlatEnoughMm, (shop, mm) => shop with { FlatEnoughMm = mm }),
        Setting("--end-trim-checked", "what comes off a checked end; many makers take 1 to 2 in", shop => shop.EndTrimCheckedMm, (shop, mm) => shop with { EndTrimCheckedMm = mm }),
        Setting("--end-trim-unknown", "what comes off an end of rough stock that nobody looked at", shop => shop.EndTrimUnknownMm, (shop, mm) => shop with { EndTrimUnknownMm = mm }),
        Setting("--factory-edge-trim", "what comes off every edge of a sheet", shop => shop.FactoryEdgeTrimMm, (shop, mm) => shop with { FactoryEdgeTrimMm = mm }),
        Setting("--sheet-width", "what cutting to size takes from the width of a sheet's part", shop => shop.Sheet.WidthMm, (shop, mm) => shop with { Sheet = shop.Sheet with { WidthMm = mm } }),
        Setting("--sheet-length", "and from its length", shop => shop.Sheet.LengthMm, (shop, mm) => shop with { Sheet = shop.Sheet with { LengthMm = mm } }),
        Setting("--panel-oversize", "how much wider than finished a panel is glued up", shop => shop.PanelOversizeMm, (shop, mm) => shop with { PanelOversizeMm = mm }),
        Setting("--seam-allowance", "what jointing a seam between sub-panels takes", shop => shop.SeamAllowanceMm, (shop, mm) => shop with { SeamAllowanceMm = mm }),
        Setting("--planer-width", "widest piece the planer takes", shop => shop.PlanerWidthMm, (shop, mm) => shop with { PlanerWidthMm = mm }),
        Setting("--jointer-width", "widest rough piece the jointer flattens", shop => shop.JointerWidthMm, (shop, mm) => shop with { JointerWidthMm = mm }),
        Setting("--narrowest-strip", "narrowest strip to glue up", shop => shop.NarrowestStripMm, (shop, mm) => shop with { NarrowestStripMm = mm }),
        Setting("--widest-strip", "widest strip to glue up", shop => shop.WidestStripMm, (shop, mm) => shop with { WidestStripMm = mm }),
        Setting("--shortest-at-planer", "shortest piece safe at the planer; its manual decides", shop => shop.ShortestAtPlanerMm, (shop, mm) => shop with { ShortestAtPlanerMm = mm }),
        Setting("--shortest-at-jointer", "shortest piece safe at the jointer; its manual decides", shop => shop.ShortestAtJointerMm, (shop, mm) => shop with { ShortestAtJointerMm = mm }),
        Setting("--estimate-margin-thickness", "how much less a plan counts of a thickness that was only estimated", shop => shop.EstimateMargin.ThicknessMm, (shop, mm) => shop with { EstimateMargin = shop.EstimateMargin with { ThicknessMm = mm } }),
        Setting("--estimate-margin-width", "and of a width", shop => shop.EstimateMargin.WidthMm, (shop, mm) => shop with { EstimateMargin = shop.EstimateMargin with { WidthMm = mm } }),
        Setting("--estimate-margin-length", "and of a length", shop => shop.EstimateMargin.LengthMm, (shop, mm) => shop with { EstimateMargin = shop.EstimateMargin with { LengthMm = mm } }),
        Setting("--wide-panel", "from this width a solid panel's movement is warned of", shop => shop.WidePanelMm, (shop, mm) => shop with { WidePanelMm = mm }),
        Setting("--resaw-height", "widest blank that the resaw takes on edge; 0 if the shop does not resaw", shop => shop.ResawHeightMm ?? 0, (shop, mm) => shop with { ResawHeightMm = mm == 0 ? null : mm }),
        Setting("--resaw-kerf", "width of the resaw's cut", shop => shop.ResawKerfMm, (shop, mm) => shop with { ResawKerfMm = mm }),
        Setting("--resaw-cleanup", "what a resawn slice is sawn thicker than finished", shop => shop.ResawCleanupMm, (shop, mm) => shop with { ResawCleanupMm = mm }),
    ];

    private static ShopLength Setting(string name, string what, Func<ShopRecord, decimal> of, Func<ShopRecord, decimal, ShopRecord> with) =>
        new(new Option<string>(name) { Description = what, HelpName = "LENGTH" }, of, with);
}
