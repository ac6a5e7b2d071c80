using System.Globalization;
using Offcuts.Domain;
using Offcuts.Testing;

namespace Offcuts.Planning.Tests.Tiny;

/// <summary>A tiny shop that glues up panels of one size and nothing else, in plain whole numbers of centimetres.</summary>
/// <param name="Kerf">Width of a cut.</param>
/// <param name="Edge">What jointing takes of a strip's sawn width.</param>
/// <param name="Along">Length of a strip's blank.</param>
/// <param name="Narrowest">The narrowest net width of a strip.</param>
/// <param name="Widest">The widest.</param>
/// <param name="Needs">Net width that each sub-panel needs: one or two of the same width.</param>
/// <param name="Halves">Whether two sub-panels are the halves of one panel, else each is a panel.</param>
/// <param name="Slack">How much wider than what it needs a half may be, if the other is narrower.</param>
/// <param name="Boards">What is owned, price 0, and what can be bought.</param>
internal sealed record TinyPanel(int Kerf, int Edge, int Along, int Narrowest, int Widest, IReadOnlyList<int> Needs, bool Halves, int Slack, IReadOnlyList<TinyBoard> Boards)
{
    private const int Oversize = 1;
    private const int Seam = 2;
    private static readonly string[] Both = ["ash", "oak"];

    /// <summary>The case of a seed. What is offered may not suffice in every fourth.</summary>
    public static TinyPanel Create(int seed)
    {
        var dice = new Dice(seed, metric: true);
        var scarce = dice.Chance(4);
        var species = dice.Chance(3) ? Both : Both[..1];
        var (along, narrowest, need) = (dice.From(8, 20), dice.From(3, 6), dice.From(6, 16));
        var rows = dice.From(1, 2);
        var boards = Enumerable.Range(0, dice.From(0, 3))
            .Select(_ => new TinyBoard(dice.Pick(species), [(dice.From(8, 45), dice.From(3, 20), 0)], 1)).ToList();
        foreach (var _ in Enumerable.Range(0, 2))
        {
            boards.Add(new TinyBoard(dice.Pick(species), [(dice.From(20, 60), dice.From(6, 20), dice.From(10, 90))], scarce ? dice.From(0, 2) : int.MaxValue));
        }

        return new TinyPanel(
            dice.From(0, 1), dice.From(0, 2), along, narrowest, dice.From(narrowest, 12), Enumerable.Repeat(need, rows).ToList(), rows == 2 && dice.Chance(2), 0, boards);
    }

    /// <summary>The same with two halves that may be of unequal widths.</summary>
    public static TinyPanel CreateHalves(int seed)
    {
        var tiny = Create(seed);

        // With more slack the planer would take the whole panel.
        return tiny with { Needs = [tiny.Needs[0], tiny.Needs[0]], Halves = true, Slack = 1 + (seed % Math.Min(4, tiny.Needs[0] - Seam - 1)) };
    }

    public PlanningProblem ToProblem()
    {
        // Two halves of a panel lose a seam between them.
        var glued = Halves ? (2 * Needs[0]) - Seam : Needs[0];
        return new PlanningProblem
        {
            Shop = new Shop
            {
                Unit = DisplayUnit.Millimetre,
                Kerf = Centimetres(Kerf),
                Surfaced = new Allowances(Centimetres(1), Centimetres(Edge), Length.Zero),
                PanelOversize = Centimetres(Oversize),
                SeamAllowance = Centimetres(Seam),
                PlanerWidth = Centimetres(Needs[0] + Slack),
                NarrowestStrip = Centimetres(Narrowest),
                WidestStrip = Centimetres(Widest),
            },
            Design = new Design
            {
                Name = "tiny",
                Panels =
                [
                    new Panel
                    {
                        Name = "panel", Quantity = Halves ? 1 : Needs.Count, Species = Both, Finished = Size(Along - 1, glued - Oversize),
                    },
                ],
            },
            Stock = Owned(Boards),
            Offers = Offered(Boards),
        };
    }

    public static IReadOnlyList<Board> Owned(IEnumerable<TinyBoard> boards) => [.. boards.Where(board => board.Sizes[0].Price == 0).Index().Select(entry => new Board
    {
        Id = BoardIds.FromNumber(entry.Index + 1), Species = entry.Item.Species, Surface = Surface.Surfaced,
        Size = Size(entry.Item.Sizes[0].Length, entry.Item.Sizes[0].Width), LoggedAt = DateTimeOffset.UnixEpoch,
    })];

    public static IReadOnlyList<Offer> Offered(IEnumerable<TinyBoard> boards) =>
        [.. boards.Where(board => board.Sizes[0].Price > 0).Index().Select(entry => ToOffer(entry.Item, entry.Index))];

    private static Offer ToOffer(TinyBoard board, int number) => new()
    {
        Id = string.Create(CultureInfo.InvariantCulture, $"yard/{number}"),
        Supplier = "yard",
        Species = board.Species,
        Thickness = Centimetres(2),
        Surface = Surface.Surfaced,
        Available = board.Available == int.MaxValue ? null : board.Available,
        Form = new ByThePiece(Centimetres(board.Sizes[0].Width), Centimetres(board.Sizes[0].Length), new Money(board.Sizes[0].Price)),
    };

    public static Dimensions Size(int length, int width) => new(Centimetres(2), Centimetres(width), Centimetres(length));

    public static Length Centimetres(int centimetres) => Length.FromMillimetres(centimetres * 10);
}
