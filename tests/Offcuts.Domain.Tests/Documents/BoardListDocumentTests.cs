using Offcuts.Documents;
using Xunit;

namespace Offcuts.Domain.Tests;

public class BoardListDocumentTests
{
    private const string List = """
        unit: in
        boards:
          - species: walnut
            size: 4/4 x 7 x 62in
            quantity: 2
            appearance: sound knots
            place: rack A
            source: desk
            logged: 2026-03-14
            note: Two from one log.
            moisture: 8.5% on 2026-03-01
            defects: [split 0..4in, knot 10..12 x 1..2]
          - {species: white pine, size: 2x4 x 8ft}
          - {species: mdf, size: 18mm x 600 x 800, logged: "2025-01-02T03:04:05+01:00"}
        """;

    [Fact]
    public void Reads_boards_as_makers_write_them()
    {
        var boards = Parse(List);
        var walnut = boards[0];
        Assert.Equal(("black-walnut", 2, Surface.Rough, Appearance.SoundKnots), (walnut.Species, walnut.Quantity, walnut.Surface, walnut.Appearance));
        Assert.Equal(SizeText.Parse("1 x 7 x 62", DisplayUnit.Inch), walnut.Size);
        Assert.Equal(("rack A", "desk", "Two from one log."), (walnut.Place, walnut.Source, walnut.Note));
        Assert.Equal(new DateTimeOffset(2026, 3, 14, 0, 0, 0, TimeSpan.Zero), walnut.LoggedAt);
        Assert.Equal(new MoistureReading(8.5m, new DateOnly(2026, 3, 1)), walnut.Moisture);
        Assert.Equal(
            [
                new Defect("split", new Rect(Length.Zero, Length.Zero, Length.FromInches(4), Length.FromInches(7))),
                new Defect("knot", new Rect(Length.FromInches(10), Length.FromInches(1), Length.FromInches(2), Length.FromInches(1))),
            ],
            walnut.Defects);

        var stud = boards[1];
        Assert.Equal((Surface.Surfaced, "1 1/2 x 3 1/2 x 96 in"), (stud.Surface, SizeText.Format(stud.Size, DisplayUnit.Inch)));
        Assert.Null(stud.LoggedAt);
        Assert.Equal((BoardKind.Sheet, 800m), (boards[2].Kind, boards[2].Size.Length.Millimetres));
        Assert.Equal(new DateTimeOffset(2025, 1, 2, 2, 4, 5, TimeSpan.Zero), boards[2].LoggedAt);
    }

