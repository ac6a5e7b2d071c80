using System.CommandLine;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Shop;

/// <summary><c>offcuts shop set</c>.</summary>
internal static class Set
{
    private static readonly Option<string> Unit = new("--unit") { Description = "how sizes are read and shown: inch, millimetre", HelpName = "WORD", CompletionSources = { "inch", "millimetre" } };
    private static readonly Option<string> Currency = new("--currency") { Description = "ISO 4217 code of all prices; it stays while there are price lists, because nothing converts them", HelpName = "CODE" };
    private static readonly Option<string> Keep = new("--keep") { Description = "smallest leftover worth keeping", HelpName = "SIZE" };
    private static readonly Option<string> Recut = new("--recut") { Description = "whether a strip may be cut once more: true, false", HelpName = "WORD", CompletionSources = { "true", "false" } };

    private static readonly Option<string> Short = new("--short-blanks") { Description = "blanks too short for a machine: allow, warn, refuse (plan longer ones, cut to length after milling)", HelpName = "WORD", CompletionSources = { "allow", "warn", "refuse" } };

    private static readonly Option<int?> HoldDays = new("--hold-days") { Description = "for how many days an accepted plan of which nothing is cut holds its boards; 0 for no limit", HelpName = "DAYS", CustomParser = Values.Whole };

    private static readonly Option<string> Humidity = new("--humidity") { Description = "relative humidity where furniture lives, from the dry season to the damp one, for instance 30..60", HelpName = "RANGE" };
    private static readonly Option<string> Temperature = new("--temperature") { Description = "and its temperature, for instance 21C or 70F", HelpName = "DEGREES" };
    private static readonly Option<int?> ReadingDays = new("--reading-days") { Description = "for how many days a moisture reading counts", HelpName = "DAYS", CustomParser = Values.Whole };
    private static readonly Option<string> SecondStop = new("--second-stop") { Description = "what every supplier after the first must save to be worth the stop, in the shop's currency; 0 for nothing", HelpName = "MONEY" };

    private static readonly Symbol[] Options = [Unit, Currency, .. ShopLengths.All.Select(setting => setting.Option), Keep, Recut, Short, Humidity, Temperature, ReadingDays, HoldDays, SecondStop];

    public static Verb Create() => new Verb(
        "set",
        "Change settings; what is not named stays as it is",
        "offcuts shop set --unit millimetre --currency EUR",
        "offcuts shop set --kerf 3/32 --planer-width 13 --keep \"1/2 x 2 x 12\"",
        "offcuts shop set --humidity 25..65 --temperature 68F",
        "offcuts shop set --rough-thickness 0.25in --recut false")
        .With(Options).Begins().Does(SetAsync);

    private static async Task<int> SetAsync(Run run)
    {
        var recut = Values.Truth(run, Recut);
        var api = await run.ConnectAsync();
        var old = await run.ShopAsync();
        // Lengths on this command line are read in the unit that the shop had: the new one may be set beside them.
        var unit = await run.UnitAsync();
        var wanted = old with
        {
            Unit = run.Get(Unit) ?? old.Unit,
            Currency = run.Get(Currency) ?? old.Currency,
            Recut = recut ?? old.Recut,
            ShortBlanks = run.Get(Short) ?? old.ShortBlanks,
            HoldDays = run.Get(HoldDays) is { } days ? (days == 0 ? null : days) : old.HoldDays,
            ReadingDays = run.Get(ReadingDays) ?? old.ReadingDays,
            Climate = ClimateWith(run, old.Climate),
            SecondStop = run.Get(SecondStop) is { } stop ? Price.Read(SecondStop.Name, stop, run.Get(Currency) ?? old.Currency) : old.SecondStop,
            Keep = run.Get(Keep) is { } keep ? ToRecord(Lengths.Size(Keep.Name, [keep], unit)) : old.Keep,
        };
        foreach (var setting in ShopLengths.All)
        {
            if (Lengths.Millimetres(run, setting.Option, unit, zeroAllowed: true) is { } length)
            {
                wanted = setting.With(wanted, length);
            }
        }

        if (!run.IsAnyGiven(Options))
        {
            throw CliException.Usage("Nothing to change: name a setting, for instance --kerf 1/8. See 'offcuts shop set --help'.");
        }

        var shop = wanted == old ? old : await api.ReplaceShopAsync(ToEntry(wanted), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(shop, ClientJson.Default.ShopRecord);
        }
        else
        {
            ShopView.Write(shop, shop.Unit == "millimetre" ? DisplayUnit.Millimetre : DisplayUnit.Inch, run.Terminal);
        }

        if (wanted == old)
        {
            run.Say("It was so already: nothing has changed.");
        }

        return ExitCode.Ok;
    }

    private static ClimateRecord ClimateWith(Run run, ClimateRecord old)
    {
        var climate = old;
        if (run.Get(Humidity) is { } humidity)
        {
            climate = ClimateText.TryParseHumidity(humidity, out var range, out var error)
                ? climate with { LowHumidityPercent = range.Low, HighHumidityPercent = range.High }
                : throw CliException.Invalid($"{Humidity.Name}: {error}");
        }

        if (run.Get(Temperature) is { } temperature)
        {
            climate = ClimateText.TryParseTemperature(temperature, out var celsius, out var error)
                ? climate with { TemperatureCelsius = celsius }
                : throw CliException.Invalid($"{Temperature.Name}: {error}");
        }

        return climate;
    }

    private static SizeRecord ToRecord(Dimensions size) =>
        new(size.Thickness.Millimetres, size.Width.Millimetres, size.Length.Millimetres);

    private static ShopEntry ToEntry(ShopRecord shop) => new(
        shop.Unit, shop.Currency, shop.KerfMm, shop.Rough, shop.Surfaced, shop.Sheet, shop.PanelOversizeMm, shop.SeamAllowanceMm,
        shop.PlanerWidthMm, shop.JointerWidthMm, shop.NarrowestStripMm, shop.WidestStripMm, shop.Keep,
        shop.ShortestAtPlanerMm, shop.ShortestAtJointerMm, shop.Recut,
        shop.SkipPlaned, shop.FlatEnoughMm, shop.EndTrimCheckedMm, shop.EndTrimUnknownMm, shop.FactoryEdgeTrimMm,
        shop.ShortBlanks, shop.ResawHeightMm, shop.ResawKerfMm, shop.ResawCleanupMm, shop.HoldDays, shop.EstimateMargin,
        shop.WidePanelMm, shop.Climate, shop.ReadingDays, shop.SecondStop);
}
