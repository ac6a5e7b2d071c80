using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class ShoppingTests : IDisposable
{
    private const string Prices = """
        supplier: Hill Yard
        unit: in
        delivery: 25.00
        offers:
          - name: Ash 4/4
            species: ash
            thickness: 4/4
            random: {widths: [6], lengths: [6ft, 8ft], price per board foot: 5.75}
            steps: [{from: 50, price: 5.00}]
        """;

    private const string Rails = """
        name: Rails
        unit: in
        parts:
          - {name: rail, quantity: 2, size: 3/4 x 5 x 36, species: white-ash}
        """;

    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_list_is_in_the_yards_words_and_says_what_another_length_would_cost()
    {
        await offcuts.RunAsync(["prices", "load", "-"], Prices, null);
        var prices = (await offcuts.RunAsync("prices", "show", "hill yard")).Out;
        Assert.Contains("* Ash 4/4: 5.00 USD from 50 on (board foot)", prices, StringComparison.Ordinal);
        Assert.Contains("Delivery: 25.00 USD an order.", prices, StringComparison.Ordinal);

        // Two rails of 36 1/2 in with a kerf between them do not fit on 6 ft, so a board of 8 ft gives both.
        var plan = await offcuts.RunAsync(["plan", "-", "--budget", "10s", "--sheet", "rails.html"], Rails, null);
        Assert.Contains("Costs 48.00 USD: 23.00 USD for wood, 0.00 USD for items, 25.00 USD for delivery and minimum orders.", plan.Out, StringComparison.Ordinal);
        Assert.Contains("Proved: no plan for these parts spends less on wood and charges.", plan.Out, StringComparison.Ordinal);

        var list = await offcuts.RunAsync("plans", "shopping", "last");
        Assert.True(list.Code == 0, list.Err);
        Assert.Contains(
            """

            Hill Yard
              4/4 rough white ash: 4.0 board feet at 5.75 USD a board foot = 23.00 USD
                1 piece, at least 6" wide and 8 ft long
                listed as Ash 4/4; random widths and lengths: take pieces no narrower and no shorter
              delivery: 25.00 USD
              together 48.00 USD

            """, list.Out, StringComparison.Ordinal);
        using var json = JsonDocument.Parse((await offcuts.RunAsync("plans", "shopping", "last", "--json")).Out);
        Assert.Equal(48m, json.RootElement.GetProperty("total").GetDecimal());

        var without = await offcuts.RunAsync("plans", "shopping", "last", "--without", "8ft", "--budget", "10s");
        Assert.StartsWith("Without that it costs 59.50 USD instead of 48.00 USD: 11.50 USD more.\n", without.Out, StringComparison.Ordinal);
        Assert.Contains("2 pieces, each at least 6\" wide and 6 ft long", without.Out, StringComparison.Ordinal);

        // What would be is not what is built: last stays what it was, until the other is accepted.
        Assert.Equal(list.Out, (await offcuts.RunAsync("plans", "shopping", "last")).Out);
        var other = System.Text.RegularExpressions.Regex.Match(without.Err, "plans accept ([a-z0-9]{8})").Groups[1].Value;
        Assert.Matches($"{other} .* what if\n", (await offcuts.RunAsync("plans", "list")).Out);
        await offcuts.RunAsync("plans", "accept", other);
        Assert.Contains($"(plan {other})", (await offcuts.RunAsync("plans", "shopping", "last")).Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_length_and_no_offer_is_pointed_at()
    {
        await offcuts.RunAsync(["prices", "load", "-"], Prices, null);
        var wrong = await offcuts.RunAsync(["plan", "-", "--without", "Oak 8ft"], Rails, null);
        Assert.Equal(2, wrong.Code);
        Assert.Contains("'Oak 8ft' is no length and names no offer", wrong.Err, StringComparison.Ordinal);
        var both = await offcuts.RunAsync(["plan", "-", "--without", "Ash 4/4 8ft", "--budget", "10s", "--json"], Rails, null);
        Assert.True(both.Code == 0, both.Err);
    }

    [Fact]
    public async Task An_offcut_that_is_worth_having_is_told_by_its_size()
    {
        await offcuts.RunAsync(["prices", "load", "-"], Prices, null);
        await offcuts.RunAsync(["plan", "-", "--budget", "10s", "--json"], Rails, null);
        var worth = await offcuts.RunAsync("plans", "worth-having", "last", "--budget", "20s");
        Assert.True(worth.Code == 0, worth.Err);
        // With one rail's blank on the rack a board of 6 ft does instead of one of 8 ft: 5.75 less; with both nothing is bought, nor delivered.
        Assert.Matches("white ash +1 x 5 1/4 x 36 1/2 in  rough +5.75 USD", worth.Out);
        Assert.Matches("white ash +1 x 5 1/4 x 73 1/4 in  rough +48.00 USD", worth.Out);
    }

    [Fact]
    public async Task What_would_save_nothing_is_not_listed()
    {
        // The demo's bench must buy two long boards: with one offcut of the size that seems to help most it must buy as many.
        var demo = await offcuts.RunAsync("demo", "--keep", "demo");
        Assert.True(demo.Code == 0, demo.Err);
        var worth = await offcuts.RunAsync("plans", "worth-having", "last", "--budget", "4s", "--data", "demo");
        Assert.True(worth.Code == 0, worth.Err);
        Assert.DoesNotContain("nothing", worth.Out, StringComparison.Ordinal);
        var rows = worth.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).ToList();
        Assert.All(rows, row => Assert.Matches("[1-9][0-9.]* USD", row));
        Assert.Equal(rows.Count == 0, worth.Err.Contains("found to save anything", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_a_second_stop_must_save_is_a_setting()
    {
        await offcuts.RunAsync("shop", "set", "--second-stop", "20");
        Assert.Matches("second-stop +20.00 USD", (await offcuts.RunAsync("shop", "show")).Out);
        Assert.Equal(2, (await offcuts.RunAsync("shop", "set", "--second-stop", "much")).Code);
    }
}
