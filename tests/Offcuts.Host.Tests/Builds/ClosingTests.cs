using System.Net;
using System.Text.Json;

namespace Offcuts.Host.Tests.Builds;

public sealed class ClosingTests : OwnService
{
    private Shop Shop => new(Service);

    [Fact]
    public async Task A_board_that_is_cut_is_used_and_its_leftovers_are_logged_from_the_plan()
    {
        var warped = Shop.Ash.Replace("\"place\"", "\"warp\":{\"bowMm\":3,\"cupMm\":0.5},\"appearance\":\"sound-knots\",\"place\"", StringComparison.Ordinal);
        var id = await Shop.LogAsync(warped);
        var plan = await Shop.PlanAsync(1, length: 600);
        await Shop.AcceptAsync(plan);
        var planned = Assert.Single(Assert.Single(Shop.Boards(plan)).GetProperty("pieces").EnumerateArray(), piece => piece.GetProperty("kind").GetString() == "leftover" && piece.GetProperty("widthMm").GetDecimal() == 150);

        var build = (await Service.ReadAsync(await Shop.CloseAsync(plan), HttpStatusCode.OK)).GetProperty("build");

        Assert.Equal("built", build.GetProperty("state").GetString());
        Assert.Equal("used", (await Shop.BoardAsync(id)).GetProperty("status").GetString());
        var leftovers = new List<JsonElement>();
        foreach (var left in build.GetProperty("boards")[0].GetProperty("leftovers").EnumerateArray())
        {
            leftovers.Add(await Shop.BoardAsync(left.GetString()!));
        }

        var leftover = Assert.Single(leftovers, board => board.GetProperty("widthMm").GetDecimal() == 150);
        var length = planned.GetProperty("lengthMm").GetDecimal();
        Assert.Equal((25.4m, length), (leftover.GetProperty("thicknessMm").GetDecimal(), leftover.GetProperty("lengthMm").GetDecimal()));
        Assert.Equal(
            ("white-ash", "rough", "sound-knots", "log 3", "rack 2", "free"),
            (Text("species"), Text("surface"), Text("appearance"), Text("batch"), Text("place"), Text("status")));
        Assert.Equal(planned.GetProperty("ends").GetRawText(), leftover.GetProperty("ends").GetRawText());
        Assert.Equal((Shop.Id(plan), id), (leftover.GetProperty("origin").GetProperty("planId").GetString(), leftover.GetProperty("origin").GetProperty("cutFrom").GetString()));
        // A shallow arc keeps the square of the share of the length of its rise (a circle's sagitta, c^2 / 8r): from memory.
        var bow = 3m * length * length / (1400m * 1400m);
        Assert.InRange(leftover.GetProperty("warp").GetProperty("bowMm").GetDecimal(), bow, bow + 0.003125m);
        Assert.Equal(0.5m, leftover.GetProperty("warp").GetProperty("cupMm").GetDecimal());
        Assert.Equal(JsonValueKind.Null, leftover.GetProperty("price").ValueKind);
        await Shop.AssertBooksAgreeAsync();

        string? Text(string member) => leftover.GetProperty(member).GetString();
    }

