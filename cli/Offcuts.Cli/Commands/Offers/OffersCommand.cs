using System.CommandLine;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Offers;

/// <summary><c>offcuts offers</c>.</summary>
internal static class OffersCommand
{
    private static readonly Option<string> Supplier = new("--supplier") { Description = "Only of this supplier, by name or id", HelpName = "NAME" };
    private static readonly Option<string> Species = new("--species") { Description = "Only of this species, by id or name", HelpName = "SPECIES" };
    private static readonly Option<string> Kind = new("--kind") { Description = "solid, sheet", HelpName = "WORD", CompletionSources = { "solid", "sheet" } };
    private static readonly Option<string> MinThickness = new("--min-thickness") { Description = "Least thickness", HelpName = "LENGTH" };
    private static readonly Option<string> MaxThickness = new("--max-thickness") { Description = "Greatest thickness", HelpName = "LENGTH" };

    public static Verb Create() => new Verb("offers", "What can be bought", "offcuts offers list --species white-ash")
        .With(new Verb(
            "list", "List offers of all suppliers",
            "offcuts offers list", "offcuts offers list --species white-ash --min-thickness 4/4 --json")
            .With(Supplier, Species, Kind, MinThickness, MaxThickness).Does(ListAsync));

    private static async Task<int> ListAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var query = new OfferQuery
        {
            Supplier = run.Get(Supplier) is { } supplier ? Slug.Of(supplier) : null,
            Species = run.Get(Species),
            Kind = run.Get(Kind),
            MinThicknessMm = Lengths.Millimetres(run, MinThickness, unit),
            MaxThicknessMm = Lengths.Millimetres(run, MaxThickness, unit),
            Limit = Paging.Largest,
        };
        var offers = await Paging.AllAsync<OfferRecord>(async cursor =>
        {
            var page = await api.ListOffersAsync(query with { Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
        if (run.Json)
        {
            run.WriteJson(new OfferPage(offers, null), ClientJson.Default.OfferPage);
        }
        else if (offers.Count > 0)
        {
            OfferView.Write(offers, await run.ShopAsync(), unit, run.Terminal);
        }
        else
        {
            run.Say("No offers match. Load a price list with 'offcuts prices load FILE'.");
        }

        return ExitCode.Ok;
    }
}
