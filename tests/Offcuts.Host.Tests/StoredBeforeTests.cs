using System.Globalization;
using System.Net;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Domain;

namespace Offcuts.Host.Tests;

// What the program stored before there were warp, tolerances, ranges, spares, layers and recipes.
public sealed class StoredBeforeTests : IAsyncLifetime
{
    /// <summary>The design as it was sent when the database was made.</summary>
    private const string Rack = """
        {"name":"Coat Rack","parts":[{"name":"rail","thicknessMm":19,"widthMm":90,"lengthMm":600,"quantity":2,"species":["white ash"]},
                                     {"name":"peg","thicknessMm":12,"widthMm":12,"lengthMm":70,"quantity":2,"grain":"free","group":"show"}],
         "groups":[{"name":"show","oneSpecies":true,"species":["white ash"]}],"items":[{"name":"screws","unitPrice":3.5,"quantity":2}]}
        """;

    private readonly Service service = new();

    public async Task InitializeAsync()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(service.DatabasePath)!);
        using (var old = new SqliteConnection($"Data Source={service.DatabasePath}"))
        {
            old.Execute(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "Stored", "version-5.sql")));
        }

        await service.StartAsync();
    }

    public Task DisposeAsync() => service.DisposeAsync();

    [Fact]
    public async Task A_design_is_read_and_keeps_its_version()
    {
        var stored = await service.GetAsync("/v1/designs/coat-rack");
        Assert.Equal("00a8d878e75b", stored.GetProperty("version").GetString());
        var again = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", Rack), HttpStatusCode.OK);
        Assert.Equal(stored.GetRawText(), again.GetRawText());

        // What says no more than the defaults is no other design; what says more is.
        var same = Rack.Replace("\"lengthMm\":600", "\"lengthMm\":600,\"mostLengthMm\":600,\"mostQuantity\":2,\"spares\":0,\"layers\":1,\"tolerates\":[]", StringComparison.Ordinal)
            .Replace("\"oneSpecies\":true", "\"oneSpecies\":true,\"batch\":\"any\"", StringComparison.Ordinal);
        await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", same), HttpStatusCode.OK);
        var layered = Rack.Replace("\"lengthMm\":600", "\"lengthMm\":600,\"layers\":2", StringComparison.Ordinal);
        var other = await Service.ReadAsync(await service.SendAsync("POST", "/v1/designs", layered), HttpStatusCode.Created);
        Assert.Equal(2, other.GetProperty("design").GetProperty("parts")[0].GetProperty("layers").GetInt32());
    }

    [Fact]
    public async Task A_shop_is_read_with_the_defaults_of_what_is_new()
    {
        var shop = await service.GetAsync("/v1/shop");
        Assert.Equal((3m, "EUR", "warn"), (shop.GetProperty("kerfMm").GetDecimal(), shop.GetProperty("currency").GetString(), shop.GetProperty("shortBlanks").GetString()));
        Assert.Equal(JsonValueKind.Null, shop.GetProperty("resawHeightMm").ValueKind);
        Assert.Equal(new Shop().ResawKerf.Millimetres, shop.GetProperty("resawKerfMm").GetDecimal());
        Assert.Equal(new Shop().ResawCleanup.Millimetres, shop.GetProperty("resawCleanupMm").GetDecimal());
        Assert.Equal(new Shop().SkipPlaned.Thickness.Millimetres, shop.GetProperty("skipPlaned").GetProperty("thicknessMm").GetDecimal());
    }

    [Fact]
    public async Task A_plan_is_shown_and_its_problem_can_be_planned_again()
    {
        var run = await service.GetAsync("/v1/plans/h36dktac");
        Assert.Equal(("done", "00a8d878e75b"), (run.GetProperty("state").GetString(), run.GetProperty("design").GetProperty("version").GetString()));
        Assert.Equal(7m, run.GetProperty("plan").GetProperty("totalCost").GetDecimal());
        var parts = run.GetProperty("plan").GetProperty("boards")[0].GetProperty("pieces").EnumerateArray().Where(piece => piece.GetProperty("kind").GetString() == "part");
        Assert.All(parts, part => Assert.Equal(JsonValueKind.Null, part.GetProperty("copies").ValueKind));
        Assert.Contains("rail #2", await service.Client.GetStringAsync("/v1/plans/h36dktac/cut-sheet"), StringComparison.Ordinal);
        Assert.StartsWith("<svg", await service.Client.GetStringAsync("/v1/plans/h36dktac/diagrams/1"), StringComparison.Ordinal);

        var problem = (await service.GetAsync("/v1/plans/h36dktac/problem")).GetRawText();
        var answer = await service.SendAsync("POST", "/v1/plans", string.Create(CultureInfo.InvariantCulture, $$"""{"inline":{{problem}},"budgetMs":3000}"""), prefer: "wait=15");
        var replanned = await Service.ReadAsync(answer, HttpStatusCode.Created);
        Assert.Equal("proved", replanned.GetProperty("plan").GetProperty("status").GetString());
        Assert.Equal(7m, replanned.GetProperty("plan").GetProperty("totalCost").GetDecimal());
        Assert.Equal(JsonValueKind.Null, replanned.GetProperty("from").ValueKind);

        answer = await service.SendAsync("POST", "/v1/plans", string.Create(CultureInfo.InvariantCulture, $$"""{"inline":{{problem}},"budgetMs":3000,"from":"h36dktac"}"""), prefer: "wait=15");
        var again = (await Service.ReadAsync(answer, HttpStatusCode.Created)).GetProperty("plan");
        var changes = again.GetProperty("changes");
        var board = Assert.Single(changes.GetProperty("boards").EnumerateArray());
        Assert.True((board.GetProperty("boardId").GetString(), board.GetProperty("change").GetString()) == ("333", "kept"), again.GetRawText());
        Assert.Empty(changes.GetProperty("parts").EnumerateArray());
    }
}
