using System.Reflection;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Designs;
using Offcuts.Host.Http;
using Offcuts.Host.InProcess;
using Offcuts.Host.Offers;
using Offcuts.Host.Plans;
using Offcuts.Host.Reference;
using Offcuts.Host.Shops;
using Offcuts.Host.SpeciesLists;
using Offcuts.Storage;

namespace Offcuts.Host;

/// <summary>The Web API, for the service and for a client that hosts it in its own process.</summary>
public static class OffcutsHost
{
    // A body of 1000 boards with defects fits; anything larger is a mistake.
    private const long MaxBodyBytes = 4 * 1024 * 1024;

    /// <summary>The application, ready to start. The database is opened and migrated here.</summary>
    /// <exception cref="OffcutsException">Settings or a database that cannot be used.</exception>
    public static WebApplication Build(HostSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        RefuseForeignAddresses(settings);
        var builder = settings.InProcess ? InProcessBuilder() : ListeningBuilder(settings.Urls);
        builder.Services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.TypeInfoResolverChain.Insert(0, WireJson.Default);
            json.SerializerOptions.NumberHandling = JsonNumberHandling.Strict;
            json.SerializerOptions.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        });
        builder.Services.AddSingleton(settings);
        AddServices(builder.Services, Database.Open(settings.DatabasePath));
        if (settings.ServeReference)
        {
            builder.Services.AddReference();
        }

        var app = builder.Build();
        app.UseProblems();
        if (settings.InProcess)
        {
            app.UseBodyLimit(MaxBodyBytes);
        }
        else if (!settings.AllowNonLoopback)
        {
            app.UseLoopbackHostCheck();
        }

        app.UseRouting();
        app.MapMethods("/health", ["GET", "HEAD"], GetHealth);
        app.MapProblemPages();
        app.MapBoards();
        app.MapShop();
        app.MapSpecies();
        app.MapDesigns();
        app.MapOffers();
        app.MapPlans();
        app.MapPictures();
        if (settings.ServeReference)
        {
            app.MapReference();
        }

        return app;
    }

    /// <summary>A handler whose requests an application in this process answers. It must be started, and built with <see cref="HostSettings.InProcess"/>.</summary>
    public static HttpMessageHandler CreateHandler(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        return new InProcessHandler((InProcessServer)app.Services.GetRequiredService<IServer>());
    }

    private static WebApplicationBuilder ListeningBuilder(string urls)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { EnvironmentName = Environments.Production });
        builder.Logging.ClearProviders().SetMinimumLevel(LogLevel.Warning)
            .AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.WebHost.UseUrls(urls).ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MaxBodyBytes;
        });
        return builder;
    }

    // Nothing but what the endpoints need: no configuration files and their watchers, no console logger, no Kestrel.
    private static WebApplicationBuilder InProcessBuilder()
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { EnvironmentName = Environments.Production });
        // What keeps it from starting is thrown to the client that hosts it, who tells it in its own words.
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddProvider(new StandardErrorLog())
            .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        builder.Services.AddRoutingCore().AddSingleton<IServer, InProcessServer>().AddSingleton<IHostLifetime, NoLifetime>();
        return builder;
    }

    private static void AddServices(IServiceCollection services, Database database) => services
        .AddSingleton(new BoardStore(database, TimeProvider.System))
        .AddSingleton(new ShopStore(database))
        .AddSingleton(new DesignStore(database, TimeProvider.System))
        .AddSingleton(new OfferStore(database, TimeProvider.System))
        .AddSingleton(new PlanStore(database, TimeProvider.System))
        .AddSingleton(TimeProvider.System)
        .AddSingleton<Workshop>()
        .AddSingleton<PriceListReader>()
        .AddSingleton<ProblemBuilder>()
        .AddSingleton<PlanQueue>()
        .AddSingleton<RejectedPlans>()
        .AddHostedService<PlanRunner>();

    private static Ok<Health> GetHealth() => TypedResults.Ok(new Health(
        "ok", typeof(OffcutsHost).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion));

    private static void RefuseForeignAddresses(HostSettings settings)
    {
        if (settings.InProcess || settings.AllowNonLoopback)
        {
            return;
        }

        foreach (var url in settings.Urls.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            // "http://*:80" and "http://+:80" are no URIs and mean every address.
            if (!Uri.TryCreate(url, UriKind.Absolute, out var address) || !address.IsLoopback)
            {
                throw new OffcutsException(
                    ErrorCode.Invalid, $"'{url}' could be reached from other machines. Use http://127.0.0.1:5080, or allow it by OFFCUTS_ALLOW_NON_LOOPBACK=1.");
            }
        }
    }
}
