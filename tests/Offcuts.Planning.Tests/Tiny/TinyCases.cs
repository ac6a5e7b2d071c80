using System.Globalization;
using Offcuts.Domain;
using Offcuts.Testing;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>Random tiny cases, and how they are put to the planner: a millimetre for each unit.</summary>
internal static class TinyCases
{
    private const int Thickness = 18;
    private static readonly string[] Both = ["plate", "oak"];

    /// <summary>Up to 4 (with a third cut) or 5 blanks, up to 3 boards, 2 offers; in every fourth case what is offered may not suffice.</summary>
    /// <param name="seed">The same seed gives the same case.</param>
    /// <param name="recut">Whether a band may be cut once more.</param>
    public static TinyCase Create(int seed, bool recut)
    {
        var dice = new Dice(seed, metric: true);
        var scarce = dice.Chance(4);
        var species = dice.Chance(2) ? Both : Both[..1];
        var pieces = Enumerable.Range(0, dice.From(1, 3))
            .SelectMany(_ => Enumerable.Repeat(CreatePiece(dice, species), dice.From(1, 2))).Take(recut ? 4 : 5).ToList();
        var boards = Enumerable.Range(0, dice.From(0, 3))
            .Select(_ => new TinyBoard(dice.Pick(species), [(dice.From(12, 50), dice.From(6, 26), 0)], 1)).ToList();
        boards.Add(new TinyBoard("plate", [(60, 30, dice.From(50, 120))], scarce ? dice.From(0, 1) : int.MaxValue));

        // A second offer in two lengths, priced by the metre; each piece's price is rounded up.
        var (width, metre) = (dice.From(8, 20), dice.From(600, 1500));
        boards.Add(new TinyBoard(
            dice.Pick(species), [(30, width, ((metre * 30) + 999) / 1000), (45, width, ((metre * 45) + 999) / 1000)], scarce ? dice.From(0, 1) : dice.From(1, 5)));
        return new TinyCase(dice.From(0, 3), recut, boards, pieces, Both) { MetrePrice = metre, Sheets = dice.Chance(2), Allowance = dice.From(0, 2) };
    }

    /// <summary>The same with one or two defects on every owned board, and pieces of which some may hold knots.</summary>
    public static TinyCase WithDefects(TinyCase tiny, int seed)
    {
        var dice = new Dice(seed, metric: true);
        return tiny with
        {
            Boards = [.. tiny.Boards.Select(board => board.Sizes[0].Price > 0 ? board : board with
            {
                Defects = [.. Enumerable.Range(0, dice.From(1, 2)).Select(_ => CreateDefect(dice, board.Sizes[0].Length, board.Sizes[0].Width))],
            })],
            Pieces = [.. tiny.Pieces.GroupBy(piece => piece).SelectMany(alike =>
            {
                var tolerant = dice.Chance(3);
                return alike.Select(piece => piece with { IsTolerant = tolerant });
            })],
        };
    }

    private static TinyDefect CreateDefect(Dice dice, int boardLength, int boardWidth)
    {
        var (length, width) = (dice.From(1, boardLength / 3), dice.Chance(3) ? boardWidth : dice.From(1, boardWidth / 2));
        return new TinyDefect(dice.From(0, boardLength - length), dice.From(0, boardWidth - width), length, width, IsKnot: dice.Chance(2));
    }

    public static PlanningProblem ToProblem(TinyCase tiny)
    {
        var allowances = new Allowances(Millimetres(tiny.Allowance), Millimetres(tiny.Allowance), Length.Zero);
        return new PlanningProblem
        {
            Shop = new Shop { Unit = DisplayUnit.Millimetre, Kerf = Millimetres(tiny.Kerf), Recut = tiny.Recut, Sheet = allowances, Surfaced = allowances },
            Design = new Design
            {
                Name = "tiny",
                Groups = [new FinishGroup("group", true, tiny.GroupSpecies)],
                Parts = [.. tiny.Pieces.GroupBy(piece => piece).Index().Select(entry => ToPart(tiny, entry.Item.Key, entry.Item.Count(), entry.Index))],
            },
            Stock = [.. tiny.Boards.Where(board => board.Sizes[0].Price == 0).Index().Select(entry => new Board
            {
                Id = BoardIds.FromNumber(entry.Index + 1), Kind = Kind(tiny), Species = entry.Item.Species, Surface = Surface.Surfaced,
                Size = Size(entry.Item.Sizes[0].Length, entry.Item.Sizes[0].Width), LoggedAt = DateTimeOffset.UnixEpoch,
                Defects = [.. entry.Item.Defects.Select(ToDefect)],
            })],
            Offers = [.. tiny.Boards.Where(board => board.Sizes[0].Price > 0).Index().Select(entry => ToOffer(tiny, entry.Item, entry.Index))],
        };
    }

    private static TinyPiece CreatePiece(Dice dice, string[] species) => new(
        dice.From(6, 34), dice.From(4, 16), MayTurn: dice.Chance(3), species.Length == 1 || dice.Chance(2) ? Both : [dice.Pick(Both)], InGroup: dice.Chance(3));

    private static Part ToPart(TinyCase tiny, TinyPiece piece, int count, int number) => new()
    {
        Name = string.Create(CultureInfo.InvariantCulture, $"part {number}"),
        Quantity = count,
        Finished = Size(piece.Length - tiny.Allowance, piece.Width - tiny.Allowance),
        Species = piece.Species,
        Grain = piece.MayTurn ? Grain.Free : Grain.Fixed,
        Group = piece.InGroup ? "group" : null,
        Tolerates = piece.IsTolerant ? ["knot"] : [],
    };

    private static Defect ToDefect(TinyDefect defect) => new(
        defect.IsKnot ? "knot" : "split", new Rect(Millimetres(defect.X), Millimetres(defect.Y), Millimetres(defect.Length), Millimetres(defect.Width)));

    private static Offer ToOffer(TinyCase tiny, TinyBoard board, int number) => new()
    {
        Id = string.Create(CultureInfo.InvariantCulture, $"yard/{number}"),
        Supplier = "yard",
        Kind = Kind(tiny),
        Species = board.Species,
        Thickness = Millimetres(Thickness),
        Surface = Surface.Surfaced,
        Available = board.Available == int.MaxValue ? null : board.Available,
        Form = board.Sizes.Count == 1
            ? new ByThePiece(Millimetres(board.Sizes[0].Width), Millimetres(board.Sizes[0].Length), new Money(board.Sizes[0].Price))
            : new ByRunningLength(
                Millimetres(board.Sizes[0].Width), [.. board.Sizes.Select(size => Millimetres(size.Length))], new Money(tiny.MetrePrice), RunningUnit.Metre),
    };

    private static BoardKind Kind(TinyCase tiny) => tiny.Sheets ? BoardKind.Sheet : BoardKind.Solid;

    private static Dimensions Size(int length, int width) => new(Millimetres(Thickness), Millimetres(width), Millimetres(length));

    private static Length Millimetres(int millimetres) => Length.FromMillimetres(millimetres);
}
