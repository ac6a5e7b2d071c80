using System.Text.Json;

namespace Offcuts.Cli.Tests;

public sealed class BendingTests : IDisposable
{
    private const string Shelf = """
        name: Bending shelf
        unit: in
        parameters:
          length: 20in..60in by 1/2in default 24in
          boards: 1..3
        parts:
          - {name: Board, quantity: boards, size: 3/4 x 4 x length - 4, species: white-ash}
          - {name: Lip, size: 3/4 x 1 x length - 4, species: white-ash, optional: lip}
        """;

    private const string Prices = """
        supplier: Hill Yard
        unit: in
        offers:
          - name: Ash 4/4
            species: white-ash
            thickness: 4/4
            random: {widths: [6], lengths: [6ft, 8ft], price per board foot: 5.75}
        """;

    private readonly Program offcuts = new();

    public void Dispose() => offcuts.Dispose();

    [Fact]
    public async Task A_plan_is_made_with_the_values_asked_for_and_says_so()
    {
        await offcuts.RunAsync("boards", "add", "3/4 x 5 1/2 x 48", "--species", "white-ash", "--surface", "surfaced");

        var plan = await offcuts.RunAsync(["plan", "-", "--with", "length=30 1/2", "--with", "boards=1", "--budget", "2s", "--sheet", "shelf.html"], Shelf, null);

        Assert.True(plan.Code == 0, plan.Err);
        Assert.Contains("Made with length = 30 1/2\", boards = 1, lip = yes.\n", plan.Out, StringComparison.Ordinal);
        Assert.Contains("The cheapest of 2 ways to build it: no other costs less.", plan.Out, StringComparison.Ordinal);
        Assert.Contains("Made with length = 30 1/2\"", (await File.ReadAllTextAsync(Path.Combine(offcuts.Folder, "shelf.html"))).Replace("&quot;", "\"", StringComparison.Ordinal).Replace('\u00A0', ' '), StringComparison.Ordinal);

        var bare = await offcuts.RunAsync(["plan", "bending-shelf", "--choose", "lip=no", "--budget", "2s", "--sheet", "bare.html"], null, null);
        Assert.Contains("Made with length = 24\", boards = 1, lip = no.\n", bare.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Lip", bare.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_design_is_shown_with_what_it_leaves_open()
    {
        await offcuts.RunAsync(["designs", "add", "-"], Shelf, null);
        var shown = await offcuts.RunAsync("designs", "show", "bending-shelf");
        Assert.Matches("length +20\" to 60\" by 1/2\" +24\"\n", shown.Out);
        Assert.Matches("boards +1 to 3 +1\n", shown.Out);
        Assert.Matches("lip +yes, no\n", shown.Out);
        Assert.Contains("Board: length = length - 4; quantity = boards.\n", shown.Out, StringComparison.Ordinal);
        Assert.Contains("Lip: length = length - 4; only with lip = yes.\n", shown.Out, StringComparison.Ordinal);
        Assert.Matches(@"Board +1 \* +3/4 x 4 x 20 in \*", shown.Out);
    }

    [Fact]
    public async Task What_a_plan_was_made_with_stays_when_it_is_planned_again_without_something()
    {
        await offcuts.RunAsync(["prices", "load", "-"], Prices, null);
        await offcuts.RunAsync(["plan", "-", "--with", "length=30 1/2", "--with", "boards=1", "--choose", "lip=no", "--budget", "2s"], Shelf, null);
        var again = await offcuts.RunAsync("plans", "shopping", "last", "--without", "8ft", "--budget", "2s");
        Assert.True(again.Code == 0, again.Err);
        Assert.Contains("Without that it costs", again.Out, StringComparison.Ordinal);
        var plan = await offcuts.RunAsync("plans", "show", "last");
        Assert.Contains("length = 30 1/2\", boards = 1, lip = no", plan.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--with", "lenght=30", "Did you mean length?")]
    [InlineData("--with", "length", "no name with a value")]
    [InlineData("--with", "boards=two", "no count")]
    [InlineData("--with", "length=30 1/3", "30 1/3")]
    [InlineData("--with", "length=30.25", "give 30\" or 30 1/2\"")]
    [InlineData("--choose", "lip=maybe", "no answer to 'lip'")]
    public async Task What_cannot_be_is_told_in_one_line(string option, string value, string why)
    {
        await offcuts.RunAsync(["designs", "add", "-"], Shelf, null);
        var plan = await offcuts.RunAsync("plan", "bending-shelf", option, value);
        Assert.Equal(2, plan.Code);
        Assert.Contains(why, plan.Err, StringComparison.Ordinal);
        Assert.Single(plan.Err.TrimEnd().Split('\n'));
        Assert.Empty(plan.Out);
    }

    [Fact]
    public async Task The_largest_value_that_needs_no_purchase_is_proved_and_its_neighbours_are_priced()
    {
        await offcuts.RunAsync("boards", "add", "3/4 x 5 1/2 x 48", "--species", "white-ash", "--surface", "surfaced");
        await offcuts.RunAsync(["designs", "add", "-"], Shelf, null);

        var answer = await offcuts.RunAsync("stretch", "bending-shelf", "length", "--budget", "8s");

        // By hand: 48 in less the shop's 1/2 in for surfaced lengths is 47 1/2; 4 more, and the largest step is 51 1/2.
        Assert.True(answer.Code == 0, answer.Err);
        Assert.Contains("51 1/2\" is the largest value that needs no wood to be bought. Proved: no larger one does.", answer.Out, StringComparison.Ordinal);
        Assert.Matches("->  +51 1/2\" +0.00 USD", answer.Out);
        Assert.Matches("52\" .*1 missing|52\" .*2 missing", answer.Out);

        using var least = JsonDocument.Parse((await offcuts.RunAsync("stretch", "bending-shelf", "length", "--nearest", "40in", "--with", "boards=2", "--json")).Out);
        Assert.True(least.RootElement.GetProperty("sure").GetBoolean());
        // Two of 47 1/2 / 2 less half a kerf of 1/8 and the allowance for each: 23 7/16 - 1/2 + 4 is at most 27 3/8.
        Assert.InRange(least.RootElement.GetProperty("best").GetProperty("lengthMm").GetDecimal() / 25.4m, 26m, 27.5m);

        var none = await offcuts.RunAsync("stretch", "bending-shelf", "boards", "--smallest", "--with", "length=60");
        Assert.Equal(3, none.Code);
        Assert.Contains("Proved: no value needs no wood to be bought.", none.Out, StringComparison.Ordinal);
        Assert.Equal(2, (await offcuts.RunAsync("stretch", "bending-shelf", "width")).Code);

        // A budget is a time, as it is for every command; money is what may be spent.
        var within = await offcuts.RunAsync("stretch", "bending-shelf", "length", "--spend", "0.50");
        Assert.Contains("51 1/2\" is the largest value that stays within 0.50 USD.", within.Out, StringComparison.Ordinal);
        var money = await offcuts.RunAsync("stretch", "bending-shelf", "length", "--budget", "40");
        Assert.Equal(2, money.Code);
        Assert.Contains("--budget: '40' is no time. Give a number with its unit", money.Err, StringComparison.Ordinal);
        var longer = await offcuts.RunAsync("stretch", "bending-shelf", "length", "--budget", "21s");
        Assert.Equal((2, "error: --budget: '21s' is too long. Give at most 20s.\n"), (longer.Code, longer.Err));
    }

    [Fact]
    public async Task The_number_of_copies_is_proved()
    {
        await offcuts.RunAsync("boards", "add", "3/4 x 5 1/2 x 48", "--species", "white-ash", "--surface", "surfaced", "--quantity", "3");
        await offcuts.RunAsync(["designs", "add", "-"], Shelf, null);

        // By hand: a board of 16 in takes 16 1/2 and a kerf, so two come of one length of 48 in, and one of its width.
        var answer = await offcuts.RunAsync("fill", "bending-shelf", "--with", "length=20in", "--choose", "lip=no");

        Assert.True(answer.Code == 0, answer.Err);
        Assert.Contains("The free boards yield 6. Proved: no more.", answer.Out, StringComparison.Ordinal);
        Assert.Equal(3, (await offcuts.RunAsync("fill", "bending-shelf", "--with", "length=60in")).Code);
    }

    [Fact]
    public async Task A_mix_of_designs_tells_its_copies_and_what_comes_back()
    {
        await offcuts.RunAsync("boards", "add", "3/4 x 5 1/2 x 48", "--species", "white-ash", "--surface", "surfaced", "--quantity", "2");
        foreach (var (name, length) in new[] { ("Long rail", 30), ("Short rail", 16) })
        {
            await offcuts.RunAsync(["designs", "add", "-"], FormattableString.Invariant($"""
                name: {name}
                unit: in
                tags: [rail]
                parts: [{"{"}name: Rail, size: 3/4 x 5 x {length}, species: white-ash{"}"}]
                """), null);
        }

        // By hand: a board takes a long and a short rail (30 1/2 + 16 1/2 + 1/8 in), or two short ones; long and short is more wood.
        var answer = await offcuts.RunAsync("fill", "long-rail", "short-rail");

        Assert.True(answer.Code == 0, answer.Err);
        Assert.Contains("The free boards yield 2 long-rail and 2 short-rail. Proved: no other mix puts wood worth more into builds.\n", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Cut: 2 of 2 free boards, ", answer.Out, StringComparison.Ordinal);
        using var tagged = JsonDocument.Parse((await offcuts.RunAsync("fill", "--tag", "rail", "--json")).Out);
        Assert.True(tagged.RootElement.GetProperty("sure").GetBoolean());
        var most = await offcuts.RunAsync("fill", "long-rail", "short-rail", "--most", "long-rail=1", "--least", "short-rail=3");
        Assert.Contains("yield 1 long-rail and 3 short-rail. Proved", most.Out, StringComparison.Ordinal);
        Assert.Contains("leftover", most.Out, StringComparison.Ordinal);
        Assert.Equal(3, (await offcuts.RunAsync("fill", "long-rail", "short-rail", "--least", "long-rail=5")).Code);
    }

    [Theory]
    [InlineData("give --tag", "fill")]
    [InlineData("give --tag", "fill", "a", "--tag", "rail")]
    [InlineData("for one design", "fill", "a", "b", "--with", "length=20")]
    [InlineData("for a mix", "fill", "a", "--least", "a=2")]
    [InlineData("none of the designs", "fill", "a", "b", "--most", "c=2")]
    [InlineData("no count", "fill", "a", "b", "--most", "a=two")]
    [InlineData("name them instead", "fill", "--tag", "rail", "--most", "a=2")]
    public async Task A_mix_that_cannot_be_asked_for_is_told_in_one_line(string why, params string[] words)
    {
        var answer = await offcuts.RunAsync(words);
        Assert.Equal(2, answer.Code);
        Assert.Contains(why, answer.Err, StringComparison.Ordinal);
        Assert.Single(answer.Err.TrimEnd().Split('\n'));
    }
}
