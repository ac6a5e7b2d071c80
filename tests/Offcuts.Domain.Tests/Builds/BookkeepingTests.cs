using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

public class BookkeepingTests
{
    private const long Kerf = 1016;
    private const long Width = 40_000;
    private const long Sixteenth = 8128 / 16;
    private static readonly Length Thickness = Length.FromTicks(8128);

    // A board crosscut into pieces of every kind, with a kerf between each two.
    private static readonly Gen<BoardCut> Cuts = Gen.Select(Gen.Long[1, 300_000], Gen.Int[0, 3]).List[1, 8].Select(pieces =>
    {
        var cut = new List<Piece>();
        var x = 0L;
        foreach (var (length, kind) in pieces)
        {
            var at = new Rect(Length.FromTicks(x), Length.Zero, Length.FromTicks(length), Length.FromTicks(Width));
            cut.Add(kind switch
            {
                0 => new PartPiece(at, "part", cut.Count + 1, turned: false),
                1 => new StripPiece(at, "panel", 1, 1, cut.Count + 1, at.Width),
                2 => new LeftoverPiece(at),
                _ => new WastePiece(at),
            });
            x += length + Kerf;
        }

        return new BoardCut
        {
            Number = 3,
            BoardId = "K7M",
            Kind = BoardKind.Solid,
            Species = "white-ash",
            Surface = Surface.Rough,
            Size = new(Thickness, Length.FromTicks(Width), Length.FromTicks(x - Kerf)),
            FirstCut = FirstCut.Crosscut,
            Pieces = cut,
            Cuts = [],
        };
    });

    // Anything at all that a maker may say of it.
    private static readonly Gen<(BoardCut Cut, BoardReport Report)> Reports = Gen.Select(
        Cuts, Gen.Select(Gen.Bool, Gen.Long[1, 300_000]).List[0, 3], Gen.Long[1, 100_000].List[0, 2], Gen.Long[1, 100_000].List[0, 2], Gen.Int[1, 8].List[0, 2]).Select(
        (cut, leftovers, added, waste, spoiled) => (cut, new BoardReport
        {
            Number = cut.Number,
            Leftovers = [.. leftovers.Index().Select(left => new LeftoverReport(left.Index + 1, left.Item.Item1, Size(left.Item.Item2)))],
            Added = [.. added.Select(length => new AddedPiece(Size(length), default))],
            Waste = [.. waste.Select(length => Size(length).Face)],
            Spoiled = spoiled,
        }));

    [Fact]
    public void What_goes_as_planned_adds_up_exactly() => Cuts.Sample(cut =>
    {
        var outcome = Bookkeeping.AsPlanned(cut);
        var balance = outcome.Balance;
        Assert.Equal(default, balance.Difference);
        Assert.Equal(Kerf * Width * (cut.Pieces.Count - 1), balance.Kerf.SquareTicks);
        Assert.Equal(Sum<LeftoverPiece>(cut), balance.Leftovers.SquareTicks);
        Assert.Equal(Sum<WastePiece>(cut), balance.Waste.SquareTicks);
        Assert.Equal(Sum<PartPiece>(cut) + Sum<StripPiece>(cut), balance.Parts.SquareTicks);
        Assert.Equal(cut.Pieces.OfType<LeftoverPiece>().Select(piece => piece.At.Length), outcome.Kept.Select(piece => piece.Size.Length));
    });

    [Fact]
    public void Without_a_reason_only_what_adds_up_is_taken() => Reports.Sample(case_ =>
    {
        var (outcome, faults) = Bookkeeping.Close(case_.Cut, case_.Report);
        var balance = outcome.Balance;
        Assert.Equal(outcome.Kept.Sum(piece => piece.Size.Face.SquareTicks), balance.Leftovers.SquareTicks);
        if (faults.Count == 0)
        {
            Assert.Equal(
                case_.Cut.Size.Face.SquareTicks,
                balance.Parts.SquareTicks + balance.Leftovers.SquareTicks + balance.Kerf.SquareTicks + balance.Waste.SquareTicks);
        }
    }, iter: 2000);

    [Fact]
    public void A_reason_explains_lost_wood_and_the_difference_is_kept() => Reports.Sample(case_ =>
    {
        // Every planned leftover came out shorter, by anything up to all but a tick of it.
        var planned = case_.Cut.Pieces.OfType<LeftoverPiece>().Select(piece => piece.At.Length.Ticks).ToList();
        var report = case_.Report with
        {
            Reason = "by eye",
            Leftovers = [.. case_.Report.Leftovers.Take(planned.Count).Select(said => said with { Size = Size(1 + (said.Size!.Value.Length.Ticks % planned[said.Leftover - 1])) })],
            Added = [],
            Spoiled = [],
        };
        var (outcome, faults) = Bookkeeping.Close(case_.Cut, report);
        Assert.Empty(faults);
        var balance = outcome.Balance;
        Assert.Equal(balance.Board, balance.Parts + balance.Leftovers + balance.Kerf + balance.Waste + balance.Difference);
    });

