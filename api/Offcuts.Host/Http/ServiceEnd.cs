namespace Offcuts.Host.Http;

/// <summary>When the service ends, behind a port or in the client's process.</summary>
/// <param name="Stopping">Set as soon as it is to stop.</param>
internal sealed record ServiceEnd(CancellationToken Stopping);
