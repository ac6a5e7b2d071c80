using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Shop;

/// <summary>The shop as a person reads it.</summary>
internal static class ShopView
{
    /// <summary>Every setting with its option and what it is for.</summary>
    public static void Write(ShopRecord shop, DisplayUnit unit, Terminal terminal)
    {
        var table = new Table("SETTING", ">VALUE", "WHAT IT IS");
        table.Add("unit", shop.Unit, "how sizes are read and shown: inch or millimetre");
        table.Add("currency", shop.Currency, "of all prices");
        foreach (var setting in ShopLengths.All)
        {
            table.Add(setting.Option.Name[2..], LengthText.Format(Length.FromMillimetres(setting.Of(shop)), unit), setting.Option.Description);
        }

        table.Add("keep", Lengths.Text(shop.Keep, unit), "smallest leftover worth keeping");
        table.Add("recut", shop.Recut ? "yes" : "no", "whether a strip may be cut once more to hold several blanks");
        table.Add("short-blanks", shop.ShortBlanks, "blanks too short for a machine: allow, warn or refuse them");
        table.Add("humidity", ClimateText.Humidity(shop.Climate.LowHumidityPercent, shop.Climate.HighHumidityPercent), "relative humidity where furniture lives, dry season to damp season");
        table.Add("temperature", ClimateText.Temperature(shop.Climate.TemperatureCelsius), "and its temperature");
        table.Add("reading-days", shop.ReadingDays.ToString(CultureInfo.InvariantCulture), "for how many days a moisture reading counts");
        table.Add("hold-days", shop.HoldDays?.ToString(CultureInfo.InvariantCulture) ?? "no limit", "how long an accepted plan of which nothing is cut holds its boards");
        table.Add("second-stop", Price.Of(shop.SecondStop, shop.Currency), "what every supplier after the first must save to be worth the stop");
        table.Write(terminal);
    }
}
