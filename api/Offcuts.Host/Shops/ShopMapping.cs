using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Shops;

/// <summary>The shop between the wire and the domain.</summary>
internal static class ShopMapping
{
    private static readonly string[] Lengths =
        ["kerf", "panelOversize", "seamAllowance", "planerWidth", "jointerWidth", "narrowestStrip", "widestStrip", "shortestAtPlaner", "shortestAtJointer",
        "flatEnough", "endTrimChecked", "endTrimUnknown", "factoryEdgeTrim", "resawHeight", "resawKerf", "resawCleanup", "widePanel",
        .. from kind in (string[])["rough", "surfaced", "skipPlaned", "sheet"] from side in (string[])["length", "width", "thickness"] select $"{kind}/{side}"];

    private static readonly (string Rule, string Wire)[] Air =
        [("/lowHumidity", "/lowHumidityPercent"), ("/highHumidity", "/highHumidityPercent"), ("/celsius", "/temperatureCelsius")];

    public static Shop ToShop(ShopEntry entry, string at, Faults faults)
    {
        var standard = new Shop();
        var shop = new Shop
        {
            Unit = entry.Unit is { } unit ? faults.Word<DisplayUnit>($"{at}/unit", unit) : standard.Unit,
            Currency = entry.Currency ?? standard.Currency,
            Kerf = Size("kerfMm", entry.KerfMm, standard.Kerf, zeroAllowed: true),
            Rough = ToAllowances("rough", entry.Rough, standard.Rough),
            Surfaced = ToAllowances("surfaced", entry.Surfaced, standard.Surfaced),
            Sheet = ToAllowances("sheet", entry.Sheet, standard.Sheet),
            PanelOversize = Size("panelOversizeMm", entry.PanelOversizeMm, standard.PanelOversize, zeroAllowed: true),
            SeamAllowance = Size("seamAllowanceMm", entry.SeamAllowanceMm, standard.SeamAllowance, zeroAllowed: true),
            PlanerWidth = Size("planerWidthMm", entry.PlanerWidthMm, standard.PlanerWidth),
            JointerWidth = Size("jointerWidthMm", entry.JointerWidthMm, standard.JointerWidth),
            NarrowestStrip = Size("narrowestStripMm", entry.NarrowestStripMm, standard.NarrowestStrip),
            WidestStrip = Size("widestStripMm", entry.WidestStripMm, standard.WidestStrip),
            Keep = entry.Keep is { } keep ? ToDimensions(keep, $"{at}/keep", faults) : standard.Keep,
            ShortestAtPlaner = Size("shortestAtPlanerMm", entry.ShortestAtPlanerMm, standard.ShortestAtPlaner, zeroAllowed: true),
            ShortestAtJointer = Size("shortestAtJointerMm", entry.ShortestAtJointerMm, standard.ShortestAtJointer, zeroAllowed: true),
            Recut = entry.Recut ?? standard.Recut,
            SkipPlaned = ToAllowances("skipPlaned", entry.SkipPlaned, standard.SkipPlaned),
            FlatEnough = Size("flatEnoughMm", entry.FlatEnoughMm, standard.FlatEnough, zeroAllowed: true),
            EndTrimChecked = Size("endTrimCheckedMm", entry.EndTrimCheckedMm, standard.EndTrimChecked, zeroAllowed: true),
            EndTrimUnknown = Size("endTrimUnknownMm", entry.EndTrimUnknownMm, standard.EndTrimUnknown, zeroAllowed: true),
            FactoryEdgeTrim = Size("factoryEdgeTrimMm", entry.FactoryEdgeTrimMm, standard.FactoryEdgeTrim, zeroAllowed: true),
            ShortBlanks = entry.ShortBlanks is { } word ? faults.Word<ShortBlanks>($"{at}/shortBlanks", word) : standard.ShortBlanks,
            ResawHeight = entry.ResawHeightMm is { } height ? faults.Millimetres($"{at}/resawHeightMm", height) : null,
            ResawKerf = Size("resawKerfMm", entry.ResawKerfMm, standard.ResawKerf, zeroAllowed: true),
            ResawCleanup = Size("resawCleanupMm", entry.ResawCleanupMm, standard.ResawCleanup, zeroAllowed: true),
            HoldDays = entry.HoldDays,
            SecondStop = entry.SecondStop is { } stop ? faults.Money($"{at}/secondStop", stop, entry.Currency ?? standard.Currency) : standard.SecondStop,
            EstimateMargin = ToAllowances("estimateMargin", entry.EstimateMargin, standard.EstimateMargin),
            WidePanel = Size("widePanelMm", entry.WidePanelMm, standard.WidePanel),
            Climate = entry.Climate is { } air ? new Climate(air.LowHumidityPercent, air.HighHumidityPercent, air.TemperatureCelsius) : standard.Climate,
            ReadingDays = entry.ReadingDays ?? standard.ReadingDays,
        };
        faults.AddRules(at, () => ShopRules.Check(shop), [.. Lengths.Select(name => ($"#/{name}", $"#/{name}Mm")), .. Air]);
        return shop;

        Length Size(string member, decimal? value, Length otherwise, bool zeroAllowed = false) =>
            value is { } given ? faults.Millimetres($"{at}/{member}", given, zeroAllowed) : otherwise;

        Allowances ToAllowances(string member, AllowanceRecord? record, Allowances otherwise) => record is null ? otherwise : new(
            faults.Millimetres($"{at}/{member}/lengthMm", record.LengthMm, zeroAllowed: true),
            faults.Millimetres($"{at}/{member}/widthMm", record.WidthMm, zeroAllowed: true),
            faults.Millimetres($"{at}/{member}/thicknessMm", record.ThicknessMm, zeroAllowed: true));
    }