    [Theory]
    [InlineData("split 0..4in", "split 0..70in", "#/boards/0/defects/0", "beyond the board")]
    [InlineData("knot 10..12 x 1..2", "knot 10..12 x 6..8", "#/boards/0/defects/1", "beyond the board")]
    [InlineData("knot 10..12 x 1..2", "knot", "#/boards/0/defects/1", "not a defect")]
    [InlineData("appearance: sound knots", "surface: surfaced", "#/boards/0/size", "13/16\"")]
    [InlineData("2026-03-14", "14.3.2026", "#/boards/0/logged", "not a date")]
    [InlineData("2026-03-14", "2026-02-30", "#/boards/0/logged", "not a date")]
    [InlineData("8.5% on", "damp on", "#/boards/0/moisture", "no moisture reading")]
    [InlineData("quantity: 2", "status: free", "#/boards/0/status", "not known")]
    [InlineData("species: walnut", "colour: brown", "#/boards/0", "'species' is missing")]
    public void Names_the_place_of_each_fault(string good, string bad, string pointer, string saying)
    {
        var problem = Assert.Throws<OffcutsException>(() => Parse(List.Replace(good, bad, StringComparison.Ordinal)));
        Assert.Contains(problem.Faults, fault =>
            fault.Pointer == pointer && fault.Line is > 2 and < 15 && fault.Detail.Contains(saying, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("1 3/4 x 5 x 30")]
    [InlineData("3/4 x 5 x 30")]
    [InlineData("2 1/4in x 5 x 30")]
    public void Only_quarters_are_taken_for_a_rough_thickness(string size) =>
        Assert.Equal(Surface.Surfaced, Parse($"boards: [{{species: ash, surface: surfaced, size: {size}}}]")[0].Surface);

    [Theory]
    [InlineData("white pine", "1x6 x 36", Surface.Surfaced, "3/4 x 5 1/2 x 36 in")]
    [InlineData("white pine", "1x6x36", Surface.Surfaced, "3/4 x 5 1/2 x 36 in")]
    [InlineData("white pine", "1 x 6 x 36", Surface.Rough, "1 x 6 x 36 in")]
    [InlineData("white ash", "1x6 x 36", Surface.Rough, "1 x 6 x 36 in")]
    [InlineData("birch ply", "1/4 x 24 x 48", Surface.Surfaced, "1/4 x 24 x 48 in")]
    public void Only_softwood_is_read_by_nominal_sizes(string species, string size, Surface surface, string read)
    {
        var board = Parse($"boards: [{{species: {species}, size: {size}}}]")[0];
        Assert.Equal((surface, read), (board.Surface, SizeText.Format(board.Size, DisplayUnit.Inch)));
    }

    [Theory]
    [InlineData("species: birch ply, kind: solid, size: 1/4 x 24 x 48", "#/boards/0/kind", "sheet material")]
    [InlineData("species: white ash, kind: sheet, size: 1/4 x 24 x 48", "#/boards/0/kind", "solid wood")]
    [InlineData("species: white ash, size: 36 x 5 1/2 x 3/4", "#/boards/0/size", "did you mean 3/4 x 5 1/2 x 36 in?")]
    public void Refuses_what_no_board_can_be(string board, string pointer, string saying)
    {
        var problem = Assert.Throws<OffcutsException>(() => Parse($"boards: [{{{board}}}]"));
        Assert.Contains(problem.Faults, fault => fault.Pointer == pointer && fault.Detail.Contains(saying, StringComparison.Ordinal));
    }

    [Fact]
    public void A_list_without_boards_is_a_fault() =>
        Assert.Contains("'boards' is missing", Assert.Throws<OffcutsException>(() => Parse("unit: in")).Message, StringComparison.Ordinal);

    [Fact]
    public void Reads_the_condition_of_boards()
    {
        var boards = Parse("""
            unit: in
            boards:
              - {species: walnut, size: 15/16 x 7 x 62, surface: skip, warp: "bow 1/4, twist 1/16", ends: "left checked", batch: log 3}
              - {species: walnut, size: 15/16 x 7 x 62, surface: skip-planed}
              - {species: walnut, size: 15/16 x 7 x 62, surface: hit or miss, ends: sound}
            """);
        Assert.All(boards, board => Assert.Equal(Surface.SkipPlaned, board.Surface));
        Assert.Equal(new Warp(Length.FromInches(0, 1, 4), default, default, Length.FromInches(0, 1, 16)), boards[0].Warp);
        Assert.Equal(("log 3", new Ends(EndState.Checked, EndState.Unknown)), (boards[0].Batch, boards[0].Ends));
        Assert.Equal((null, default, default), (boards[1].Batch, boards[1].Ends, boards[1].Warp));
        Assert.Equal(Ends.BothSound, boards[2].Ends);
    }

    [Theory]
    [InlineData("size: 4/4 x 7 x 62, surface: skip", "#/boards/0/size", "skip-planed wood")]
    [InlineData("size: 1 x 7 x 62, warp: bow", "#/boards/0/warp", "not a warp")]
    [InlineData("size: 1 x 7 x 62, warp: bow 20in", "#/boards/0/warp", "a quarter")]
    [InlineData("size: 1 x 7 x 62, ends: rotten", "#/boards/0/ends", "left checked")]
    public void Names_the_place_of_a_condition_that_cannot_be(string keys, string pointer, string saying)
    {
        var problem = Assert.Throws<OffcutsException>(() => Parse($"unit: in\nboards:\n  - {{species: walnut, {keys}}}\n"));
        Assert.Contains(problem.Faults, fault => fault.Pointer == pointer && fault.Detail.Contains(saying, StringComparison.Ordinal));
    }

    private static IReadOnlyList<NewBoard> Parse(string text) => BoardListDocument.Parse(text, DisplayUnit.Inch, SpeciesCatalogue.Default);
}
