using System.Diagnostics;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.InProcess;

/// <summary>
/// The Web API for a client in the same process. It listens nowhere, and of the framework's host it has only what the endpoints need: the same
/// services, routing, JSON and problem details as behind a port, but no configuration, no server and no lifetime of its own.
/// A client that lists boards ends before all that would be ready.
/// </summary>
public sealed class InProcessService : IAsyncDisposable
{
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(2);
    private readonly ServiceProvider services;
    private readonly RequestDelegate answer;
    private readonly IHostedService[] hosted;

    private InProcessService(ServiceProvider services)
    {
        this.services = services;
        hosted = [.. services.GetServices<IHostedService>()];
        var app = new ApplicationBuilder(services);
        app.UseProblems();
        app.UseBodyLimit(OffcutsApi.MaxBodyBytes);
        app.UseRouting();
        app.UseEndpoints(OffcutsApi.MapOffcuts);
        answer = app.Build();
    }

    /// <summary>Opens the database, makes it if need be, and starts to answer.</summary>
    /// <exception cref="OffcutsException">A database that cannot be used.</exception>
    public static async Task<InProcessService> StartAsync(HostSettings settings, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var services = new ServiceCollection();
        services.AddLogging(log => log.SetMinimumLevel(LogLevel.Warning).AddProvider(new StandardErrorLog()));
        services.AddRoutingCore();
        // What the routing reports its choices to; a host has one.
        services.AddSingleton(new DiagnosticListener("Microsoft.AspNetCore"));
        services.AddOffcuts(settings, Database.Open(settings.DatabasePath));
        var service = new InProcessService(services.BuildServiceProvider());
        foreach (var background in service.hosted)
        {
            await background.StartAsync(cancellationToken);
        }

        return service;
    }

    /// <summary>A handler whose requests it answers.</summary>
    public HttpMessageHandler CreateHandler() => new InProcessHandler(answer, services.GetRequiredService<IServiceScopeFactory>());

    /// <summary>Lets what runs in the background end in order.</summary>
    public async ValueTask DisposeAsync()
    {
        using (var patience = new CancellationTokenSource(LongestStop))
        {
            foreach (var background in hosted)
            {
                await background.StopAsync(patience.Token);
            }
        }

        await services.DisposeAsync();
    }
}
