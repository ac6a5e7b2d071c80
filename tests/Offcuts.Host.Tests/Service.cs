using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace Offcuts.Host.Tests;

// The real service on a free loopback port with a real database file.
public sealed class Service : IAsyncLifetime
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("offcuts-host-");
    private WebApplication? app;

    public HttpClient Client { get; private set; } = new();

    public IServiceProvider Services => app!.Services;

    public string DatabasePath => Path.Combine(folder.FullName, "data", "offcuts.db");

    public async Task InitializeAsync()
    {
        await StartAsync();
    }

    public async Task StartAsync(Func<HostSettings, HostSettings>? change = null)
    {
        var settings = new HostSettings { DatabasePath = DatabasePath, Urls = "http://127.0.0.1:0" };
        app = OffcutsHost.Build(change is null ? settings : change(settings));
        await app.StartAsync();
        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        Client = new HttpClient { BaseAddress = new Uri(address), Timeout = TimeSpan.FromSeconds(20) };
    }

    public async Task DisposeAsync()
    {
        await StopAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }

    public async Task StopAsync()
    {
        Client.Dispose();
        await app!.StopAsync();
        await app.DisposeAsync();
    }

    public Task<HttpResponseMessage> SendAsync(string method, string path, string? json = null, string type = "application/json", string? prefer = null)
    {
        var request = new HttpRequestMessage(new HttpMethod(method), path);
        if (prefer is not null)
        {
            request.Headers.Add("Prefer", prefer);
        }

        if (json is not null)
        {
            request.Content = new StringContent(json, Encoding.UTF8, new MediaTypeHeaderValue(type));
        }

        return Client.SendAsync(request);
    }

    public async Task<JsonElement> GetAsync(string path) => JsonDocument.Parse(await Client.GetStringAsync(path)).RootElement;

    public static async Task<JsonElement> ReadAsync(HttpResponseMessage answer, HttpStatusCode expected)
    {
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.StatusCode == expected, $"{(int)answer.StatusCode}: {text}");
        return JsonDocument.Parse(text).RootElement;
    }

    public static async Task<JsonElement> ProblemAsync(HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        return JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
    }

    public static async Task<string?> PointerAsync(HttpResponseMessage answer) =>
        (await ProblemAsync(answer)).GetProperty("errors")[0].GetProperty("pointer").GetString();
}
