namespace Offcuts.Host;

/// <summary>How the Web API is hosted.</summary>
public sealed record HostSettings
{
    /// <summary>The SQLite file; made if it does not exist.</summary>
    public required string DatabasePath { get; init; }

    /// <summary>Listen on this Unix socket and on no port; null to listen on <see cref="Urls"/>.</summary>
    public string? UnixSocketPath { get; init; }

    /// <summary>Addresses to listen on, separated by semicolons.</summary>
    public string Urls { get; init; } = "http://127.0.0.1:5080";

    /// <summary>Whether addresses that other machines can reach are allowed. There are no access tokens yet.</summary>
    public bool AllowNonLoopback { get; init; }
}
