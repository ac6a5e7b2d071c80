using System.Net;
using System.Text.Json;
using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Offcuts.Storage;

namespace Offcuts.Host.Tests.Builds;

public sealed class AcceptanceTests : OwnService
{
    private Shop Shop => new(Service);

    [Fact]
    public async Task An_accepted_plan_holds_its_boards_and_no_other_plan_sees_them()
    {
        var id = await Shop.LogAsync();
        var first = await Shop.PlanAsync(1);
        var second = await Shop.PlanAsync(1);
        var accepted = await Service.ReadAsync(await Shop.AcceptAsync(first), HttpStatusCode.OK);

        Assert.Equal("accepted", accepted.GetProperty("build").GetProperty("state").GetString());
        var board = await Shop.BoardAsync(id);
        Assert.Equal("reserved", board.GetProperty("status").GetString());
        Assert.Equal(Shop.Id(first), Assert.Single(board.GetProperty("holds").EnumerateArray()).GetProperty("planId").GetString());
        Assert.Contains($"Board {id} is held by plan {Shop.Id(first)}.", await Shop.ConflictAsync(await Shop.AcceptAsync(second)), StringComparison.Ordinal);
        Assert.Empty(Shop.Boards(await Shop.PlanAsync(1)));
        Assert.Equal(JsonValueKind.Null, (await Service.GetAsync($"/v1/plans/{Shop.Id(second)}")).GetProperty("build").ValueKind);
        var listed = (await Service.GetAsync("/v1/plans")).GetProperty("items").EnumerateArray().ToDictionary(plan => Shop.Id(plan), plan => plan.GetProperty("build").GetString());
        Assert.Equal(("accepted", null), (listed[Shop.Id(first)], listed[Shop.Id(second)]));

        // Once more is the same.
        Assert.Equal(accepted.GetRawText(), (await Service.ReadAsync(await Shop.AcceptAsync(first), HttpStatusCode.OK)).GetRawText());
        Assert.Equal(2, await Shop.NewestLineAsync());
        await Shop.AssertBooksAgreeAsync();
    }

    [Fact]
    public async Task Boards_alike_are_held_one_by_one()
    {
        var id = await Shop.LogAsync(quantity: 3);
        var two = await Shop.PlanAsync(2);
        Assert.Equal(2, Shop.Boards(two).Count());
        var other = await Shop.PlanAsync(2);
        await Shop.AcceptAsync(two);
        Assert.Equal("free", (await Shop.BoardAsync(id)).GetProperty("status").GetString());
        Assert.Contains("1 of 3 are free", await Shop.ConflictAsync(await Shop.AcceptAsync(other)), StringComparison.Ordinal);

        var last = await Shop.PlanAsync(3);
        Assert.Single(Shop.Boards(last));
        Assert.Equal(HttpStatusCode.OK, (await Shop.AcceptAsync(last)).StatusCode);
        Assert.Equal("reserved", (await Shop.BoardAsync(id)).GetProperty("status").GetString());

        await Shop.ReleaseAsync(two);
        var board = await Shop.BoardAsync(id);
        Assert.Equal(("free", 1, 3), (board.GetProperty("status").GetString(), board.GetProperty("holds").GetArrayLength(), board.GetProperty("quantity").GetInt32()));
        Assert.Equal(HttpStatusCode.OK, (await Shop.AcceptAsync(other)).StatusCode);
        await Shop.AssertBooksAgreeAsync();
    }

