using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace Offcuts.Cli.Tests;

public sealed class JournalTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task The_journal_tells_what_changed_the_stock_and_its_check_ends_with_7_if_something_else_did()
    {
        Assert.Contains("Nothing was ever logged", (await offcuts.RunAsync("journal", "list")).Err, StringComparison.Ordinal);
        var id = (await offcuts.RunAsync("boards", "add", "1 x 6 x 48", "--species", "white-ash")).Out.Trim();
        await offcuts.RunAsync("boards", "edit", id, "--place", "rack 2");

        var list = await offcuts.RunAsync("journal", "list");
        Assert.Matches($"LINE  WHEN .*\n +2  .*edit +{id}\n +1  .*log +{id}\n", list.Out);
        using var newest = JsonDocument.Parse((await offcuts.RunAsync("journal", "list", "--newest", "1", "--json")).Out);
        Assert.Equal("edit", Assert.Single(newest.RootElement.GetProperty("items").EnumerateArray()).GetProperty("kind").GetString());
        var sound = await offcuts.RunAsync("journal", "check");
        Assert.Equal((0, "2 lines make 1 board. That is the stock as it is stored.\n"), (sound.Code, sound.Out));

        using (var connection = new SqliteConnection($"Data Source={offcuts.Store};Pooling=False"))
        {
            connection.Open();
            using var tampering = connection.CreateCommand();
            tampering.CommandText = "UPDATE boards SET quantity = 7";
            tampering.ExecuteNonQuery();
        }

        var found = await offcuts.RunAsync("journal", "check");
        Assert.Equal(7, found.Code);
        Assert.Contains($"{id}: By the journal its quantity is 1, in the inventory 7.", found.Out, StringComparison.Ordinal);
    }
}
