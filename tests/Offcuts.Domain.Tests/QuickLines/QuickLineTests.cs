using Xunit;

namespace Offcuts.Domain.Tests;

// Lines of every style, with what each should be understood as, in words, or where it should not be and why. Written for this test; each was
// checked by eye against what a maker would mean by it.
public class QuickLineTests
{
    public static TheoryData<string, string> Understood => Read("understood.txt");

    public static TheoryData<string, string> NotUnderstood => Read("not-understood.txt");

    [Theory]
    [MemberData(nameof(Understood))]
    public void A_line_is_understood_as_its_maker_meant_it(string line, string said)
    {
        var reading = Lines.Read(line);
        Assert.Empty(reading.Faults);
        Assert.Equal(said, reading.Understood);
    }

    [Theory]
    [MemberData(nameof(NotUnderstood))]
    public void What_is_not_understood_is_pointed_at_and_nothing_is_a_board(string line, string said)
    {
        var reading = Lines.Read(line);
        Assert.Null(reading.Board);
        Assert.Null(reading.Understood);
        Assert.Equal(said, string.Join(" | ", reading.Faults.Select(fault => FormattableString.Invariant($"{fault.Column} {fault.Detail}"))));
    }

    [Fact]
    public void There_are_hundreds_of_them() => Assert.True(Understood.Count + NotUnderstood.Count > 250);

    [Fact]
    public void Species_place_and_batch_carry_on_until_they_are_changed()
    {
        var readings = Lines.Log(
            "4/4 x 7 x 62 walnut, rack 2, log 3", "5/4 x 3 x 20", "", "# the rest is ash", "3/4 x 5 x 30 ash", "4/4 x 5 rouhg x 31 cherry, rack 7",
            "4/4 x 5 x 31, shelf 1", "no batch", "4/4 x 5 x 32", "no place, 4/4 x 5 x 33");
        Assert.Equal(
            [
                "black-walnut rack 2 log 3", "black-walnut rack 2 log 3", "", "", "white-ash rack 2 log 3", "", "white-ash shelf 1 log 3", "",
                "white-ash shelf 1 ", "white-ash  ",
            ],
            readings.Select(reading => reading.Board is { } board ? $"{board.Species} {board.Place} {board.Batch}" : ""));
    }

    [Fact]
    public void A_line_of_nothing_else_sets_what_carries_on()
    {
        var readings = Lines.Log("walnut, rack 2, batch desk tree", "4/4 x 7 x 62");
        Assert.Equal("from here on: black walnut, batch desk tree, place rack 2", readings[0].Understood);
        Assert.Null(readings[0].Board);
        Assert.Equal(("black-walnut", "rack 2", "desk tree"), (readings[1].Board!.Species, readings[1].Board!.Place, readings[1].Board!.Batch));
    }

    [Fact]
    public void The_beginning_of_a_name_means_what_the_shop_owns_and_what_a_line_has_named()
    {
        Assert.Equal("white-oak", Lines.Read("4/4 x 5 x 50 oak", owned: ["white-oak"]).Board!.Species);
        Assert.Equal("red-oak", Lines.Read("4/4 x 5 x 50 oak", owned: ["red-oak", "oak-plywood"]).Board!.Species);
        Assert.Equal("'oak' may be red oak or white oak: say which.", Lines.Read("4/4 x 5 x 50 oak", owned: ["red-oak", "white-oak"]).Faults.Single().Detail);
        Assert.Equal("red-oak", Lines.Log(["4/4 x 5 x 50 red oak", "4/4 x 5 x 51 oak"], owned: [])[1].Board!.Species);
    }

    [Fact]
    public void A_species_of_the_shops_own_is_known()
    {
        var catalogue = SpeciesCatalogue.Default.With([new Species { Id = "osage-orange", Name = "osage orange", Aliases = ["hedge"], Classes = ["hardwood"] }]);
        var reader = new QuickLineReader(new QuickWords(catalogue, [], []), DisplayUnit.Inch);
        Assert.Equal("osage-orange", reader.Read("2 x 2 x 30 osage", new()).Board!.Species);
        Assert.Equal("osage-orange", reader.Read("2 x 2 x 30 hedge", new()).Board!.Species);
    }

    [Fact]
    public void An_estimate_is_kept_as_one()
    {
        Assert.Equal(new Estimates(Length: true), Lines.Read("3/4 x 5 x ~30 ash").Board!.Estimates);
        Assert.Equal(new Estimates(Thickness: true, Width: true), Lines.Read("about 3/4 x 5ish x 30 ash").Board!.Estimates);
        Assert.Equal(new Estimates(true, true, true), Lines.Read("3/4 x 5 x 30 ash, by eye").Board!.Estimates);
        Assert.Equal(default, Lines.Read("3/4 x 5 x 30 ash").Board!.Estimates);
    }

    [Fact]
    public void In_a_metric_shop_bare_numbers_are_millimetres_and_quarters_are_still_inches()
    {
        var reader = new QuickLineReader(Lines.Words(), DisplayUnit.Millimetre);
        Assert.Equal("white ash, rough, 19 x 140 x 900 mm", reader.Read("19 x 140 x 900 ash", new()).Understood);
        Assert.Equal("white ash, rough, 25.4 x 140 x 900 mm, split 0 mm to 50 mm along, 0 mm to 140 mm across", reader.Read("4/4 x 140 x 900 ash, split 50 end", new()).Understood);
    }

    [Fact]
    public void A_line_has_its_longest_length()
    {
        var line = "3/4 x 5 x 30 ash, note ".PadRight(QuickLineReader.LongestLine, 'n');
        Assert.NotNull(Lines.Read(line).Board);
        Assert.Equal(QuickLineReader.LongestLine + 1, Lines.Read(line + "n").Faults.Single().Column);
    }

    private static TheoryData<string, string> Read(string file)
    {
        var data = new TheoryData<string, string>();
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "QuickLines", file)))
        {
            var parts = line.Split(" => ");
            data.Add(parts[0], parts[1]);
        }

        return data;
    }
}
