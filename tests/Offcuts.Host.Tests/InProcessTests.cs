using System.Net;
using System.Net.Http.Json;
using System.Text;
using Microsoft.Data.Sqlite;
using Offcuts.Contracts;
using Offcuts.Host.InProcess;
using Refit;

namespace Offcuts.Host.Tests;

// What a port and Kestrel give elsewhere must hold without them too.
public sealed class InProcessTests(Service port) : IClassFixture<Service>, IAsyncLifetime
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("offcuts-inside-");
    private InProcessService? service;

    private HttpClient Client { get; set; } = new();

    public async Task InitializeAsync()
    {
        service = Create(Path.Combine(folder.FullName, "o.db"));
        await service.StartAsync(CancellationToken.None);
        Client = new HttpClient(service.CreateHandler()) { BaseAddress = new Uri("http://offcuts") };
    }

    public async Task DisposeAsync()
    {
        Client.Dispose();
        await service!.DisposeAsync();
        SqliteConnection.ClearAllPools();
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task The_typed_client_reaches_the_service()
    {
        var api = RestService.For<IOffcutsApi>(Client);
        var logged = await api.CreateBoardAsync(new BoardEntry("white-ash", 25.4m, 100m, 1000m));
        var page = await api.ListBoardsAsync(new BoardQuery { Species = "white-ash", MinLengthMm = 999.9m });

        Assert.Equal(logged.Id, Assert.Single(page.Items).Id);
        Assert.Empty((await api.ListBoardsAsync(new BoardQuery { MinLengthMm = 1000.1m })).Items);
    }

    [Fact]
    public async Task A_created_board_has_its_location_and_type()
    {
        using var answer = await Client.PostAsync(new Uri("/v1/boards", UriKind.Relative), JsonContent.Create(new BoardEntry("white-ash", 25.4m, 100m, 1000m)));

        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.StartsWith("/v1/boards/", answer.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
        Assert.NotEmpty((await answer.Content.ReadFromJsonAsync<BoardRecord>())!.Id);
    }

    [Theory]
    [InlineData("GET", "/v1/nothing", 404)]
    [InlineData("GET", "/v1/boards/ZZZ", 404)]
    [InlineData("GET", "/v1/boards/a%2Fb", 404)]
    [InlineData("PATCH", "/v1/boards", 405)]
    [InlineData("GET", "/v1/boards?colour=red", 400)]
    public async Task A_refused_request_is_told_as_behind_a_port(string method, string path, int status)
    {
        using var outside = await port.SendAsync(method, path);
        using var inside = await Client.SendAsync(new HttpRequestMessage(new HttpMethod(method), path));
        var (expected, found) = (await Service.ProblemAsync(outside), await Service.ProblemAsync(inside));

        Assert.Equal(status, (int)outside.StatusCode);
        Assert.Equal(status, (int)inside.StatusCode);
        Assert.Equal(expected.GetProperty("detail").GetString(), found.GetProperty("detail").GetString());
        Assert.Equal(expected.GetProperty("type").GetString(), found.GetProperty("type").GetString());
        Assert.Equal(outside.Content.Headers.Allow, inside.Content.Headers.Allow);
    }

    [Fact]
    public async Task A_path_that_is_none_is_refused_and_the_service_goes_on()
    {
        // Kestrel refuses it before it is a request, so there is nobody to say why; in the same process it is no board's id.
        using var outside = await port.SendAsync("GET", "/v1/boards/%00");
        Assert.Equal(HttpStatusCode.BadRequest, outside.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await port.SendAsync("GET", "/v1/boards")).StatusCode);
        using var inside = await Client.SendAsync(new HttpRequestMessage(HttpMethod.Get, "/v1/boards/%00"));
        Assert.Equal((HttpStatusCode.NotFound, "not-found"), (inside.StatusCode, (await Service.ProblemAsync(inside)).GetProperty("code").GetString()));
    }

    [Fact]
    public async Task A_body_beyond_the_limit_is_refused()
    {
        using var body = new StringContent(new string(' ', (4 * 1024 * 1024) + 1), Encoding.UTF8, "application/json");
        using var answer = await Client.PostAsync(new Uri("/v1/boards", UriKind.Relative), body);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Equal("too-large", (await Service.ProblemAsync(answer)).GetProperty("code").GetString());
    }

    [Fact]
    public async Task Head_has_the_headers_of_get_and_no_body()
    {
        using var answer = await Client.SendAsync(new HttpRequestMessage(HttpMethod.Head, "/v1/boards"));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task A_cancelled_request_ends_as_cancelled()
    {
        using var cancelled = new CancellationTokenSource();
        await cancelled.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Client.GetAsync(new Uri("/v1/boards", UriKind.Relative), cancelled.Token));
    }

    [Fact]
    public async Task A_database_that_cannot_be_opened_is_told_at_the_start_and_health_is_answered_all_the_same()
    {
        var path = Path.Combine(folder.FullName, "damaged.db");
        await File.WriteAllTextAsync(path, new string('x', 5000));
        await using var damaged = Create(path);
        using var client = new HttpClient(damaged.CreateHandler()) { BaseAddress = new Uri("http://offcuts") };

        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(new Uri("/health", UriKind.Relative))).StatusCode);
        await Assert.ThrowsAsync<SqliteException>(() => damaged.StartAsync(CancellationToken.None));
    }

    private static InProcessService Create(string path) => new(new HostSettings { DatabasePath = path }, TextWriter.Null);
}
