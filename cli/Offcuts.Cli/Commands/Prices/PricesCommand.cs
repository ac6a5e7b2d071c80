using System.CommandLine;
using System.Globalization;
using Offcuts.Cli.Commands.Offers;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Prices;

/// <summary><c>offcuts prices</c>.</summary>
internal static class PricesCommand
{
    private static readonly Argument<string> File = Documents.Argument("A supplier's price list");
    private static readonly Argument<string> Supplier = new("SUPPLIER") { Description = "The supplier, by name or id" };
    private static readonly Option<string> As = new("--supplier") { Description = "The supplier in lower-case words with hyphens, if the list does not name it", HelpName = "NAME" };
    private static readonly Option<bool> Yes = new("--yes", "-y") { Description = "Do not ask" };

    public static Verb Create() => new Verb(
        "prices", "Suppliers' price lists", "offcuts prices load riverside-lumber.yaml", "offcuts prices list")
        .With(
            new Verb("list", "List the price lists", "offcuts prices list").Does(ListAsync),
            new Verb(
                "load", "Load a price list in place of all that this supplier offered before",
                "offcuts prices load riverside-lumber.yaml", "offcuts prices load prices.json --supplier riverside-lumber")
                .With(File, As).Begins().Does(LoadAsync),
            new Verb("show", "Show a supplier's offers", "offcuts prices show riverside-lumber").With(Supplier).Does(ShowAsync),
            new Verb("remove", "Forget a supplier's offers", "offcuts prices remove riverside-lumber --yes").With(Supplier, Yes).Does(RemoveAsync));

    private static async Task<int> ListAsync(Run run)
    {
        var lists = await (await run.ConnectAsync()).ListPriceListsAsync(run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(lists, ClientJson.Default.PriceLists);
            return ExitCode.Ok;
        }

        if (lists.Items.Count == 0)
        {
            run.Say("There are no price lists yet. Load one with 'offcuts prices load FILE'.");
            return ExitCode.Ok;
        }

        var table = new Table("SUPPLIER", "ID", ">OFFERS", "LOADED");
        foreach (var list in lists.Items)
        {
            table.Add(list.SupplierName ?? list.Supplier, list.Supplier, list.Offers.ToString(CultureInfo.InvariantCulture), list.UpdatedAt.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;
    }

    private static async Task<int> LoadAsync(Run run)
    {
        var path = run.Get(File);
        var text = await Documents.TextAsync(run, path);
        var supplier = run.Get(As) ?? SupplierName.In(text)
            ?? throw CliException.Invalid("The list names no supplier. Write 'supplier: NAME' at its head, or give --supplier NAME.");
        var api = await run.ConnectAsync();
        using var document = Documents.Of(text, path);
        var list = await api.ReplacePriceListAsync(supplier, document, run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(list, ClientJson.Default.PriceListRecord);
            return ExitCode.Ok;
        }

        run.Terminal.Out.WriteLine(SafeText.Of(list.Supplier));
        run.Say(string.Create(CultureInfo.InvariantCulture, $"Loaded {list.Offers.Count} offers of {list.SupplierName ?? list.Supplier}. See them with 'offcuts prices show {list.Supplier}'."));
        return ExitCode.Ok;
    }

    private static async Task<int> ShowAsync(Run run)
    {
        var list = await (await run.ConnectAsync()).GetPriceListAsync(Slug.Of(run.Get(Supplier)), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(list, ClientJson.Default.PriceListRecord);
        }
        else
        {
            var shop = await run.ShopAsync();
            OfferView.Write(list.Offers, shop, await run.UnitAsync(), run.Terminal);
            WriteTerms(run, list.Terms, shop.Currency);
        }

        return ExitCode.Ok;
    }

    private static void WriteTerms(Run run, TermsRecord? terms, string currency)
    {
        if (terms is { Delivery: > 0 })
        {
            run.Terminal.Out.WriteLine($"Delivery: {Price.Of(terms.Delivery, currency)} an order.");
        }

        if (terms is { MinimumOrder: > 0 })
        {
            run.Terminal.Out.WriteLine($"Minimum order: {Price.Of(terms.MinimumOrder, currency)}.");
        }
    }

    private static async Task<int> RemoveAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var list = await api.GetPriceListAsync(Slug.Of(run.Get(Supplier)), run.Cancellation);
        if (!run.Confirm(string.Create(CultureInfo.InvariantCulture, $"Remove all {list.Offers.Count} offers of {list.SupplierName ?? list.Supplier}?"), Yes))
        {
            run.Say("Nothing was removed.");
            return ExitCode.Failed;
        }

        await api.DeletePriceListAsync(list.Supplier, run.Cancellation);
        return ExitCode.Ok;
    }
}