    [Fact]
    public async Task A_plan_that_starts_from_an_accepted_one_may_take_what_that_holds_but_not_what_others_do()
    {
        var id = await Shop.LogAsync(quantity: 3);
        var (first, other) = (await Shop.PlanAsync(1), await Shop.PlanAsync(1));
        await Shop.AcceptAsync(first);
        await Shop.AcceptAsync(other);

        var second = await Shop.PlanAsync(3, from: first);
        Assert.Equal([id, id], Shop.Boards(second).Select(board => board.GetProperty("boardId").GetString()));
        Assert.Single(Shop.Boards(await Shop.PlanAsync(3)));
        Assert.Equal(["kept", "new"], second.GetProperty("plan").GetProperty("changes").GetProperty("boards").EnumerateArray().Select(board => board.GetProperty("change").GetString()).Order());

        // The first keeps what it holds until it is released.
        var why = await Shop.ConflictAsync(await Shop.AcceptAsync(second));
        Assert.Contains("1 of 3 are free", why, StringComparison.Ordinal);
        Assert.Contains(Shop.Id(first), why, StringComparison.Ordinal);
        await Shop.ReleaseAsync(first);
        Assert.Equal(HttpStatusCode.OK, (await Shop.AcceptAsync(second)).StatusCode);
        Assert.Equal(
            new[] { Shop.Id(other), Shop.Id(second), Shop.Id(second) }.Order(),
            (await Shop.BoardAsync(id)).GetProperty("holds").EnumerateArray().Select(hold => hold.GetProperty("planId").GetString()!).Order());
        Assert.Equal("reserved", (await Shop.BoardAsync(id)).GetProperty("status").GetString());

        // A board that is reserved as a whole is seen as well.
        Assert.Equal(2, Shop.Boards(await Shop.PlanAsync(3, from: second)).Count());
        await Shop.AssertBooksAgreeAsync();
    }

    [Theory]
    [InlineData("INSERT OR IGNORE INTO reservations SELECT board_sequence, copy, @Plan, 9 FROM reservations", 0)]
    [InlineData("INSERT INTO reservations SELECT board_sequence, copy, @Plan, 9 FROM reservations", null)]
    [InlineData("INSERT INTO reservations SELECT board_sequence, 2, @Plan, 9 FROM reservations", null)]
    [InlineData("INSERT INTO reservations SELECT board_sequence, 0, @Plan, 9 FROM reservations", null)]
    [InlineData("UPDATE boards SET quantity = 0", null)]
    [InlineData("DELETE FROM boards", null)]
    public async Task The_database_itself_refuses_a_second_hold(string sql, int? changed)
    {
        await Shop.LogAsync();
        var first = await Shop.PlanAsync(1);
        var second = await Shop.PlanAsync(1);
        await Shop.AcceptAsync(first);
        using var connection = new SqliteConnection($"Data Source={Service.DatabasePath};Foreign Keys=True");
        int Run() => connection.Execute(sql, new { Plan = Shop.Id(second) });
        if (changed is { } rows)
        {
            Assert.Equal(rows, Run());
        }
        else
        {
            Assert.Throws<SqliteException>(() => Run());
        }

        Assert.Equal([Shop.Id(first)], connection.Query<string>("SELECT plan_id FROM reservations"));
    }

    [Theory]
    [InlineData("""{"species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1300}""", "not what it was")]
    [InlineData("""{"species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400,"defects":[{"kind":"knot","xMm":1,"yMm":1,"lengthMm":2,"widthMm":2}]}""", "not what it was")]
    [InlineData("""{"species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400,"status":"gone"}""", "is gone")]
    [InlineData(null, "not on the rack any more")]
    public async Task A_plan_whose_board_has_changed_is_refused_and_takes_nothing(string? change, string told)
    {
        var plain = """{"species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400}""";
        var (changed, other) = (await Shop.LogAsync(plain), await Shop.LogAsync(plain));
        var plan = await Shop.PlanAsync(2);
        await (change is null ? Service.SendAsync("DELETE", $"/v1/boards/{changed}") : Service.SendAsync("PUT", $"/v1/boards/{changed}", change));

        var why = await Shop.ConflictAsync(await Shop.AcceptAsync(plan));

        Assert.Contains(told, why, StringComparison.Ordinal);
        Assert.Contains(changed, why, StringComparison.Ordinal);
        Assert.DoesNotContain(other, why, StringComparison.Ordinal);
        Assert.Equal("free", (await Shop.BoardAsync(other)).GetProperty("status").GetString());
    }

