using System.CommandLine;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Offcuts.Cli.Connections;
using Offcuts.Host;

namespace Offcuts.Cli.Commands;

/// <summary><c>offcuts serve</c>.</summary>
internal static class ServeCommand
{
    private static readonly Option<string> Urls = new("--urls")
    {
        Description = "Addresses to listen on, separated by semicolons",
        HelpName = "URLS",
        DefaultValueFactory = _ => "http://127.0.0.1:5080",
    };

    public static Verb Create() => new Verb(
        "serve",
        "Run the Web API in the foreground until Ctrl-C",
        "offcuts serve",
        "offcuts serve --urls http://127.0.0.1:8080 --data ./shop-store").With(Urls).Does(ServeAsync);

    private static async Task<int> ServeAsync(Run run)
    {
        if (run.Choice.DatabasePath is not { } database)
        {
            throw CliException.Usage($"{run.Choice.Reason} names another server, but 'serve' serves a store of this machine: unset it, or give --data FOLDER.");
        }

        await using var app = Build(database, run.Get(Urls)!);
        await app.StartAsync(run.Cancellation);
        foreach (var address in app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses)
        {
            run.Say($"Serving {database} at {address}; Ctrl-C ends it.");
            run.Say($"What it can be asked: {address.TrimEnd('/')}/reference");
        }

        var ended = new TaskCompletionSource();
        await using (run.Cancellation.Register(ended.SetResult))
        {
            await ended.Task;
        }

        await app.StopAsync(CancellationToken.None);
        // Ending is what was asked for; the signal's own code is for work that was cut short.
        return ExitCode.Ok;
    }

    private static WebApplication Build(string database, string urls)
    {
        try
        {
            return OffcutsHost.Build(new HostSettings
            {
                DatabasePath = database,
                Urls = urls,
                ServeReference = true,
                AllowNonLoopback = Environment.GetEnvironmentVariable("OFFCUTS_ALLOW_NON_LOOPBACK") == "1",
            });
        }
        catch (SqliteException fault)
        {
            throw EmbeddedServer.Explained(fault, database);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw Files.NoStore(database, fault);
        }
    }
}
