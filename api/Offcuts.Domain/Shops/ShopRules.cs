namespace Offcuts.Domain;

/// <summary>What every shop's settings must keep.</summary>
public static class ShopRules
{
    // No saw blade of a workshop is wider, and no milling takes more; a larger number was written in the wrong unit.
    private static readonly Length WidestKerf = Length.FromInches(1);
    private const int LongestHold = 3650;
    private static readonly Length LargestAllowance = Length.FromInches(12);

    // Twice the widest machine of a factory, and more than any piece that is too short for one.
    private static readonly Length LargestMachine = Length.FromInches(120);

    /// <summary>Everything that is wrong with the settings, with pointers such as <c>#/kerf</c>; empty if nothing is.</summary>
    public static IReadOnlyList<InputFault> Check(Shop shop)
    {
        var faults = new FaultList();
        if (!MoneyText.IsCurrencyCode(shop.Currency))
        {
            faults.Add("#/currency", $"{LengthText.Quote(shop.Currency)}: give the three capital letters of ISO 4217, for instance USD.");
        }

        Upto(faults, "#/kerf", shop.Kerf, WidestKerf);
        CheckAllowances(faults, "#/rough", shop.Rough);
        CheckAllowances(faults, "#/surfaced", shop.Surfaced);
        CheckAllowances(faults, "#/skipPlaned", shop.SkipPlaned);
        CheckAllowances(faults, "#/sheet", shop.Sheet);
        CheckAllowances(faults, "#/estimateMargin", shop.EstimateMargin);
        Upto(faults, "#/flatEnough", shop.FlatEnough, WidestKerf);
        Upto(faults, "#/endTrimChecked", shop.EndTrimChecked, LargestAllowance);
        Upto(faults, "#/endTrimUnknown", shop.EndTrimUnknown, LargestAllowance);
        Upto(faults, "#/factoryEdgeTrim", shop.FactoryEdgeTrim, LargestAllowance);
        Upto(faults, "#/panelOversize", shop.PanelOversize, LargestAllowance);
        Upto(faults, "#/seamAllowance", shop.SeamAllowance, LargestAllowance);
        Machine(faults, "#/planerWidth", "planer's width", shop.PlanerWidth);
        Machine(faults, "#/jointerWidth", "jointer's width", shop.JointerWidth);
        Machine(faults, "#/narrowestStrip", "narrowest strip", shop.NarrowestStrip);
        Machine(faults, "#/widestStrip", "widest strip", shop.WidestStrip);
        faults.Size("#/keep", shop.Keep);
        Upto(faults, "#/shortestAtPlaner", shop.ShortestAtPlaner, LargestMachine);
        Upto(faults, "#/shortestAtJointer", shop.ShortestAtJointer, LargestMachine);
        Upto(faults, "#/resawKerf", shop.ResawKerf, WidestKerf);
        Upto(faults, "#/resawCleanup", shop.ResawCleanup, LargestAllowance);
        if (shop.ResawHeight is { } height)
        {
            Machine(faults, "#/resawHeight", "resaw's height", height);
        }

        Machine(faults, "#/widePanel", "width of a wide panel", shop.WidePanel);
        faults.Count("#/readingDays", shop.ReadingDays, 1, LongestHold);
        CheckClimate(shop.Climate, faults);
        faults.Price("#/secondStop", shop.SecondStop);
        if (shop.HoldDays is { } days)
        {
            faults.Count("#/holdDays", days, 1, LongestHold);
        }

        CheckTogether(shop, faults);
        return faults.Found;
    }

    // The handbook's table reaches further than any room that furniture lives in.
    private static void CheckClimate(Climate climate, FaultList faults)
    {
        var (least, most) = EquilibriumMoisture.Humidity;
        Within("lowHumidity", climate.LowHumidity, least, most);
        Within("highHumidity", climate.HighHumidity, least, most);
        Within("celsius", climate.Celsius, 0, 50);
        if (climate.LowHumidity > climate.HighHumidity)
        {
            faults.Add("#/climate/lowHumidity", $"The dry season ({climate.LowHumidity} %) is damper than the damp one ({climate.HighHumidity} %): exchange them.");
        }

        void Within(string member, decimal value, decimal lowest, decimal highest)
        {
            if (value < lowest || value > highest)
            {
                faults.Add($"#/climate/{member}", $"{value}: give {lowest} to {highest}.");
            }
        }
    }

    private static void CheckTogether(Shop shop, FaultList faults)
    {
        if (shop.NarrowestStrip > shop.WidestStrip)
        {
            faults.Add("#/narrowestStrip", $"The narrowest strip is wider than the widest ({LengthText.Format(shop.WidestStrip, shop.Unit)}): make it narrower.");
        }

        if (shop.SeamAllowance >= shop.PlanerWidth)
        {
            faults.Add("#/seamAllowance", $"A seam takes as much as the planer is wide ({LengthText.Format(shop.PlanerWidth, shop.Unit)}): make it smaller.");
        }

        if (shop.Sheet.Thickness != Length.Zero)
        {
            faults.Add("#/sheet", $"Sheets are never planed: their thickness allowance is zero.");
        }
    }

    private static void CheckAllowances(FaultList faults, string at, Allowances allowances)
    {
        Upto(faults, $"{at}/length", allowances.Length, LargestAllowance);
        Upto(faults, $"{at}/width", allowances.Width, LargestAllowance);
        Upto(faults, $"{at}/thickness", allowances.Thickness, LargestAllowance);
    }

    private static void Machine(FaultList faults, string at, string what, Length value)
    {
        if (value <= Length.Zero || value > LargestMachine)
        {
            faults.Add(at, $"The {what} is {LengthText.FormatExact(value)}: give more than zero and at most {LengthText.FormatExact(LargestMachine)}.");
        }
    }

    private static void Upto(FaultList faults, string at, Length value, Length most)
    {
        if (value < Length.Zero || value > most)
        {
            faults.Add(at, $"{LengthText.FormatExact(value)}: give zero or more and at most {LengthText.FormatExact(most)}.");
        }
    }
}
