using System.Net;
using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Host.Tests;

public sealed class StorageFaultTests : OwnService
{
    private const string Board = """{"species":"cherry","thicknessMm":20,"widthMm":100,"lengthMm":500}""";

    [Fact]
    public async Task A_database_that_another_process_holds_is_busy_and_the_service_goes_on()
    {
        // The service waits out its timeout of 10 s first.
        using var writer = Connect();
        writer.Execute("BEGIN IMMEDIATE");
        var busy = await Service.SendAsync("POST", "/v1/boards", Board);
        writer.Execute("ROLLBACK");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, busy.StatusCode);
        Assert.Equal(TimeSpan.FromSeconds(1), busy.Headers.RetryAfter!.Delta);
        Assert.Equal("/problems/busy", (await Service.ProblemAsync(busy)).GetProperty("type").GetString());
        Assert.Equal(HttpStatusCode.Created, (await Service.SendAsync("POST", "/v1/boards", Board)).StatusCode);
    }

    private SqliteConnection Connect()
    {
        var connection = new SqliteConnection($"Data Source={Service.DatabasePath}");
        connection.Open();
        return connection;
    }
}