    [Fact]
    public async Task What_was_bought_enters_the_stock_with_its_price_and_its_leftovers_share_it_by_volume()
    {
        var plan = await Shop.PlanAsync(1, buying: true);
        await Shop.AcceptAsync(plan);
        Assert.Equal("to-buy", (await Shop.BuildAsync(plan)).GetProperty("boards")[0].GetProperty("state").GetString());
        Assert.Equal(0, (await Service.GetAsync("/v1/boards")).GetProperty("items").GetArrayLength());

        var build = (await Service.ReadAsync(await Shop.CloseAsync(plan, """{"boards":[{"number":1,"place":"bench","batch":"load 7"}]}"""), HttpStatusCode.OK)).GetProperty("build");

        var closed = build.GetProperty("boards")[0];
        var bought = await Shop.BoardAsync(closed.GetProperty("boardId").GetString()!);
        // 1 x 6 x 72 in are 3 board feet, at 6.20 each.
        Assert.Equal(18.6m, bought.GetProperty("price").GetProperty("amount").GetDecimal());
        Assert.Equal(("used", "Hill Yard", "load 7"), (bought.GetProperty("status").GetString(), bought.GetProperty("source").GetString(), bought.GetProperty("batch").GetString()));
        Assert.Equal(JsonValueKind.Null, bought.GetProperty("origin").GetProperty("cutFrom").ValueKind);
        foreach (var id in closed.GetProperty("leftovers").EnumerateArray())
        {
            var leftover = await Shop.BoardAsync(id.GetString()!);
            var share = leftover.GetProperty("widthMm").GetDecimal() * leftover.GetProperty("lengthMm").GetDecimal() / (152.4m * 1828.8m);
            Assert.Equal(decimal.Floor(1860m * share) / 100m, leftover.GetProperty("price").GetProperty("amount").GetDecimal());
            Assert.Equal(("bench", "load 7"), (leftover.GetProperty("place").GetString(), leftover.GetProperty("batch").GetString()));
            Assert.Equal(bought.GetProperty("id").GetString(), leftover.GetProperty("origin").GetProperty("cutFrom").GetString());
        }

        Assert.NotEmpty(closed.GetProperty("leftovers").EnumerateArray());
        await Shop.AssertBooksAgreeAsync();
    }

    [Fact]
    public async Task Boards_are_closed_one_by_one_and_what_is_not_cut_can_be_given_back()
    {
        var id = await Shop.LogAsync(quantity: 3);
        var plan = await Shop.PlanAsync(3);
        await Shop.AcceptAsync(plan);
        var one = await Service.ReadAsync(await Shop.CloseAsync(plan, """{"boards":[{"number":2}]}"""), HttpStatusCode.OK);

        Assert.Equal("under-way", one.GetProperty("build").GetProperty("state").GetString());
        Assert.Equal(["held", "cut", "held"], one.GetProperty("build").GetProperty("boards").EnumerateArray().Select(board => board.GetProperty("state").GetString()));
        var board = await Shop.BoardAsync(id);
        Assert.Equal((2, "reserved"), (board.GetProperty("quantity").GetInt32(), board.GetProperty("status").GetString()));
        Assert.Contains("closed already", await Shop.ConflictAsync(await Shop.CloseAsync(plan, """{"boards":[{"number":1},{"number":2}]}""")), StringComparison.Ordinal);
        Assert.Equal(2, (await Shop.BoardAsync(id)).GetProperty("quantity").GetInt32());

        var stopped = await Service.ReadAsync(await Shop.ReleaseAsync(plan), HttpStatusCode.OK);
        Assert.Equal("stopped", stopped.GetProperty("build").GetProperty("state").GetString());
        Assert.Equal("free", (await Shop.BoardAsync(id)).GetProperty("status").GetString());
        await Shop.ConflictAsync(await Shop.CloseAsync(plan));
        await Shop.ConflictAsync(await Shop.ReleaseAsync(plan));

        await Service.ReadAsync(await Shop.AcceptAsync(plan), HttpStatusCode.OK);
        var built = await Service.ReadAsync(await Shop.CloseAsync(plan), HttpStatusCode.OK);
        Assert.Equal("built", built.GetProperty("build").GetProperty("state").GetString());
        board = await Shop.BoardAsync(id);
        Assert.Equal((1, "used"), (board.GetProperty("quantity").GetInt32(), board.GetProperty("status").GetString()));
        await Shop.ConflictAsync(await Shop.CloseAsync(plan));
        await Shop.ConflictAsync(await Shop.ReleaseAsync(plan));
        await Shop.AssertBooksAgreeAsync();
    }

