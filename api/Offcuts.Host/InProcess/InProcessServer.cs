using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Http.Features;

namespace Offcuts.Host.InProcess;

/// <summary>
/// A server that listens nowhere: requests come from <see cref="InProcessHandler"/>, and all above it (routing, JSON, problem details) is the same
/// as behind a port. A client that lists boards ends before Kestrel and a socket to it would be ready.
/// </summary>
internal sealed class InProcessServer : IServer
{
    private Func<IFeatureCollection, Task>? process;

    /// <inheritdoc/>
    public IFeatureCollection Features { get; } = new FeatureCollection();

    /// <summary>Answers one request.</summary>
    /// <param name="features">The features of request and response.</param>
    public Task AnswerAsync(IFeatureCollection features) =>
        (process ?? throw new InvalidOperationException("The application is not started."))(features);

    /// <inheritdoc/>
    public Task StartAsync<TContext>(IHttpApplication<TContext> application, CancellationToken cancellationToken)
        where TContext : notnull
    {
        process = features => ProcessAsync(application, features);
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public void Dispose()
    {
        // It holds nothing.
    }

    private static async Task ProcessAsync<TContext>(IHttpApplication<TContext> application, IFeatureCollection features)
        where TContext : notnull
    {
        var context = application.CreateContext(features);
        Exception? failure = null;
        try
        {
            await application.ProcessRequestAsync(context);
        }
        catch (Exception fault)
        {
            failure = fault;
            throw;
        }
        finally
        {
            application.DisposeContext(context, failure);
        }
    }
}
