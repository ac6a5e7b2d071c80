namespace Offcuts.Cli.Tests;

/// <summary>Warp, ends, batch and skip-planed stock from the command line to the plan.</summary>
public sealed class ConditionTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_boards_condition_is_logged_echoed_listed_shown_and_changed()
    {
        var added = await offcuts.RunAsync(
            "boards", "add", "15/16 x 8 x 70", "--species", "white-ash", "--surface", "skip", "--warp", "bow 1/4, cup 1/8in", "--ends", "left checked", "--batch", "log 3");
        Assert.True(added.Code == 0, added.Err);
        Assert.Contains("skip-planed, 15/16 x 8 x 70 in, bow 1/4\", cup 1/8\", ends left checked, right unknown.", added.Err, StringComparison.Ordinal);
        var id = added.Out.Trim();
        await offcuts.RunAsync("boards", "add", "1 x 6 x 40", "--species", "white-ash");

        var all = (await offcuts.RunAsync("boards", "list")).Out;
        Assert.Matches("LOOK +WARP +BATCH +STATUS", all);
        var log = (await offcuts.RunAsync("boards", "list", "--batch", "log 3")).Out;
        Assert.Contains(id, log, StringComparison.Ordinal);
        Assert.Equal(2, log.TrimEnd().Split('\n').Length);

        var edited = await offcuts.RunAsync("boards", "edit", id, "--ends", "sound", "--place", "rack 2");
        Assert.Contains("Warp:       bow 1/4\", cup 1/8\"\nEnds:       sound\nBatch:      log 3\nPlace:      rack 2", edited.Out, StringComparison.Ordinal);
        var flat = await offcuts.RunAsync("boards", "edit", id, "--warp", "flat");
        Assert.DoesNotContain("Warp", flat.Out, StringComparison.Ordinal);
        Assert.Contains("solid, skip-planed", flat.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_moisture_reading_is_logged_listed_shown_and_taken_back()
    {
        await offcuts.RunAsync("boards", "add", "1 x 6 x 40", "--species", "white-ash");
        Assert.DoesNotContain("MC", (await offcuts.RunAsync("boards", "list")).Out, StringComparison.Ordinal);
        var added = await offcuts.RunAsync("boards", "add", "1 x 6 x 60", "--species", "white-ash", "--moisture", "8.5% on 2026-03-01");
        Assert.True(added.Code == 0, added.Err);
        Assert.Contains("1 x 6 x 60 in, moisture 8.5 % on 2026-03-01.", added.Err, StringComparison.Ordinal);
        Assert.Matches("LOOK +MC +STATUS", (await offcuts.RunAsync("boards", "list")).Out);
        var id = added.Out.Trim();
        Assert.Contains("Moisture:   8.5 % on 2026-03-01\n", (await offcuts.RunAsync("boards", "show", id)).Out, StringComparison.Ordinal);
        Assert.Contains("Moisture:   7 % on 2", (await offcuts.RunAsync("boards", "edit", id, "--moisture", "7%")).Out, StringComparison.Ordinal);
        Assert.Contains("Moisture:   7 % on 2", (await offcuts.RunAsync("boards", "edit", id, "--place", "rack")).Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Moisture", (await offcuts.RunAsync("boards", "edit", id, "--moisture", "none")).Out, StringComparison.Ordinal);
        Assert.Contains("moisture 9 %", (await offcuts.RunAsync("boards", "log", "1 x 6 x 62 ash 9% mc")).Out, StringComparison.Ordinal);

        var wrong = await offcuts.RunAsync("boards", "edit", id, "--moisture", "damp");
        Assert.Equal(2, wrong.Code);
        Assert.Contains("--moisture: 'damp' is no moisture reading", wrong.Err, StringComparison.Ordinal);
        var future = await offcuts.RunAsync("boards", "edit", id, "--moisture", "8% on 2999-01-01");
        Assert.Equal(2, future.Code);
        Assert.Contains("yet to come", future.Err, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_air_is_a_setting_and_a_panels_movement_is_said()
    {
        var set = await offcuts.RunAsync("shop", "set", "--humidity", "30..65", "--temperature", "70F", "--reading-days", "90", "--wide-panel", "10");
        Assert.True(set.Code == 0, set.Err);
        Assert.Matches(@"humidity +30\.\.65 %", set.Out);
        Assert.Matches(@"temperature +21\.1 C \(70 F\)", set.Out);
        Assert.Equal(2, (await offcuts.RunAsync("shop", "set", "--humidity", "damp")).Code);
        Assert.Equal(2, (await offcuts.RunAsync("shop", "set", "--temperature", "21")).Code);
        Assert.Contains("--humidity: The dry season (60 %)", (await offcuts.RunAsync("shop", "set", "--humidity", "60..30")).Err, StringComparison.Ordinal);
        Assert.Contains("--temperature: 93.3: give 0 to 50.", (await offcuts.RunAsync("shop", "set", "--temperature", "200F")).Err, StringComparison.Ordinal);

        await offcuts.RunAsync("boards", "add", "4/4 x 7 x 90", "--species", "cherry", "--moisture", "8%");
        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s"], """
            name: Board
            panels: [{name: Board, size: 3/4 x 12 x 24, species: [cherry]}]
            """, null);
        Assert.True(plan.Code == 0, plan.Err + plan.Out);
        Assert.Contains("Movement across the grain\n  Board, 12\" of black cherry: moves about 3/16\" over the year", plan.Out, StringComparison.Ordinal);
        Assert.Contains("built at 8 % as measured", plan.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Defects_are_echoed_as_they_were_understood_and_their_kinds_listed()
    {
        await offcuts.RunAsync("boards", "add", "1 x 6 x 40", "--species", "white-ash");
        Assert.DoesNotContain("DEFECTS", (await offcuts.RunAsync("boards", "list")).Out, StringComparison.Ordinal);

        var added = await offcuts.RunAsync(
            "boards", "add", "1 x 6 x 60", "--species", "white-ash", "--defect", "split 0..4", "--defect", "knot 10..12 x 1..2", "--defect", "knot 20..21 x 1..2");

        Assert.True(added.Code == 0, added.Err);
        Assert.Contains(
            "1 x 6 x 60 in; split, 4\" along by 6\" across, 0\" from the left end and 0\" from the lower edge; knot, 2\" along by 1\" across, 10\" from",
            added.Err, StringComparison.Ordinal);
        var listed = (await offcuts.RunAsync("boards", "list")).Out;
        Assert.Matches("LOOK +DEFECTS +STATUS", listed);
        Assert.Matches("clear +split, knot +free", listed);
    }

    [Fact]
    public async Task A_slip_in_a_defects_word_is_pointed_out_and_a_plan_says_what_stays_where()
    {
        var slip = await offcuts.RunAsync("boards", "add", "3/4 x 5 x 48", "--species", "white-ash", "--surface", "surfaced", "--defect", "knto 10..12 x 1..2");
        Assert.True(slip.Code == 0, slip.Err);
        Assert.Contains("Mind: 'knto' is no usual word for a defect: did you mean 'knot'?", slip.Err, StringComparison.Ordinal);
        var mended = await offcuts.RunAsync("boards", "edit", slip.Out.Trim(), "--defect", "knot 10..12 x 1..2");
        Assert.DoesNotContain("Mind", mended.Err, StringComparison.Ordinal);

        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s"], """
            name: Shelf
            unit: in
            parts:
              - {name: Shelf, size: 3/4 x 4 3/4 x 47 1/2, species: white-ash, tolerates: [knot, stian]}
            """, null);

        Assert.True(plan.Code == 0, plan.Err);
        Assert.Contains("Mind: 'stian' is no usual word for a defect: did you mean 'stain'?", plan.Err, StringComparison.Ordinal);
        Assert.Contains("knot stays in it, 10\" to 12\" from its left end and 1\" to 2\" from its lower edge\n", plan.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--kerf", "2in")]
    [InlineData("--planer-width", "20ft")]
    [InlineData("--skip-planed-length", "13in")]
    [InlineData("--shortest-at-jointer", "11ft")]
    public async Task A_setting_that_cannot_be_is_named_by_its_option(string option, string value)
    {
        var set = await offcuts.RunAsync("shop", "set", option, value);
        Assert.Equal(2, set.Code);
        Assert.StartsWith($"error: {option}: ", set.Err, StringComparison.Ordinal);
        Assert.DoesNotContain("Mm", set.Err, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--warp", "bend 1/4", "--warp")]
    [InlineData("--ends", "rotten", "--ends")]
    [InlineData("--surface", "polished", "surface")]
    public async Task What_cannot_be_read_is_named_and_nothing_is_logged(string option, string value, string named)
    {
        var added = await offcuts.RunAsync("boards", "add", "1 x 8 x 70", "--species", "white-ash", option, value);
        Assert.Equal(2, added.Code);
        Assert.Contains(named, added.Err, StringComparison.Ordinal);
        Assert.Empty((await offcuts.RunAsync("boards", "list")).Out);
    }

    [Fact]
    public async Task A_plan_says_what_flattening_takes_and_the_shop_what_is_trimmed()
    {
        var shop = await offcuts.RunAsync("shop", "set", "--end-trim-checked", "1 1/2", "--end-trim-unknown", "3/4", "--factory-edge-trim", "1/4", "--flat-enough", "1/64", "--skip-planed-thickness", "5/32");
        Assert.True(shop.Code == 0, shop.Err);
        Assert.Matches("end-trim-checked +1 1/2\"", shop.Out);
        await offcuts.RunAsync("boards", "add", "1 x 5 x 60", "--species", "white-ash", "--warp", "bow 1/4, crook 1/4");

        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "1s"], """
            name: Rail
            unit: in
            parts:
              - {name: Rail, size: 3/4 x 4 x 29 1/2, species: white-ash}
            """, null);

        Assert.True(plan.Code == 0, plan.Err);
        // 30 of 60 in keep a quarter of the bow and of the crook.
        Assert.Contains("4 5/16 x 30 in; flatten: 1/16\" counted for warp; sawn 1/16\" wider for crook", plan.Out, StringComparison.Ordinal);
    }
}
