using CsCheck;
using Offcuts.Domain;

namespace Offcuts.Pictures.Tests;

/// <summary>Random boards cut by random guillotine cuts, down to pieces of any shape.</summary>
internal static class RandomLayout
{
    private static readonly Length Kerf = Length.FromMillimetres(3);

    /// <summary>A plan of one board.</summary>
    public static Gen<PlanDocument> Documents { get; } = Gen.Select(
        Gen.Long[40_000, 900_000], Gen.Long[3_000, 500_000], Gen.Int[0, 14], Gen.Int, Gen.Bool,
        (length, width, cuts, seed, inches) => Document(
            new Dimensions(Length.FromMillimetres(20), Length.FromTicks(width), Length.FromTicks(length)), cuts, new Random(seed),
            inches ? DisplayUnit.Inch : DisplayUnit.Millimetre));

    private static PlanDocument Document(Dimensions size, int cutCount, Random random, DisplayUnit unit)
    {
        var whole = new List<Rect> { new(Length.Zero, Length.Zero, size.Length, size.Width) };
        var cuts = new List<SawCut>();
        for (var attempt = 0; attempt < cutCount; attempt++)
        {
            var piece = whole[random.Next(whole.Count)];
            var direction = random.Next(2) == 0 ? FirstCut.Crosscut : FirstCut.Rip;
            if (Cut(piece, direction, random) is var (kerf, low, high))
            {
                whole.Remove(piece);
                whole.AddRange([low, high]);
                cuts.Add(new SawCut(cuts.Count + 1, direction, kerf));
            }
        }

        return Document(size, whole, cuts, random, unit);
    }

    private static (Rect Kerf, Rect Low, Rect High)? Cut(Rect piece, FirstCut direction, Random random)
    {
        var extent = direction == FirstCut.Crosscut ? piece.Length : piece.Width;
        var room = (extent - Kerf).Ticks;
        if (room < 2_000)
        {
            return null;
        }

        var at = Length.FromTicks(random.NextInt64(1, room));
        return direction == FirstCut.Crosscut
            ? (piece with { X = piece.X + at, Length = Kerf }, piece with { Length = at },
                piece with { X = piece.X + at + Kerf, Length = piece.Length - at - Kerf })
            : (piece with { Y = piece.Y + at, Width = Kerf }, piece with { Width = at },
                piece with { Y = piece.Y + at + Kerf, Width = piece.Width - at - Kerf });
    }

    private static PlanDocument Document(Dimensions size, List<Rect> places, List<SawCut> cuts, Random random, DisplayUnit unit)
    {
        var board = new BoardCut
        {
            Number = 1,
            BoardId = "A2B",
            Kind = BoardKind.Solid,
            Species = "white-ash",
            Surface = Surface.Rough,
            Size = size,
            FirstCut = FirstCut.Crosscut,
            Cuts = cuts,
            Pieces = [.. places.Select((at, index) => Piece(at, index + 1, random.Next(5)))],
        };
        var plan = new Plan
        {
            Status = PlanStatus.Proved,
            Boards = [board],
            WoodCost = Money.Zero,
            ItemCost = Money.Zero,
            WoodBound = Money.Zero,
            WorthConsumed = Money.Zero,
            WorthReturned = Money.Zero,
            Run = new PlanRun(1, TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, true, "1"),
        };
        var design = new Design
        {
            Name = "Random",
            Parts = [new Part { Name = "Part", Quantity = 99, Finished = size }],
            Panels = [new Panel { Name = "Panel", Finished = size }],
        };
        return new(plan, new PlanningProblem { Stock = [], Design = design, Shop = new Shop { Unit = unit } }, "1", "1", DateTimeOffset.UnixEpoch);
    }

    private static Piece Piece(Rect at, int copy, int kind) => kind switch
    {
        0 => new LeftoverPiece(at),
        1 => new WastePiece(at),
        2 => new StripPiece(at, "Panel", 1, 1, copy, at.Width),
        3 => new PartPiece(at, "Part", copy, true),
        _ => new PartPiece(at, "Part", copy, false),
    };
}
