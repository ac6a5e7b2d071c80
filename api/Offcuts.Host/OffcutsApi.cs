using System.Reflection;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Host.Boards;
using Offcuts.Host.Builds;
using Offcuts.Host.Designs;
using Offcuts.Host.Finding;
using Offcuts.Host.Fits;
using Offcuts.Host.Http;
using Offcuts.Host.Journals;
using Offcuts.Host.Keeping;
using Offcuts.Host.Mixes;
using Offcuts.Host.Offers;
using Offcuts.Host.Places;
using Offcuts.Host.Plans;
using Offcuts.Host.Queues;
using Offcuts.Host.Reports;
using Offcuts.Host.Shops;
using Offcuts.Host.SpeciesLists;
using Offcuts.Host.StockTakes;
using Offcuts.Host.Stretches;
using Offcuts.Storage;

namespace Offcuts.Host;

/// <summary>What the API is made of, however its requests come: over a port or from the same process.</summary>
internal static class OffcutsApi
{
    /// <summary>Greatest size of a body. One of 1000 boards with defects fits; anything larger is a mistake.</summary>
    public const long MaxBodyBytes = 4 * 1024 * 1024;

    /// <summary>What the endpoints use, but for the <see cref="Database"/>.</summary>
    public static void AddOffcuts(this IServiceCollection services, HostSettings settings) => services
        .ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.TypeInfoResolverChain.Insert(0, WireJson.Default);
            json.SerializerOptions.NumberHandling = JsonNumberHandling.Strict;
            json.SerializerOptions.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        })
        .AddSingleton(settings)
        .AddSingleton(TimeProvider.System)
        .AddSingleton<BoardStore>()
        .AddSingleton<BoardImportStore>()
        .AddSingleton<JournalStore>()
        .AddSingleton<UndoStore>()
        .AddSingleton<HistoryStore>()
        .AddSingleton<BuildStore>()
        .AddSingleton<Expiry>()
        .AddSingleton<PlaceStore>()
        .AddSingleton<StockTakeStore>()
        .AddSingleton<ShopStore>()
        .AddSingleton<DesignStore>()
        .AddSingleton<OfferStore>()
        .AddSingleton<PlanStore>()
        .AddSingleton<QueueStore>()
        .AddSingleton<FitStore>()
        .AddSingleton<FitRunner>()
        .AddSingleton<Workshop>()
        .AddSingleton<SpokenLines>()
        .AddSingleton<PriceListReader>()
        .AddSingleton<StoredOffers>()
        .AddSingleton<CurrencyChange>()
        .AddSingleton<StoredProblem>()
        .AddSingleton<ProblemBuilder>()
        .AddSingleton<CullEndpoint>()
        .AddSingleton<EarlierPlans>()
        .AddSingleton<PlanQueue>()
        .AddSingleton<RejectedPlans>()
        .AddSingleton<AuditedPlanner>()
        .AddSingleton<HeavyWork>()
        .AddSingleton<EventAnswers>()
        .AddHostedService<PlanRunner>();

    /// <summary>All endpoints but the pages about them.</summary>
    public static void MapOffcuts(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/health", ["GET", "HEAD"], GetHealth);
        app.MapProblemPages();
        app.MapBoards();
        app.MapFinding();
        app.MapBoardLines();
        app.MapLabels();
        app.MapJournal();
        app.MapHistory();
        app.MapPlaces();
        app.MapStockTakes();
        app.MapShop();
        app.MapKeepRule();
        CullEndpoint.Map(app);
        app.MapSpecies();
        app.MapDesigns();
        app.MapFits();
        app.MapBoardUses();
        app.MapOffers();
        app.MapQueue();
        app.MapPlans();
        app.MapWorthHaving();
        app.MapBuilds();
        app.MapStretches();
        app.MapMixes();
        app.MapPictures();
        app.MapReports();
    }

    private static Ok<Health> GetHealth() => TypedResults.Ok(new Health(
        "ok", typeof(OffcutsApi).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion));
}
