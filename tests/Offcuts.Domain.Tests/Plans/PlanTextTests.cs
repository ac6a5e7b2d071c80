using Xunit;

namespace Offcuts.Domain.Tests;

public class PlanTextTests
{
    private static readonly Length Long = Length.FromInches(38, 1, 2);
    private static readonly Length Short = Length.FromInches(36);

    [Theory]
    [InlineData(MissingReason.NoSuchSpecies, "2 of Rail cannot be made: no board and no offer is of a species that it accepts.")]
    [InlineData(MissingReason.NotGoodEnough, "2 of Rail cannot be made: no wood of its species looks good enough; K7M comes closest.")]
    [InlineData(MissingReason.WrongThickness, "2 of Rail cannot be made: no wood of its species has the right thickness; it takes 38 1/2\" in thickness, and the closest, K7M, has 36\".")]
    [InlineData(MissingReason.TooWideForMachines, "2 of Rail cannot be made: its blank (38 1/2\") is wider than the jointer or planer takes (36\").")]
    [InlineData(MissingReason.TooShort, "2 of Rail cannot be made: no board and no offer is long enough; it takes 38 1/2\" in length, and the closest, K7M, has 36\".")]
    [InlineData(MissingReason.TooNarrow, "2 of Rail cannot be made: no board and no offer is wide enough; it takes 38 1/2\" in width, and the closest, K7M, has 36\".")]
    [InlineData(MissingReason.TooWarped, "2 of Rail cannot be made: every board that would do is too warped for it; it takes 38 1/2\" in thickness with what flattening takes, and the closest, K7M, has 36\".")]
    [InlineData(MissingReason.TooFew, "2 of Rail cannot be made: there is suitable wood, but too little of it; K7M comes closest.")]
    public void Says_why_a_part_is_missing(MissingReason reason, string expected) =>
        Assert.Equal(expected, PlanText.Of(new MissingPart("Rail", 2, reason, "K7M", Long, Short), DisplayUnit.Inch));

    [Fact]
    public void What_is_needed_for_flattening_never_reads_as_what_there_is()
    {
        var missing = new MissingPart("Rail", 1, MissingReason.TooWarped, "K7M", Short + Length.FromTicks(1), Short);
        Assert.Contains("it takes 36 1/64\" in thickness", PlanText.Of(missing, DisplayUnit.Inch), StringComparison.Ordinal);
    }

    [Fact]
    public void Speaks_in_the_shops_unit() =>
        Assert.Equal(
            "Rail cannot be made: no board and no offer is long enough; it takes 977.9 mm in length, and the closest, K7M, has 914.4 mm.",
            PlanText.Of(new MissingPart("Rail", 1, MissingReason.TooShort, "K7M", Long, Short), DisplayUnit.Millimetre));

    [Fact]
    public void A_board_of_which_nothing_is_left_is_not_called_short() =>
        Assert.Equal(
            "Rail cannot be made: no board and no offer is long enough; it takes 38 1/2\" in length, and of the closest, K7M, defects and trimmed ends leave nothing.",
            PlanText.Of(new MissingPart("Rail", 1, MissingReason.TooShort, "K7M", Long, Length.Zero), DisplayUnit.Inch));

    /// <summary>Two boards of 1 x 6 x 96 in are 8 board feet, one is 4 (144 cubic inches to the board foot).</summary>
    [Theory]
    [InlineData(DisplayUnit.Inch, "8.0 bd ft", "4.0 bd ft")]
    [InlineData(DisplayUnit.Millimetre, "0.0189 m³", "0.0094 m³")]
    public void Where_no_batch_is_enough_it_names_them_and_advises_no_other_wood(DisplayUnit unit, string left, string right)
    {
        Board Of(string id, string? batch, int quantity) => new()
        {
            Id = id,
            Batch = batch,
            Quantity = quantity,
            Species = "white-ash",
            Size = Size("1 x 6 x 96"),
            LoggedAt = DateTimeOffset.UnixEpoch,
        };
        var problem = new PlanningProblem
        {
            Shop = new Shop { Unit = unit },
            Stock = [Of("A", "right", 1), Of("B", "left", 2), Of("C", null, 9)],
            Design = new Design
            {
                Name = "Table",
                Parts = [new Part { Name = "Leg", Finished = Size("3/4 x 2 x 28"), Species = ["white-ash"], Group = "legs" }],
                Groups = [new FinishGroup("legs", false, []) { Batch = BatchChoice.One }],
            },
        };
        Assert.Equal(
            "3 of Leg cannot be made: there is suitable wood, but too little of it: the finish group legs is to be of one batch, and no batch was found to give enough "
            + $"(batch left: 2 boards, {left}; batch right: 1 board, {right}). More of the same batch helps; wood of another only if there is enough of it for the whole group.",
            PlanText.Of(new MissingPart("Leg", 3, MissingReason.TooFew), problem));
    }

