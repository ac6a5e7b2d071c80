using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Reference;
using Offcuts.Storage;

namespace Offcuts.Host;

/// <summary>The Web API as a service that listens on a port.</summary>
public static class OffcutsHost
{
    /// <summary>The application, ready to start. The database is opened and migrated here.</summary>
    /// <exception cref="OffcutsException">Settings or a database that cannot be used.</exception>
    public static WebApplication Build(HostSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        RefuseForeignAddresses(settings);
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { EnvironmentName = Environments.Production });
        builder.Logging.ClearProviders().SetMinimumLevel(LogLevel.Warning)
            .AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.WebHost.UseUrls(settings.Urls).ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = OffcutsApi.MaxBodyBytes;
        });
        builder.Services.AddSingleton(Database.Open(settings.DatabasePath)).AddOffcuts(settings);
        builder.Services.AddSingleton(services => new ServiceEnd(services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping));
        if (settings.ServeReference)
        {
            builder.Services.AddReference();
        }

        var app = builder.Build();
        app.UseProblems();
        if (!settings.AllowNonLoopback)
        {
            app.UseLoopbackHostCheck();
        }

        app.UseRouting();
        app.UseHeavyWork();
        app.MapOffcuts();
        if (settings.ServeReference)
        {
            app.MapReference();
        }

        return app;
    }

    private static void RefuseForeignAddresses(HostSettings settings)
    {
        if (settings.AllowNonLoopback)
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
