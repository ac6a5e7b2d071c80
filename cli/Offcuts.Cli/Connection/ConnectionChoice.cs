namespace Offcuts.Cli.Connections;

/// <summary>Which server a command talks to, and why.</summary>
/// <param name="Server">Its address; null to host the API in this process.</param>
/// <param name="DatabasePath">The database file if hosted in this process.</param>
/// <param name="Reason">What decided it, for <c>offcuts status</c>.</param>
internal sealed record ConnectionChoice(Uri? Server, string? DatabasePath, string Reason)
{
    private const string DatabaseName = "offcuts.db";

    /// <summary>A flag wins over the environment, and that over the default.</summary>
    /// <exception cref="CliException">An address or folder that cannot be.</exception>
    public static ConnectionChoice Make(string? server, string? data, Func<string, string?> environment)
    {
        if (server is not null && data is not null)
        {
            throw CliException.Usage("--server and --data exclude each other: give one of them.");
        }

        if (server is not null)
        {
            return Remote(server, "--server");
        }

        if (data is not null)
        {
            return Embedded(data, "--data");
        }

        if (environment("OFFCUTS_URL") is { Length: > 0 } url)
        {
            return Remote(url, "OFFCUTS_URL");
        }

        return environment("OFFCUTS_DATA") is { Length: > 0 } folder
            ? Embedded(folder, "OFFCUTS_DATA")
            : Embedded(DefaultFolder(environment), "no server is configured");
    }

    private static ConnectionChoice Remote(string url, string reason) =>
        Uri.TryCreate(url.TrimEnd('/'), UriKind.Absolute, out var address) && address.Scheme is "http" or "https"
            ? new(address, null, reason)
            : throw CliException.Usage($"{reason} '{url}' is no address. Give for instance http://127.0.0.1:5080.");

    private static ConnectionChoice Embedded(string folder, string reason) => string.IsNullOrWhiteSpace(folder)
        ? throw CliException.Usage($"{reason} names no folder: give one, for instance ./shop-store, or leave it out.")
        : new(null, Path.Combine(Path.GetFullPath(folder), DatabaseName), reason);

    // XDG Base Directory Specification: relative values are invalid and are ignored.
    private static string DefaultFolder(Func<string, string?> environment)
    {
        if (OperatingSystem.IsWindows())
        {
            return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), "offcuts");
        }

        if (environment("XDG_DATA_HOME") is { Length: > 0 } data && Path.IsPathRooted(data))
        {
            return Path.Combine(data, "offcuts");
        }

        return environment("HOME") is { Length: > 0 } home && Path.IsPathRooted(home)
            ? Path.Combine(home, ".local", "share", "offcuts")
            : throw CliException.Usage("There is no home folder to keep the store in. Give one with --data FOLDER or OFFCUTS_DATA.");
    }
}