    // Blank: finished 2 x 28 1/2 in and the shop's 1/4 in of width and 1/2 in of length; 1 3/4 in takes 8/4 with 3/16 in of milling.
    [Theory]
    [InlineData(MissingReason.TooFew, "Leg", 3, "3 of Leg cannot be made: there is suitable wood, but too little of it: it takes about 3 more blanks of 2 1/4 x 29 in from 8/4 black cherry.")]
    [InlineData(MissingReason.TooFew, "Back", 1, "Back cannot be made: there is suitable wood, but too little of it: it takes about 1 more blank of 20 x 30 in from 1/2\" birch plywood.")]
    [InlineData(MissingReason.TooFew, "Top", 1, "Top cannot be made: there is suitable wood, but too little of it: it takes strips for about 1 more panel, 40 1/2\" long and together 15 1/4\" wide when jointed, from 4/4 black cherry.")]
    [InlineData(MissingReason.TooWideForMachines, "Leg", 1, "Leg cannot be made: its blank is wider than the jointer or planer takes; if it may be glued up from strips, make it a panel in the design.")]
    [InlineData(MissingReason.TooNarrow, "Back", 1, "Back cannot be made: no board and no offer is wide enough.")]
    public void Says_what_can_be_done_about_it(MissingReason reason, string name, int count, string expected)
    {
        var problem = new PlanningProblem
        {
            Shop = new Shop(),
            Stock = [new Board { Id = "P2R", Kind = BoardKind.Sheet, Species = "birch-plywood", Size = Size("1/2 x 10 x 10"), LoggedAt = default }],
            Design = new Design
            {
                Name = "Table",
                Parts =
                [
                    new Part { Name = "Leg", Finished = Size("1 3/4 x 2 x 28 1/2"), Species = ["black-cherry"] },
                    new Part { Name = "Back", Finished = Size("1/2 x 20 x 30"), Species = ["birch-plywood"] },
                ],
                Panels = [new Panel { Name = "Top", Finished = Size("3/4 x 15 x 40"), Species = ["black-cherry"] }],
            },
        };
        Assert.Equal(expected, PlanText.Of(new MissingPart(name, count, reason), problem));
    }

    [Theory]
    [InlineData(ShortBlanks.Refuse, "3/4 x 2 x 4", true)]
    [InlineData(ShortBlanks.Warn, "3/4 x 2 x 4", false)]
    [InlineData(ShortBlanks.Refuse, "3/4 x 2 x 11 1/2", false)]
    public void Says_so_where_a_machine_asks_for_more_length_than_the_part(ShortBlanks policy, string size, bool said)
    {
        var problem = new PlanningProblem
        {
            Stock = [],
            Shop = new Shop { ShortBlanks = policy, ShortestAtPlaner = Length.FromInches(12), ShortestAtJointer = Length.FromInches(12) },
            Design = new Design { Name = "Peg", Parts = [new Part { Name = "Peg", Finished = Size(size), Species = ["black-cherry"] }] },
        };
        var text = PlanText.Of(new MissingPart("Peg", 1, MissingReason.TooShort) { Needed = Length.FromInches(12) }, problem);
        Assert.Equal(said, text.Contains("refuses blanks that are too short", StringComparison.Ordinal));
    }

    [Fact]
    public void Says_every_reason_without_sizes_too() =>
        Assert.All(Enum.GetValues<MissingReason>(), reason =>
            Assert.Matches("^Rail cannot be made: [^()]+[a-z]\\.$", PlanText.Of(new MissingPart("Rail", 1, reason), DisplayUnit.Inch)));

