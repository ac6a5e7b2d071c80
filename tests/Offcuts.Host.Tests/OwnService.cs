namespace Offcuts.Host.Tests;

// A test that needs settings of its own, or that stops and starts the service.
public abstract class OwnService : IAsyncLifetime
{
    protected Service Service { get; } = new();

    public Task InitializeAsync() => Service.StartAsync(Change);

    public Task DisposeAsync() => Service.DisposeAsync();

    protected virtual HostSettings Change(HostSettings settings) => settings;
}