    public static ShopRecord ToRecord(Shop shop) => new(
        Words.Of(shop.Unit), shop.Currency, shop.Kerf.Millimetres, ToRecord(shop.Rough), ToRecord(shop.Surfaced), ToRecord(shop.Sheet),
        shop.PanelOversize.Millimetres, shop.SeamAllowance.Millimetres, shop.PlanerWidth.Millimetres, shop.JointerWidth.Millimetres,
        shop.NarrowestStrip.Millimetres, shop.WidestStrip.Millimetres, ToRecord(shop.Keep),
        shop.ShortestAtPlaner.Millimetres, shop.ShortestAtJointer.Millimetres, shop.Recut,
        ToRecord(shop.SkipPlaned), shop.FlatEnough.Millimetres, shop.EndTrimChecked.Millimetres, shop.EndTrimUnknown.Millimetres,
        shop.FactoryEdgeTrim.Millimetres,
        Words.Of(shop.ShortBlanks), shop.ResawHeight?.Millimetres, shop.ResawKerf.Millimetres, shop.ResawCleanup.Millimetres,
        ToRecord(shop.EstimateMargin), shop.WidePanel.Millimetres, ToRecord(shop.Climate), shop.ReadingDays, shop.HoldDays,
        MoneyText.ToDecimal(shop.SecondStop, shop.Currency));

    /// <summary>The shop with every value named, so that a later default does not change what was stored.</summary>
    public static ShopEntry ToEntry(Shop shop)
    {
        var record = ToRecord(shop);
        return new ShopEntry(
            record.Unit, record.Currency, record.KerfMm, record.Rough, record.Surfaced, record.Sheet, record.PanelOversizeMm,
            record.SeamAllowanceMm, record.PlanerWidthMm, record.JointerWidthMm, record.NarrowestStripMm, record.WidestStripMm,
            record.Keep, record.ShortestAtPlanerMm, record.ShortestAtJointerMm, record.Recut,
            record.SkipPlaned, record.FlatEnoughMm, record.EndTrimCheckedMm, record.EndTrimUnknownMm, record.FactoryEdgeTrimMm,
            record.ShortBlanks, record.ResawHeightMm, record.ResawKerfMm, record.ResawCleanupMm, record.HoldDays, record.EstimateMargin,
            record.WidePanelMm, record.Climate, record.ReadingDays, record.SecondStop);
    }

    public static SizeRecord ToRecord(Dimensions size) => new(size.Thickness.Millimetres, size.Width.Millimetres, size.Length.Millimetres);

    public static Dimensions ToDimensions(SizeRecord size, string at, Faults faults) => new(
        faults.Millimetres($"{at}/thicknessMm", size.ThicknessMm),
        faults.Millimetres($"{at}/widthMm", size.WidthMm),
        faults.Millimetres($"{at}/lengthMm", size.LengthMm));

    private static ClimateRecord ToRecord(Climate climate) => new(climate.LowHumidity, climate.HighHumidity, climate.Celsius);

    private static AllowanceRecord ToRecord(Allowances allowances) =>
        new(allowances.Length.Millimetres, allowances.Width.Millimetres, allowances.Thickness.Millimetres);
}