    [Theory]
    [InlineData(WarningKind.ShortForPlaner, "shorter than the 12\" that the shop takes as safe at the planer", "machine's manual")]
    [InlineData(WarningKind.ShortForJointer, "shorter than the 12\" that the shop takes as safe at the jointer", "machine's manual")]
    [InlineData(WarningKind.Defects, "recorded defects", "before you cut")]
    [InlineData(WarningKind.WidePanel, "solid panel 9\" wide", "with the seasons")]
    public void Warns_with_the_caution(WarningKind kind, string what, string caution)
    {
        var text = PlanText.Of(new PlanWarning(kind, "Rail", Length.FromInches(9), Length.FromInches(12)), DisplayUnit.Inch);
        Assert.Contains(what, text, StringComparison.Ordinal);
        Assert.Contains(caution, text, StringComparison.Ordinal);
        Assert.Contains("Rail", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Tells_blanks_too_short_alike_in_one_line_before_all_else()
    {
        PlanWarning[] warnings =
        [
            new(WarningKind.ShortForJointer, "Rail", Length.FromInches(9), Length.FromInches(12)),
            new(WarningKind.Defects, "K7M"),
            new(WarningKind.ShortForPlaner, "Rail", Length.FromInches(9), Length.FromInches(12)),
            new(WarningKind.ShortForPlaner, "Leg", Length.FromInches(9), Length.FromInches(12)),
            new(WarningKind.ShortForPlaner, "Foot", Length.FromInches(3), Length.FromInches(12)),
            new(WarningKind.ShortForPlaner, "Cleat", Length.FromInches(9), Length.FromInches(14)),
            new(WarningKind.ShortForPlaner, "Peg", Length.FromInches(2), Length.FromInches(12)),
        ];

        var lines = PlanText.Of(warnings, DisplayUnit.Inch);

        Assert.Equal(4, lines.Count);
        Assert.StartsWith("The blank of Rail (9\" long) is shorter than the 12\" that the shop takes as safe at the jointer and the planer: mill it ", lines[0], StringComparison.Ordinal);
        Assert.StartsWith(
            "The blanks of Leg (9\" long), Foot (3\" long) and Peg (2\" long) are shorter than the 12\" that the shop takes as safe at the planer: mill each ",
            lines[1], StringComparison.Ordinal);
        Assert.StartsWith("The blank of Cleat (9\" long) is shorter than the 14\"", lines[2], StringComparison.Ordinal);
        Assert.StartsWith("Board K7M has recorded defects", lines[3], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(WarningKind.Defects, "Board A has recorded defects", "Boards A, B and C have recorded defects")]
    [InlineData(WarningKind.Resawn, "Blanks of A are resawn", "Blanks of A, B and C are resawn")]
    [InlineData(WarningKind.Laminated, "A is face-glued", "A, B and C are face-glued")]
    public void Says_once_what_holds_for_several(WarningKind kind, string one, string all)
    {
        PlanWarning[] warnings = [new(kind, "A"), new(WarningKind.WidePanel, "Top"), new(kind, "B"), new(kind, "C"), new(kind, "B")];

        var lines = PlanText.Of(warnings, DisplayUnit.Inch);

        Assert.Equal(2, lines.Count);
        Assert.StartsWith(all, lines[0], StringComparison.Ordinal);
        Assert.StartsWith("Top is a solid panel", lines[1], StringComparison.Ordinal);
        Assert.StartsWith(one, PlanText.Of(warnings[0], DisplayUnit.Inch), StringComparison.Ordinal);
    }

    [Fact]
    public void Warns_without_sizes_too() =>
        Assert.Equal(
            "The blank of Rail is shorter than what the shop takes as safe at the planer: "
            + "mill it in one piece with another part or by hand, and go by the machine's manual.",
            PlanText.Of(new PlanWarning(WarningKind.ShortForPlaner, "Rail"), DisplayUnit.Inch));

    private static Dimensions Size(string text) => SizeText.Parse(text, DisplayUnit.Inch);
}
