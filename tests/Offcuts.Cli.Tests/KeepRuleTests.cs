namespace Offcuts.Cli.Tests;

public sealed class KeepRuleTests : IDisposable
{
    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_piece_in_the_hand_is_kept_or_let_go_by_the_shops_own_rule()
    {
        var small = await offcuts.RunAsync("keep?", "3/4", "x", "2", "x", "10", "walnut");
        Assert.Equal((8, "Let go: the shop keeps only what is at least 12\" long, 2\" wide and 1/4\" thick; it is 10\" long.\n"), (small.Code, small.Out));

        await File.WriteAllTextAsync(Path.Combine(offcuts.Folder, "keep.yaml"), """
            rule:
              - always: walnut
                at least: {width: 1}
              - never: softwood
            """);
        var set = await offcuts.RunAsync("keep-rule", "set", "keep.yaml");
        Assert.True(set.Code == 0, set.Err);
        Assert.Equal(
            " 1. Always keep black walnut from 1\" wide.\n 2. Never keep softwood.\n    Otherwise keep what is at least 1/4 x 2 x 12 in.\n", set.Out);
        Assert.Equal(set.Out, (await offcuts.RunAsync("keep-rule", "show")).Out);

        var kept = await offcuts.RunAsync("keep", "3/4 x 2 x 10 walnut");
        Assert.Equal((0, "Keep: rule 1 always keeps black walnut from 1\" wide.\n"), (kept.Code, kept.Out));
        Assert.Contains("black walnut, rough, 3/4 x 2 x 10 in", kept.Err, StringComparison.Ordinal);
        Assert.Equal(8, (await offcuts.RunAsync("keep?", "2x4 x 8ft white pine")).Code);
        Assert.Contains("\"keep\": true", (await offcuts.RunAsync("keep?", "3/4 x 2 x 10 walnut", "--json")).Out, StringComparison.Ordinal);

        Assert.Equal(0, (await offcuts.RunAsync("keep-rule", "remove")).Code);
        Assert.Equal(8, (await offcuts.RunAsync("keep?", "3/4 x 2 x 10 walnut")).Code);
    }

    [Fact]
    public async Task What_is_no_piece_and_what_is_no_rule_is_told_in_one_line()
    {
        var wrong = await offcuts.RunAsync("keep?", "3/4 x 2 x 10 wallnut");
        Assert.Equal(2, wrong.Code);
        Assert.Contains("column 14, PIECE: 'wallnut' is not understood. Did you mean walnut?", wrong.Err, StringComparison.Ordinal);
        var rule = await offcuts.RunAsync(["keep-rule", "set", "-"], "rule: [{keep: walnut}]", null);
        Assert.Equal(2, rule.Code);
        Assert.Contains("line 1, keep: Say from which sizes on", rule.Err, StringComparison.Ordinal);
    }
}
