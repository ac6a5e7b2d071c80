using Xunit;

namespace Offcuts.Domain.Tests;

public class SeasonalMovementTests
{
    private static readonly Climate Room = new(30, 65, (70m - 32) * 5 / 9);
    private static readonly DateOnly Today = new(2026, 6, 1);

    /// <summary>36 in of flatsawn black cherry at 70 degrees Fahrenheit, from 30 to 65 % humidity (6.17 to 11.96 %): 0.517 in, by Eq. 4-5 and 13-2 of the Wood Handbook.</summary>
    [Fact]
    public void A_panel_moves_between_the_seasons_of_the_room()
    {
        var movement = Assert.Single(Movements(Problem(Panel(36))));
        Assert.Equal(("Top", "black-cherry", false), (movement.Name, movement.Species, movement.IsMeasured));
        Assert.Equal((6.17m, 11.96m), (decimal.Round(movement.Dry, 2), decimal.Round(movement.Damp, 2)));
        Near(0.517m, movement.Change!.Total.Inches, 0.001m);
        // Built midway it shrinks as much as it grows.
        Near(movement.Change.Shrinks.Inches, movement.Change.Grows.Inches, 0.001m);
    }

    [Fact]
    public void Built_of_measured_boards_it_moves_from_what_they_hold()
    {
        var movement = Assert.Single(Movements(Problem(Panel(36), new MoistureReading(8, new DateOnly(2026, 5, 1)), new MoistureReading(7, Today))));
        Assert.Equal((7.5m, true), (movement.Built, movement.IsMeasured));
        // 36 in x 0.00248 x (7.5 - 6.17) and x (11.96 - 7.5), by hand.
        Near(0.119m, movement.Change!.Shrinks.Inches, 0.001m);
        Near(0.398m, movement.Change.Grows.Inches, 0.001m);
    }

    [Fact]
    public void A_reading_that_is_too_old_or_not_there_is_none()
    {
        var stale = new MoistureReading(8, Today.AddDays(-181));
        Assert.False(Assert.Single(Movements(Problem(Panel(36), stale, new MoistureReading(7, Today)))).IsMeasured);
        Assert.False(Assert.Single(Movements(Problem(Panel(36), null, new MoistureReading(7, Today)))).IsMeasured);
        Assert.True(Assert.Single(Movements(Problem(Panel(36), stale with { On = Today.AddDays(-180) }, new MoistureReading(7, Today)))).IsMeasured);
    }

    [Fact]
    public void Wide_parts_count_and_narrow_ones_and_sheets_do_not()
    {
        var board = Cut(1, new PartPiece(At(20, 6), "Shelf", 1, false), new PartPiece(At(20, 3), "Rail", 1, false), new PartPiece(At(4, 30), "Slip", 1, true));
        var sheet = Cut(2, new PartPiece(At(20, 12), "Back", 1, false)) with { Kind = BoardKind.Sheet, Species = "birch-plywood" };
        var design = new Design { Name = "Shelf", Parts = [Part("Shelf", 6, 20), Part("Rail", 3, 20), Part("Slip", 4, 30), Part("Back", 12, 20)] };
        var problem = Problem(Panel(36)) with { Design = design };
        var found = SeasonalMovement.Of(Plan(board, sheet), problem, SpeciesCatalogue.Default);
        // The slip lies across the board: its length is what moves.
        Assert.Equal([("Shelf", 6m), ("Slip", 30m)], found.Select(movement => (movement.Name, movement.Width.Inches)));
    }

    [Fact]
    public void In_words_it_says_what_to_leave_room_for()
    {
        var movement = Assert.Single(Movements(Problem(Panel(36))));
        Assert.Equal(
            "Top, 36\" of black cherry: moves about 17/32\" over the year, from 6.2 % moisture at 30 % humidity to 12 % at 65 %. Taken as flatsawn and if built at 9.1 %, "
            + "midway (no recent reading of all its boards), it shrinks 17/64\" and grows 17/64\". Held at its middle, each edge needs 17/64\" of play: 9/64\" outwards and 9/64\" inwards; "
            + "held at one edge, the other needs all 17/32\".",
            MovementText.Of(movement, Room, "black cherry", DisplayUnit.Inch));
        Assert.Contains("nothing is on record", MovementText.Of(movement with { Change = null }, Room, "plum", DisplayUnit.Inch), StringComparison.Ordinal);
    }

    private static IReadOnlyList<PanelMovement> Movements(PlanningProblem problem) => SeasonalMovement.Of(
        Plan(Cut(1, new StripPiece(At(40, 18), "Top", 1, 1, 1, Length.FromInches(18))), Cut(2, new StripPiece(At(40, 18), "Top", 1, 1, 2, Length.FromInches(18)))),
        problem, SpeciesCatalogue.Default);

    private static PlanningProblem Problem(Panel panel, params MoistureReading?[] readings) => new()
    {
        Shop = new Shop { Climate = Room },
        Design = new Design { Name = "Table", Panels = [panel] },
        Stock = [.. Enumerable.Range(1, 2).Select(number => new Board
        {
            Id = $"B{number}",
            Species = "black-cherry",
            Size = new(Length.FromInches(1), Length.FromInches(20), Length.FromInches(60)),
            Moisture = readings.ElementAtOrDefault(number - 1),
            LoggedAt = DateTimeOffset.UnixEpoch,
        })],
        Today = Today,
    };

    private static Panel Panel(int width) => new() { Name = "Top", Finished = new(Length.FromInches(0, 3, 4), Length.FromInches(width), Length.FromInches(40)) };

    private static Part Part(string name, int width, int length) =>
        new() { Name = name, Finished = new(Length.FromInches(0, 3, 4), Length.FromInches(width), Length.FromInches(length)) };

    private static Rect At(int length, int width) => new(Length.Zero, Length.Zero, Length.FromInches(length), Length.FromInches(width));

    private static BoardCut Cut(int number, params Piece[] pieces) => new()
    {
        Number = number,
        BoardId = $"B{number}",
        Kind = BoardKind.Solid,
        Species = "black-cherry",
        Surface = Surface.Rough,
        Size = new(Length.FromInches(1), Length.FromInches(20), Length.FromInches(60)),
        FirstCut = FirstCut.Crosscut,
        Pieces = pieces,
        Cuts = [],
    };

    private static Plan Plan(params BoardCut[] boards) => new()
    {
        Status = PlanStatus.Proved,
        Boards = boards,
        WoodCost = Money.Zero,
        ItemCost = Money.Zero,
        WoodBound = Money.Zero,
        WorthConsumed = Money.Zero,
        WorthReturned = Money.Zero,
        Run = new PlanRun(1, default, default, default, true, "1"),
    };

    private static void Near(decimal expected, decimal actual, decimal within) => Assert.InRange(actual, expected - within, expected + within);
}
