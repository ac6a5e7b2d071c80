using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Offcuts.Storage;

namespace Offcuts.Host.Tests;

public sealed class SnapshotTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task A_plan_sees_the_rack_as_it_is_at_one_moment()
    {
        const int Boards = 800;
        var one = new { species = "white-ash", thicknessMm = 25.4, widthMm = 100, lengthMm = 900, defects = new[] { new { kind = "knot", xMm = 1, yMm = 1, lengthMm = 5, widthMm = 5 } } };
        await service.SendAsync("POST", "/v1/board-imports", JsonSerializer.Serialize(new { items = Enumerable.Repeat(one, Boards) }));
        var store = service.Services.GetRequiredService<BoardStore>();
        using var ended = new CancellationTokenSource();
        // The first and the last board change places over and over: at any moment exactly one of them is free.
        Swap(first: true);
        var swapping = Task.Run(() =>
        {
            for (var turn = 0; !ended.IsCancellationRequested; turn++)
            {
                Swap(turn % 2 == 0);
            }
        });

        try
        {
            for (var look = 0; look < 30; look++)
            {
                var free = store.ListFree();
                Assert.Equal(Boards - 1, free.Count);
                Assert.All(free, board => Assert.Single(board.Defects));
            }
        }
        finally
        {
            await ended.CancelAsync();
            await swapping;
        }

        void Swap(bool first)
        {
            using var connection = new SqliteConnection($"Data Source={service.DatabasePath};Default Timeout=10");
            connection.Execute(
                """
                UPDATE boards SET status = CASE WHEN (sequence = (SELECT min(sequence) FROM boards)) = @First THEN 'free' ELSE 'used' END
                WHERE sequence IN (SELECT min(sequence) FROM boards UNION SELECT max(sequence) FROM boards)
                """,
                new { First = first });
        }
    }
}
