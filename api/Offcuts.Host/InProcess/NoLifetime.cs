namespace Offcuts.Host.InProcess;

/// <summary>Leaves signals to the process that hosts the service for itself; it starts and stops it.</summary>
internal sealed class NoLifetime : IHostLifetime
{
    /// <inheritdoc/>
    public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
