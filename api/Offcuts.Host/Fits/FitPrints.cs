using System.Collections.Concurrent;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Host.Keeping;
using Offcuts.Host.Offers;
using Offcuts.Host.Plans;
using Offcuts.Host.Shops;
using Offcuts.Planning;
using Offcuts.Planning.Fitting;
using Offcuts.Storage;

namespace Offcuts.Host.Fits;

/// <summary>Hashes of all that a plan of a design depends on. What it does not depend on (names, places, tags, the unit) is left out of them.</summary>
internal sealed class FitPrints
{
    /// <summary>Raise it when a quick plan, or what is kept of plans, changes its meaning.</summary>
    private const string Version = "3";

    private readonly FitStock stock;
    private readonly string setting;
    private readonly Dictionary<string, string> woods;
    private readonly ConcurrentDictionary<string, string> offers = new(StringComparer.Ordinal);

    public FitPrints(FitStock stock)
    {
        this.stock = stock;
        // How long plans hold boards, and in which unit sizes are told, is nothing to a plan.
        var shop = stock.Shop.Shop;
        setting = Print(JsonSerializer.SerializeToUtf8Bytes(ShopMapping.ToEntry(shop) with { Unit = null, HoldDays = null }, WireJson.Default.ShopEntry))
            + Print(JsonSerializer.SerializeToUtf8Bytes(KeepRuleMapping.ToEntry(shop.KeepRule), WireJson.Default.KeepRuleEntry));
        woods = stock.Shop.Stock.ToDictionary(board => board.Id, Wood, StringComparer.Ordinal);
    }

    /// <summary>Marks the design with all but the boards that its plan depends on: 64 hexadecimal digits.</summary>
    public string Mark(DesignReach reach)
    {
        var design = reach.Design.Design;
        var rates = design.Parts.SelectMany(part => part.Species).Concat(design.Panels.SelectMany(panel => panel.Species)).Distinct().Order(StringComparer.Ordinal)
            .Select(species => string.Create(CultureInfo.InvariantCulture, $"{species} {stock.Shop.Rates.Of(species).MinorUnits}"));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n',
        [
            Version, Planner.Version, setting, stock.Shop.Today.ToString("O", CultureInfo.InvariantCulture),
            string.Create(CultureInfo.InvariantCulture, $"{stock.Shop.Rates.Otherwise.MinorUnits}"), .. rates,
            .. stock.Shop.Terms.Where(terms => terms.Any).OrderBy(terms => terms.Supplier, StringComparer.Ordinal).Select(terms => terms.ToString()),
            Print(JsonSerializer.SerializeToUtf8Bytes(
                DesignMapping.ToEntry(design with { Name = "", Description = null, Tags = [], Hours = null }, stock.Shop.Shop.Currency), WireJson.Default.DesignEntry)),
            .. reach.Offers.Select(offer => offers.GetOrAdd(offer.Id, _ => Print(JsonSerializer.SerializeToUtf8Bytes(
                OfferMapping.ToRecord(offer, stock.Shop.Shop.Currency), WireJson.Default.OfferRecord)))),
        ]))));
    }

    /// <summary>The boards that a design can touch.</summary>
    public SeenStock Seen(DesignReach reach) => new([.. reach.Boards.Select(board => new TouchableBoard(board.Id, woods[board.Id], board.Quantity))]);

    // Of its age only the day counts, of its place only how hard it is to get at, and how damp it is only warns.
    private string Wood(Board board) => Print(JsonSerializer.SerializeToUtf8Bytes(
        ProblemMapping.ToRecord(board) with
        {
            Id = "",
            Quantity = 1,
            Place = Words.Of(stock.Shop.ReachOf(board)),
            Moisture = null,
            LoggedAt = new DateTimeOffset(board.LoggedAt.UtcDateTime.Date, TimeSpan.Zero),
        },
        WireJson.Default.StockBoard));

    // 64 bits: in a stock of thousands two are alike by chance once in a million million times.
    private static string Print(byte[] content) => Convert.ToHexStringLower(SHA256.HashData(content))[..16];
}