    [Fact]
    public async Task Where_a_board_lies_and_what_is_noted_may_change_all_the_while()
    {
        var id = await Shop.LogAsync();
        var plan = await Shop.PlanAsync(1);
        var moved = Shop.Ash.Replace("rack 2", "rack 9", StringComparison.Ordinal);
        await Service.SendAsync("PUT", $"/v1/boards/{id}", moved);
        Assert.Equal(HttpStatusCode.OK, (await Shop.AcceptAsync(plan)).StatusCode);

        var again = await Service.ReadAsync(await Service.SendAsync("PUT", $"/v1/boards/{id}", moved.Replace("rack 9", "bench", StringComparison.Ordinal)), HttpStatusCode.OK);
        Assert.Equal(("bench", "reserved"), (again.GetProperty("place").GetString(), again.GetProperty("status").GetString()));
        foreach (var refused in new[] { moved.Replace("1400", "1300", StringComparison.Ordinal), moved.Replace("{\"species", """{"status":"gone","species""", StringComparison.Ordinal) })
        {
            Assert.Contains(Shop.Id(plan), await Shop.ConflictAsync(await Service.SendAsync("PUT", $"/v1/boards/{id}", refused)), StringComparison.Ordinal);
        }

        await Shop.ConflictAsync(await Service.SendAsync("DELETE", $"/v1/boards/{id}"));
        await Shop.AssertBooksAgreeAsync();
    }

    [Fact]
    public async Task A_plan_from_stock_of_its_own_request_cannot_be_accepted()
    {
        var answer = await Service.SendAsync("POST", "/v1/plans", $$"""{"inline":{{PlanEndpointsTests.Inline}}}""", prefer: "wait=20");
        Assert.Contains("Board A is not on the rack", await Shop.ConflictAsync(await Shop.AcceptAsync(await Service.ReadAsync(answer, HttpStatusCode.Created))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Holds_end_by_themselves_only_if_the_shop_says_so_and_nothing_is_cut()
    {
        await Shop.LogAsync(quantity: 2);
        var (idle, begun) = (await Shop.PlanAsync(1), await Shop.PlanAsync(1));
        var longAgo = new BuildStore(Service.Services.GetRequiredService<Database>(), new Past());
        foreach (var plan in new[] { idle, begun })
        {
            var wanted = Service.Services.GetRequiredService<BoardStore>().Find(Shop.Boards(plan).Single().GetProperty("boardId").GetString()!)!;
            longAgo.Accept(Shop.Id(plan), [new WantedBoard(1, wanted)], []);
        }

        Assert.Equal(JsonValueKind.Null, (await Shop.BuildAsync(idle)).GetProperty("heldUntil").ValueKind);
        await Service.SendAsync("PUT", "/v1/shop", """{"holdDays":11}""");
        Assert.Equal(
            DateTimeOffset.UtcNow.AddDays(1).Date, (await Shop.BuildAsync(idle)).GetProperty("heldUntil").GetDateTimeOffset().UtcDateTime.Date);
        await Service.ReadAsync(await Shop.CloseAsync(begun), HttpStatusCode.OK);
        await Service.SendAsync("PUT", "/v1/shop", """{"holdDays":9}""");

        Assert.Single(Shop.Boards(await Shop.PlanAsync(2)));
        Assert.Equal(JsonValueKind.Null, (await Shop.BuildAsync(idle)).ValueKind);
        Assert.Equal("built", (await Shop.BuildAsync(begun)).GetProperty("state").GetString());
        Assert.Equal("expire", (await Service.GetAsync("/v1/journal?limit=1")).GetProperty("items")[0].GetProperty("kind").GetString());
        Assert.Equal(HttpStatusCode.BadRequest, (await Service.SendAsync("PUT", "/v1/shop", """{"holdDays":0}""")).StatusCode);
        await Shop.AssertBooksAgreeAsync();
    }

    private sealed class Past : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => DateTimeOffset.UtcNow.AddDays(-10);
    }
}
