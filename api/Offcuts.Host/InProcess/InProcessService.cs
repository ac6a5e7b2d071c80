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
    private readonly Task<Database> opening;
    private readonly ServiceProvider services;
    private readonly RequestDelegate answer;
    private readonly OpenStreams streams = new();
    private IHostedService[] started = [];

    /// <summary>Answers at once what needs no database, such as <c>/health</c>; all else once it is started.</summary>
    /// <param name="settings">Of these only what does not concern a port.</param>
    /// <param name="log">Takes warnings and errors.</param>
    public InProcessService(HostSettings settings, TextWriter log)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(log);
        // Both take about as long, and neither needs the other: the database is opened while the rest is made.
        opening = Task.Run(() => Database.Open(settings.DatabasePath));
        var collection = new ServiceCollection();
        collection.AddLogging(logging => logging.SetMinimumLevel(LogLevel.Warning).AddProvider(new WriterLog(log)));
        collection.AddRoutingCore();
        // What the routing reports its choices to; a host has one.
        collection.AddSingleton(new DiagnosticListener("Microsoft.AspNetCore"));
        collection.AddSingleton(_ => opening.GetAwaiter().GetResult()).AddOffcuts(settings);
        collection.AddSingleton(new ServiceEnd(streams.Stopping));
        services = collection.BuildServiceProvider();
        var app = new ApplicationBuilder(services);
        app.UseProblems();
        app.UseBodyLimit(OffcutsApi.MaxBodyBytes);
        app.UseRouting();
        app.UseHeavyWork();
        app.UseEndpoints(OffcutsApi.MapOffcuts);
        answer = app.Build();
    }

    /// <summary>Waits for the database, which is made if need be, and starts what runs in the background.</summary>
    /// <exception cref="OffcutsException">A database that cannot be used.</exception>
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        await opening;
        started = [.. services.GetServices<IHostedService>()];
        foreach (var background in started)
        {
            await background.StartAsync(cancellationToken);
        }
    }

    /// <summary>A handler whose requests it answers.</summary>
    public HttpMessageHandler CreateHandler() => new InProcessHandler(answer, services.GetRequiredService<IServiceScopeFactory>(), streams);

    /// <summary>Lets what runs in the background end in order.</summary>
    public async ValueTask DisposeAsync()
    {
        await streams.DisposeAsync();
        using (var patience = new CancellationTokenSource(LongestStop))
        {
            foreach (var background in started)
            {
                await background.StopAsync(patience.Token);
            }
        }

        // Whoever waited for it was told of a failure; here it must only be over.
        await ((Task)opening).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await services.DisposeAsync();
    }
}