    // Of the board 150 x 1400 the rail takes a blank, and the largest leftover is as the plan says.
    [Theory]
    [InlineData("""{"number":1,"leftovers":[{"leftover":1,"size":{"thicknessMm":25.4,"widthMm":150,"lengthMm":100}}]}""", "does not add up")]
    [InlineData("""{"number":1,"leftovers":[{"leftover":1,"size":{"thicknessMm":25.4,"widthMm":150,"lengthMm":1300}}]}""", "does not add up")]
    [InlineData("""{"number":1,"leftovers":[{"leftover":1,"size":{"thicknessMm":25.4,"widthMm":151,"lengthMm":100}}]}""", "or give the reason")]
    [InlineData("""{"number":1,"added":[{"size":{"thicknessMm":25.4,"widthMm":150,"lengthMm":1400}}]}""", "more came out")]
    [InlineData("""{"number":1,"size":{"thicknessMm":25.4,"widthMm":150,"lengthMm":1390}}""", "more came out")]
    [InlineData("""{"number":1,"leftovers":[{"leftover":1,"size":{"thicknessMm":25.4,"widthMm":250,"lengthMm":100}}],"reason":"so it is"}""", "whatever the reason")]
    [InlineData("""{"number":1,"leftovers":[{"leftover":1,"size":{"thicknessMm":28,"widthMm":150,"lengthMm":100}}],"reason":"so it is"}""", "whatever the reason")]
    [InlineData("""{"number":1,"added":[{"size":{"thicknessMm":25.4,"widthMm":150,"lengthMm":1400}}],"reason":"so it is"}""", "whatever the reason")]
    [InlineData("""{"number":1,"leftovers":[{"leftover":9}]}""", "no planned leftover 9")]
    [InlineData("""{"number":1,"leftovers":[{"leftover":1},{"leftover":1}]}""", "stands twice")]
    [InlineData("""{"number":1,"spoiled":[99]}""", "no part and no strip")]
    [InlineData("""{"number":7}""", "no board 7")]
    public async Task What_does_not_add_up_is_refused_and_nothing_is_stored(string said, string told)
    {
        await Shop.LogAsync();
        var plan = await Shop.PlanAsync(1, length: 600);
        await Shop.AcceptAsync(plan);
        var line = await Shop.NewestLineAsync();

        var answer = await Shop.CloseAsync(plan, $$"""{"boards":[{{said}}]}""");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(told, (await Service.ProblemAsync(answer)).GetProperty("errors")[0].GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal(line, await Shop.NewestLineAsync());
        Assert.Equal("accepted", (await Shop.BuildAsync(plan)).GetProperty("state").GetString());
    }

    [Fact]
    public async Task What_was_thrown_away_is_said_or_the_reason_is()
    {
        await Shop.LogAsync(quantity: 2);
        var plan = await Shop.PlanAsync(2, length: 1000);
        var leftover = Shop.Boards(plan).First().GetProperty("pieces").EnumerateArray().First(piece => piece.GetProperty("kind").GetString() == "leftover");
        var (width, length) = (leftover.GetProperty("widthMm").GetDecimal(), leftover.GetProperty("lengthMm").GetDecimal());
        await Shop.AcceptAsync(plan);
        var shorter = FormattableString.Invariant($$"""{"leftover":1,"size":{"thicknessMm":25.4,"widthMm":{{width}},"lengthMm":{{length - 50}}},"note":"end split off"}""");

        var stated = await Service.ReadAsync(
            await Shop.CloseAsync(plan, FormattableString.Invariant($$"""{"boards":[{"number":1,"leftovers":[{{shorter}}],"waste":[{"lengthMm":50,"widthMm":{{width}}}]}]}""")), HttpStatusCode.OK);
        var balance = stated.GetProperty("build").GetProperty("boards")[0].GetProperty("balance");
        Assert.Equal(0m, balance.GetProperty("differenceMm2").GetDecimal());
        var reasoned = await Service.ReadAsync(await Shop.CloseAsync(plan, $$"""{"boards":[{"number":2,"leftovers":[{{shorter}}],"reason":"the dog ate it"}]}"""), HttpStatusCode.OK);
        var other = reasoned.GetProperty("build").GetProperty("boards")[1];
        Assert.Equal((50m * width, "the dog ate it"), (other.GetProperty("balance").GetProperty("differenceMm2").GetDecimal(), other.GetProperty("reason").GetString()));
        foreach (var board in reasoned.GetProperty("build").GetProperty("boards").EnumerateArray())
        {
            var kept = await Shop.BoardAsync(board.GetProperty("leftovers")[0].GetString()!);
            Assert.Equal((length - 50, "end split off"), (kept.GetProperty("lengthMm").GetDecimal(), kept.GetProperty("note").GetString()));
            Assert.Equal(
                150m * 1400m,
                new[] { "partsMm2", "leftoversMm2", "kerfMm2", "wasteMm2", "differenceMm2" }.Sum(member => board.GetProperty("balance").GetProperty(member).GetDecimal()));
        }
    }

    [Fact]
    public async Task A_closing_is_taken_back_until_something_is_built_on_it()
    {
        var id = await Shop.LogAsync();
        var plan = await Shop.PlanAsync(1, length: 600);
        await Shop.AcceptAsync(plan);
        var accepted = await Shop.BoardAsync(id);
        await Shop.CloseAsync(plan);
        var closing = await Shop.NewestLineAsync();

        var undone = await Service.ReadAsync(await Shop.UndoAsync(closing), HttpStatusCode.OK);
        Assert.Equal((closing, "undo"), (undone.GetProperty("undoes").GetInt64(), undone.GetProperty("kind").GetString()));
        Assert.Equal(accepted.GetRawText(), (await Shop.BoardAsync(id)).GetRawText());
        Assert.Equal(1, (await Service.GetAsync("/v1/boards")).GetProperty("items").GetArrayLength());
        Assert.Equal("accepted", (await Shop.BuildAsync(plan)).GetProperty("state").GetString());
        Assert.Contains("has done so already", await Shop.ConflictAsync(await Shop.UndoAsync(closing)), StringComparison.Ordinal);

        // Closed once more; another plan takes a leftover.
        var closed = await Service.ReadAsync(await Shop.CloseAsync(plan), HttpStatusCode.OK);
        closing = await Shop.NewestLineAsync();
        var next = await Shop.PlanAsync(1, length: 400);
        await Shop.AcceptAsync(next);
        var why = await Shop.ConflictAsync(await Shop.UndoAsync(closing));
        Assert.Contains(FormattableString.Invariant($"line {closing + 1} (accept)"), why, StringComparison.Ordinal);
        Assert.Contains(Shop.Boards(next).First().GetProperty("boardId").GetString()!, why, StringComparison.Ordinal);

        await Shop.ReleaseAsync(next);
        await Service.ReadAsync(await Shop.UndoAsync(closing), HttpStatusCode.OK);
        Assert.NotEmpty(closed.GetProperty("build").GetProperty("boards")[0].GetProperty("leftovers").EnumerateArray());
        Assert.Equal(1, (await Service.GetAsync("/v1/boards")).GetProperty("items").GetArrayLength());
        Assert.Equal(HttpStatusCode.NotFound, (await Shop.UndoAsync(999)).StatusCode);
        await Shop.AssertBooksAgreeAsync();
    }

    [Fact]
    public async Task Every_kind_of_change_can_be_taken_back_and_so_can_the_taking_back()
    {
        var id = await Shop.LogAsync();
        var logged = (await Shop.BoardAsync(id)).GetRawText();
        await Service.SendAsync("PUT", $"/v1/boards/{id}", Shop.Ash.Replace("1400", "1300", StringComparison.Ordinal));
        await Service.SendAsync("DELETE", $"/v1/boards/{id}");
        await Service.ReadAsync(await Shop.UndoAsync(3), HttpStatusCode.OK);
        Assert.Equal(1300m, (await Shop.BoardAsync(id)).GetProperty("lengthMm").GetDecimal());
        await Service.ReadAsync(await Shop.UndoAsync(2), HttpStatusCode.OK);
        Assert.Equal(logged, (await Shop.BoardAsync(id)).GetRawText());
        await Service.ReadAsync(await Shop.UndoAsync(1), HttpStatusCode.OK);
        Assert.Equal(HttpStatusCode.NotFound, (await Service.SendAsync("GET", $"/v1/boards/{id}")).StatusCode);
        await Service.ReadAsync(await Shop.UndoAsync(6), HttpStatusCode.OK);
        Assert.Equal(logged, (await Shop.BoardAsync(id)).GetRawText());
        await Shop.AssertBooksAgreeAsync();
    }
}