    [Fact]
    public void No_reason_makes_wood_grow() => Reports.Sample(case_ =>
    {
        var planned = case_.Cut.Pieces.OfType<LeftoverPiece>().Count();
        var report = case_.Report with { Reason = "it is so", Leftovers = [.. case_.Report.Leftovers.Take(planned)], Spoiled = [] };
        var (outcome, faults) = Bookkeeping.Close(case_.Cut, report);
        // Sums of lengths will do, as all pieces are as wide as the board: an oracle that knows no areas. Each piece may be read 1/16 in too long and too wide.
        var parts = case_.Cut.Pieces.Where(piece => piece is PartPiece or StripPiece).Sum(piece => piece.At.Length.Ticks);
        var there = parts + outcome.Kept.Sum(piece => piece.Size.Length.Ticks);
        var read = outcome.Kept.Sum(piece => Sixteenth + (Sixteenth * piece.Size.Length.Ticks / (decimal)Width));
        var isTooLong = outcome.Kept.Any(piece => piece.Size.Length.Ticks > case_.Cut.Size.Length.Ticks + Sixteenth);
        Assert.Equal(isTooLong || there > case_.Cut.Size.Length.Ticks + read, faults.Any(fault => fault.Detail.Contains("whatever the reason", StringComparison.Ordinal)));
    }, iter: 2000);

    [Theory]
    [InlineData(0, 0, 0, true)]
    [InlineData(Sixteenth, 0, 0, true)]
    [InlineData(Sixteenth + 1, 0, 0, false)]
    [InlineData(0, Sixteenth, 0, true)]
    [InlineData(0, Sixteenth + 1, 0, false)]
    [InlineData(0, 0, Sixteenth, true)]
    [InlineData(0, 0, Sixteenth + 1, false)]
    public void A_piece_may_be_read_a_sixteenth_larger_than_its_board_and_no_more(long thicker, long wider, long longer, bool passes)
    {
        // A board that is all leftover, so that nothing but the size of the piece can be wrong.
        var size = new Dimensions(Thickness, Length.FromTicks(Width), Length.FromTicks(300_000));
        var cut = new BoardCut
        {
            Number = 1,
            BoardId = "K7M",
            Kind = BoardKind.Solid,
            Species = "white-ash",
            Surface = Surface.Rough,
            Size = size,
            FirstCut = FirstCut.Crosscut,
            Pieces = [new LeftoverPiece(new Rect(Length.Zero, Length.Zero, size.Length, size.Width))],
            Cuts = [],
        };
        var told = new Dimensions(Length.FromTicks(size.Thickness.Ticks + thicker), Length.FromTicks(Width + wider), Length.FromTicks(300_000 + longer));
        var report = new BoardReport { Number = 1, Leftovers = [new LeftoverReport(1, IsKept: true, told)], Reason = "measured again" };
        Assert.Equal(passes, Bookkeeping.Close(cut, report).Faults.Count == 0);
        // Said to have been as large, the board gives it.
        Assert.Empty(Bookkeeping.Close(cut, report with { Size = told, Reason = null }).Faults);
    }

    [Fact]
    public void What_was_thrown_away_or_spoiled_is_waste() => Cuts.Where(cut => cut.Pieces.OfType<LeftoverPiece>().Any() && cut.Pieces.OfType<PartPiece>().Any()).Sample(cut =>
    {
        var part = cut.Pieces.Index().First(piece => piece.Item is PartPiece);
        var report = new BoardReport { Number = 3, Leftovers = [new LeftoverReport(1, IsKept: false)], Spoiled = [part.Index + 1] };
        var (planned, (outcome, faults)) = (Bookkeeping.AsPlanned(cut).Balance, Bookkeeping.Close(cut, report));
        Assert.Empty(faults);
        var moved = part.Item.At.Area + cut.Pieces.OfType<LeftoverPiece>().First().At.Area;
        Assert.Equal(planned.Waste + moved, outcome.Balance.Waste);
        Assert.Equal(default, outcome.Balance.Difference);
    });

    [Fact]
    public void The_shares_of_pieces_never_cost_more_than_their_board() => Gen.Select(Cuts, Gen.Long[0, 1_000_000]).Sample((cut, cents) =>
    {
        var price = new BoardPrice(new Money(cents), "USD");
        var shares = Bookkeeping.AsPlanned(cut).Kept.Select(piece => price.Share(piece.Size, cut.Size)).ToList();
        Assert.All(shares, share => Assert.InRange(share.Amount.MinorUnits, 0, cents));
        Assert.True(shares.Sum(share => share.Amount.MinorUnits) <= cents);
        Assert.Equal(price, price.Share(cut.Size, cut.Size));
    });

    [Theory]
    // A circle's arc rises as the square of its chord, as long as it is shallow (sagitta = c^2 / 8r): from memory.
    [InlineData(80, 50, 100)]
    [InlineData(40, 25, 100)]
    [InlineData(20, 7, 50)]
    public void A_piece_keeps_the_square_of_its_share_of_the_bow(int length, int bow, int percent)
    {
        var warp = new Warp(Length.FromTicks(bow), Length.Zero, Length.FromTicks(bow), Length.Zero);
        var kept = warp.Kept(new(Thickness, Length.FromTicks(100 * percent / 100), Length.FromTicks(length)), new(Thickness, Length.FromTicks(100), Length.FromTicks(80)));
        Assert.Equal((long)Math.Ceiling(bow * (length / 80.0) * (length / 80.0)), kept.Bow.Ticks);
        Assert.Equal((long)Math.Ceiling(bow * percent * percent / 10_000.0), kept.Cup.Ticks);
    }

    private static Dimensions Size(long length) => new(Thickness, Length.FromTicks(Width), Length.FromTicks(length));

    private static long Sum<T>(BoardCut cut)
        where T : Piece => cut.Pieces.OfType<T>().Sum(piece => piece.At.Area.SquareTicks);
}
