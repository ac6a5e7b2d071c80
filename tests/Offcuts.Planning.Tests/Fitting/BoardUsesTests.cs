using Offcuts.Domain;
using Offcuts.Planning.Fitting;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests.Fitting;

public class BoardUsesTests
{
    private static readonly Shop Plain = PublishedProblems.Empty(0).Shop with { Recut = true };

    /// <summary>Pieces of one size that all lie the same way fit floor((L + k) / (l + k)) by floor((W + k) / (w + k)) times.</summary>
    [Fact]
    public void A_clear_sheet_gives_as_many_as_fit_in_rows()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var dice = new Dice(seed, metric: true);
            var (length, width, kerf) = (dice.From(100, 400), dice.From(50, 200), dice.From(0, 4));
            var (along, across) = (dice.From(20, 200), dice.From(10, 100));
            var design = new Design { Name = "one", Parts = [PublishedProblems.CreatePart("piece", along, across, 3)] };
            var expected = (length + kerf) / (along + kerf) * ((width + kerf) / (across + kerf));

            var found = BoardUses.Of(DesignReachTests.Sheet("AAA", length, width), design, Plain with { Kerf = Length.FromMillimetres(kerf) }, WorthRates.Default);

            var count = found.Count == 0 ? 0 : found[0].Count;
            Assert.True(expected == count, $"seed {seed}: {expected} of {along} x {across} from {length} x {width}, not {count}");
            Assert.All(found, use => Assert.Equal(("piece", false, 3), (use.Name, use.IsPanel, use.Wanted)));
        }
    }

    [Fact]
    public void What_may_be_turned_gives_no_fewer_and_a_defect_no_more()
    {
        for (var seed = 0; seed < 100; seed++)
        {
            var dice = new Dice(seed, metric: true);
            var board = DesignReachTests.Sheet("AAA", dice.From(150, 400), dice.From(80, 200));
            var part = PublishedProblems.CreatePart("piece", dice.From(20, 150), dice.From(10, 80), 1);
            var upright = Count(board, part);
            Assert.True(Count(board, part with { Grain = Grain.Free }) >= upright, $"seed {seed}");
            var knotty = board with { Defects = [new Defect("knot", new Rect(Length.FromMillimetres(60), Length.FromMillimetres(30), Length.FromMillimetres(10), Length.FromMillimetres(10)))] };
            Assert.InRange(Count(knotty, part), 0, upright);
            Assert.Equal(upright, Count(knotty, part with { Tolerates = ["knot"] }));
        }
    }

    [Fact]
    public void Other_species_thicknesses_and_looks_are_left_out()
    {
        var board = new Board { Id = "K7M", Species = "white-ash", Size = Size("1 x 6 x 40"), Appearance = Appearance.SoundKnots, LoggedAt = DateTimeOffset.UnixEpoch };
        var design = new Design
        {
            Name = "bench",
            Groups = [new FinishGroup("one lot", true, ["white-ash"]) { Batch = BatchChoice.One }],
            Parts =
            [
                Part("rail", "3/4 x 2 x 18"), Part("slab", "1 x 2 x 18"), Part("face", "3/4 x 2 x 18") with { Appearance = Appearance.Clear },
                Part("oak rail", "3/4 x 2 x 18") with { Species = ["white-oak"] }, Part("matched", "3/4 x 2 x 18") with { Group = "one lot" },
            ],
            Panels = [new Panel { Name = "top", Finished = Size("3/4 x 20 x 38"), Species = ["white-ash"] }, new Panel { Name = "shelf", Finished = Size("3/4 x 4 x 18"), Species = ["white-ash"] }],
        };

        var found = BoardUses.Of(board, design, new Shop(), WorthRates.Default);

        Assert.Equal(["rail", "top", "shelf"], found.Select(use => use.Name));
        // 18 1/2 in by 2 1/8 in blanks with a kerf of 1/8 in: two lengths of 40 in, and two widths of 6 in.
        Assert.Equal(4, found[0].Count);
        // The top is far wider than what one board gives, which is less than its own width.
        Assert.Equal(0, found[1].Count);
        Assert.InRange(found[1].StripWidth.Inches, 4m, 6m);
        Assert.True(found[2].Count >= 1);
        Assert.Equal(["rail", "matched", "top", "shelf"], BoardUses.Of(board with { Batch = "log 3" }, design, new Shop(), WorthRates.Default).Select(use => use.Name));
        Assert.Empty(BoardUses.Of(board with { Size = Size("1/4 x 6 x 40"), Estimates = new Estimates(Thickness: true) }, design, new Shop(), WorthRates.Default));
    }

    private static int Count(Board board, Part part) => BoardUses.Of(board, new Design { Name = "one", Parts = [part] }, Plain, WorthRates.Default) is [var use] ? use.Count : 0;

    private static Part Part(string name, string size) => new() { Name = name, Quantity = 2, Finished = Size(size), Species = ["white-ash"] };

    private static Dimensions Size(string text) => SizeText.Parse(text, DisplayUnit.Inch);
}
