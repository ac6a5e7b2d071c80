using System.Text.Json;
using Offcuts.Cli.Commands.Plans;
using Offcuts.Cli.Commands.Prices;

namespace Offcuts.Cli.Tests;

public sealed class PlanTests : IDisposable
{
    private const string Shelf = """
        name: Small shelf
        unit: in
        parts:
          - {name: Board, quantity: 2, size: 3/4 x 4 x 20, species: white-ash}
        """;

    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_design_from_standard_input_is_planned_from_the_rack()
    {
        await offcuts.RunAsync("boards", "add", "3/4 x 5 x 48", "--species", "white-ash", "--surface", "surfaced", "--place", "rack 2");

        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "20s", "--sheet", "shelf.html"], Shelf, null);

        Assert.True(plan.Code == 0, plan.Err);
        Assert.Contains("Proved", plan.Out, StringComparison.Ordinal);
        Assert.Contains("rack 2: white ash, surfaced, 3/4 x 5 x 48 in", plan.Out, StringComparison.Ordinal);
        Assert.Contains("Board 2", plan.Out, StringComparison.Ordinal);

        // One board, both parts in a row: nothing can be better, and both views of the plan say so.
        Assert.Matches("\nUses up wood worth [0-9.]+ USD, the least that any plan for this money can\\.\n", plan.Out);
        Assert.Contains(", the least that any plan for this money can.", await File.ReadAllTextAsync(Path.Combine(offcuts.Folder, "shelf.html")), StringComparison.Ordinal);
        Assert.DoesNotContain('\r', plan.Out + plan.Err);
        Assert.StartsWith("<!doctype html>", await File.ReadAllTextAsync(Path.Combine(offcuts.Folder, "shelf.html")), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData(null, "-")]
    [InlineData("1", "-")]
    [InlineData("0", "0 %")]
    [InlineData("0.125", "12.5 %")]
    public void A_gap_of_which_nothing_is_known_is_no_number(string? gap, string shown) =>
        Assert.Equal(shown, PlansCommand.Gap(gap is null ? null : decimal.Parse(gap, System.Globalization.CultureInfo.InvariantCulture)));

    [Fact]
    public async Task The_newest_plan_is_the_last_and_an_id_may_be_typed_in_capitals()
    {
        Assert.Equal(1, (await offcuts.RunAsync("plans", "show", "last")).Code);
        await offcuts.RunAsync("boards", "add", "3/4 x 5 x 48", "--species", "white-ash", "--surface", "surfaced");
        await offcuts.RunAsync(["plan", "-", "--budget", "1s", "--json"], Shelf, null);
        using var plan = JsonDocument.Parse((await offcuts.RunAsync(["plan", "-", "--budget", "1s", "--json"], Shelf, null)).Out);
        var id = plan.RootElement.GetProperty("id").GetString()!;

        using var last = JsonDocument.Parse((await offcuts.RunAsync("plans", "show", "last", "--json")).Out);
        Assert.Equal(id, last.RootElement.GetProperty("id").GetString());
        var diagram = await offcuts.RunAsync("plans", "diagram", id.ToUpperInvariant(), "1");
        Assert.StartsWith("<svg", diagram.Out, StringComparison.Ordinal);
        Assert.Equal(diagram, await offcuts.RunAsync("plans", "diagram", "last", "1"));
    }

    [Fact]
    public async Task A_plan_from_the_last_one_says_what_has_changed_since()
    {
        await offcuts.RunAsync("boards", "add", "3/4 x 5 x 24", "--species", "white-ash", "--surface", "surfaced");
        await offcuts.RunAsync("boards", "add", "3/4 x 5 x 24", "--species", "white-ash", "--surface", "surfaced");
        using var before = JsonDocument.Parse((await offcuts.RunAsync(["plan", "-", "--budget", "2s", "--json"], Shelf, null)).Out);
        var id = before.RootElement.GetProperty("id").GetString()!;
        var boards = before.RootElement.GetProperty("plan").GetProperty("boards").EnumerateArray().Select(board => board.GetProperty("boardId").GetString()!).ToList();
        Assert.DoesNotContain("Changed since", (await offcuts.RunAsync("plans", "show", "last")).Out, StringComparison.Ordinal);
        await offcuts.RunAsync("boards", "remove", boards[0], "--yes");
        var other = (await offcuts.RunAsync("boards", "add", "3/4 x 5 x 24", "--species", "white-ash", "--surface", "surfaced")).Out.Trim();

        var plan = await offcuts.RunAsync(["plan", "-", "--from", "last", "--budget", "2s", "--sheet", "shelf.html"], Shelf, null);

        Assert.True(plan.Code == 0, plan.Err);
        Assert.Contains($"\nChanged since plan {id}\n  It costs as much as before.\n", plan.Out, StringComparison.Ordinal);
        Assert.Matches($"  [12]\\. Board {other} is used now\\.\n", plan.Out);
        Assert.Contains($"  Board {boards[0]} is not used any more: it is not among the boards that may be cut.\n", plan.Out, StringComparison.Ordinal);
        Assert.Contains($"before 1 from {boards[0]}, 1 from {boards[1]}.\n", plan.Out, StringComparison.Ordinal);

        // The sheet says the same in the same words.
        var said = plan.Out[plan.Out.IndexOf("Changed since", StringComparison.Ordinal)..].Split('\n').Skip(1).TakeWhile(line => line.StartsWith("  ", StringComparison.Ordinal)).Select(line => line.Trim()).ToList();
        var sheet = System.Net.WebUtility.HtmlDecode(await File.ReadAllTextAsync(Path.Combine(offcuts.Folder, "shelf.html")));
        Assert.True(said.Count >= 4, plan.Out);
        Assert.Contains($"Changed since plan {id}", sheet, StringComparison.Ordinal);
        Assert.All(said, line => Assert.Contains($"<li>{line}</li>", sheet.Replace('\u00a0', ' '), StringComparison.Ordinal));
        using var shown = JsonDocument.Parse((await offcuts.RunAsync("plans", "show", "last", "--json")).Out);
        Assert.Equal(id, shown.RootElement.GetProperty("from").GetString());
    }

    [Fact]
    public async Task A_plan_without_boards_says_that_there_is_nothing_to_cut()
    {
        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s", "--sheet", "shelf.html"], Shelf, null);

        Assert.Equal(3, plan.Code);
        Assert.Contains("Cut, in this order\n  Nothing.\n", plan.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_board_to_be_ripped_first_begins_with_the_crosscut_that_clears_its_end()
    {
        await offcuts.RunAsync("shop", "set", "--end-trim-unknown", "3/4");
        await offcuts.RunAsync("boards", "add", "1 x 5 x 60", "--species", "white-ash");
        // Of these lengths two and two fill the strips, but no crosscut goes through both strips between them.
        const string Rails = """
            name: Rails
            unit: in
            parts:
              - {name: A, size: 3/4 x 2 x 19 1/2, species: white-ash}
              - {name: B, size: 3/4 x 2 x 36, species: white-ash}
              - {name: C, size: 3/4 x 2 x 27, species: white-ash}
              - {name: D, size: 3/4 x 2 x 29, species: white-ash}
            """;

        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s", "--sheet", "rails.html"], Rails, null);

        Assert.True(plan.Code == 0, plan.Err);
        using var record = JsonDocument.Parse((await offcuts.RunAsync("plans", "show", "last", "--json")).Out);
        Assert.Equal("rip", record.RootElement.GetProperty("plan").GetProperty("boards")[0].GetProperty("firstCut").GetString());
        Assert.Contains("1 x 5 x 60 in; crosscut first", plan.Out, StringComparison.Ordinal);
        Assert.Contains("First: crosscut", await File.ReadAllTextAsync(Path.Combine(offcuts.Folder, "rails.html")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_spare_from_a_blank_that_is_cut_to_length_later_is_called_a_spare()
    {
        await offcuts.RunAsync("shop", "set", "--short-blanks", "refuse", "--shortest-at-planer", "12", "--shortest-at-jointer", "12");
        await offcuts.RunAsync("boards", "add", "1 x 5 x 30", "--species", "white-ash");
        const string Block = "{name: Block, unit: in, parts: [{name: Block, size: 3/4 x 2 x 4, species: white-ash, spares: 1}]}";

        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s"], Block, null);

        Assert.True(plan.Code == 0, plan.Err);
        Assert.Contains("        Block #1 ", plan.Out, StringComparison.Ordinal);
        Assert.Contains("        Block spare #1 ", plan.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Parts_that_cannot_be_had_end_with_3_and_say_why()
    {
        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s", "--json"], Shelf, null);

        Assert.Equal(3, plan.Code);
        using var record = JsonDocument.Parse(plan.Out);
        var missing = Assert.Single(record.RootElement.GetProperty("plan").GetProperty("missing").EnumerateArray());
        Assert.Equal("Board", missing.GetProperty("name").GetString());
        Assert.Equal("no-such-species", missing.GetProperty("code").GetString());
    }

    [UnixFact]
    public async Task Ctrl_C_ends_a_search_with_130_and_leaves_a_store_that_works()
    {
        await offcuts.RunAsync("demo", "--keep", "shop");
        LongSearch.Write(offcuts.Folder);
        using var plan = offcuts.Start(["plan", LongSearch.File, "--data", "shop", "--budget", "60s"]);
        await Task.Delay(3000);
        using var kill = System.Diagnostics.Process.Start("kill", ["-INT", plan.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        var stopped = await Program.FinishAsync(plan);
        var next = await offcuts.RunAsync("boards", "list", "--data", "shop");

        // Whether a first plan was there in time is up to the machine; either it is shown or the fault says that there is none.
        Assert.True(stopped.Code == 130, stopped.Err);
        Assert.True(stopped.Out.Contains(LongSearch.Name, StringComparison.Ordinal) || stopped.Err.Contains("error: Stopped", StringComparison.Ordinal), stopped.Err);
        Assert.DoesNotContain("   at ", stopped.Err, StringComparison.Ordinal);
        Assert.Equal(0, next.Code);
    }

    [Theory]
    [InlineData("plan no-such-design", 1, "no-such-design")]
    [InlineData("plan missing.yaml", 2, "missing.yaml")]
    [InlineData("plan x --budget fast", 2, "5s, 500ms or 2m")]
    [InlineData("plan x --from last", 1, "no plan yet")]
    public async Task What_cannot_be_planned_is_told(string line, int code, string says)
    {
        var outcome = await offcuts.RunAsync(line.Split(' '));

        Assert.Equal(code, outcome.Code);
        Assert.Empty(outcome.Out);
        Assert.Contains(says, outcome.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_fault_in_a_design_names_its_line()
    {
        var outcome = await offcuts.RunAsync(["designs", "add", "-"], "name: Shelf\nunit: in\nparts:\n  - {name: Board, size: 3/4 x four x 20, species: white-ash}\n", null);

        Assert.Equal(2, outcome.Code);
        Assert.Contains("line 4", outcome.Err, StringComparison.Ordinal);
        Assert.Contains("four", outcome.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_demo_plans_a_bench_in_a_store_of_its_own()
    {
        var demo = await offcuts.RunAsync("demo", "--keep", "shop");
        var boards = await offcuts.RunAsync("boards", "list", "--data", "shop");
        var again = await offcuts.RunAsync("demo", "--keep", "shop");

        Assert.True(demo.Code == 0, demo.Err);
        Assert.Contains("Hall bench", demo.Out, StringComparison.Ordinal);
        Assert.Contains("Cut sheet: ", demo.Err, StringComparison.Ordinal);

        // The seat is wider than the shop's planer takes.
        Assert.Matches("Seat 1: 2 sub-panels, .+ wide; surface each before you glue them to each other", demo.Out);
        Assert.True(File.Exists(Path.Combine(offcuts.Folder, "shop", "hall-bench.html")));
        Assert.True(boards.Out.Split('\n').Length > 30);
        Assert.Equal(2, again.Code);
        Assert.False(File.Exists(offcuts.Store));
    }

    [Fact]
    public async Task The_demos_boot_rack_shows_layers_a_row_a_spare_and_gaps()
    {
        await offcuts.RunAsync("demo", "--keep", "shop");
        var rack = await offcuts.RunAsync("plan", "boot-rack", "--data", "shop", "--budget", "20s");

        Assert.True(rack.Code == 0, rack.Err);
        Assert.Contains("Proved", rack.Out, StringComparison.Ordinal);
        Assert.Contains("Slat spare 1 ", rack.Out, StringComparison.Ordinal);
        Assert.Contains("glue up 2 layers of 3/4\"", rack.Out, StringComparison.Ordinal);
        Assert.Matches("mill as one, then cut into [0-9] of 6\"", rack.Out);
        Assert.Matches("Foot 1: layer 1 \\(board [0-9]\\) \\+ layer 2 \\(board [0-9]\\), face to face", rack.Out);
        Assert.Contains("1 spare besides", rack.Out, StringComparison.Ordinal);
        // A name that ends in a number never runs into the size.
        Assert.DoesNotMatch("layers? [0-9+]+ [0-9]", rack.Out.Replace("2 layers of", "", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("5s", 5000)]
    [InlineData("1.5s", 1500)]
    [InlineData("250ms", 250)]
    [InlineData("2m", 120000)]
    public void A_budget_is_a_number_with_its_unit(string text, int milliseconds) =>
        Assert.Equal(milliseconds, Duration.Milliseconds(text, "--budget"));

    [Theory]
    [InlineData("5")]
    [InlineData("1,5s")]
    [InlineData("-1s")]
    [InlineData("0s")]
    [InlineData("99999999m")]
    public void Other_budgets_are_refused(string text) =>
        Assert.Equal("invalid", Assert.Throws<CliException>(() => Duration.Milliseconds(text, "--budget")).Code);

    [Theory]
    [InlineData("# A yard\nsupplier: Hollow Creek Hardwoods\nunit: in", "hollow-creek-hardwoods")]
    [InlineData("""{"supplier": "Corner Yard", "offers": []}""", "corner-yard")]
    [InlineData("unit: in\noffers: []", null)]
    public void A_price_list_names_its_supplier(string document, string? expected) =>
        Assert.Equal(expected, SupplierName.In(document));
}
