using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>A problem with the least money that is known for it.</summary>
/// <param name="Name">Its name in the literature.</param>
/// <param name="Problem">The problem, a millimetre for each unit of length.</param>
/// <param name="Least">The least money.</param>
public sealed record PublishedProblem(string Name, PlanningProblem Problem, Money Least);

/// <summary>
/// Small cutting problems of the literature, typed in. Boards and parts are sheets of one width, so that milling takes nothing.
/// The optima were recomputed by an integer program over all patterns before they were written here.
/// </summary>
public static class PublishedProblems
{
    private sealed record Lengths(string Name, int Stock, int Optimum, (int Length, int Count)[] Items);

    private static readonly Lengths[] OneDimensional =
    [
        // Chvatal, Linear Programming (1983), chapter 13.
        new("Chvatal 13", 100, 453, [(45, 97), (36, 610), (31, 395), (14, 211)]),
        // A paper machine's rolls, the common teaching example of the cutting stock problem; 73 rolls.
        new("5600 mm rolls", 5600, 73,
            [(1380, 22), (1520, 25), (1560, 12), (1710, 14), (1820, 18), (1880, 18), (1930, 20), (2000, 10), (2050, 12), (2100, 14), (2140, 16), (2150, 18), (2200, 20)]),
        // Fieldhouse: the relaxation rounded up, 5, is not reached.
        new("Fieldhouse", 30, 6, [(15, 3), (10, 5), (6, 9)]),
        // Gau and Waescher: relaxation 2.2.
        new("Gau-Waescher 1", 10000, 3, [(5000, 1), (3750, 1), (3250, 1), (3001, 1), (2000, 2)]),
        // Rietz: instances with a large gap between relaxation and optimum.
        new("Rietz Modell", 45, 9, [(27, 3), (23, 3), (15, 6), (11, 6), (9, 10)]),
        new("Rietz x1", 387, 8, [(177, 3), (145, 2), (133, 2), (130, 1), (129, 5), (127, 2), (121, 2), (113, 1), (105, 1), (97, 1)]),
        // Traps: an integer program over the patterns of the relaxation alone needs one board more.
        new("n1", 24, 12, [(5, 23), (3, 55)]),
        new("n2", 35, 11, [(5, 33), (2, 110)]),
        new("n3", 136, 4, [(5, 12), (9, 32), (7, 28)]),
        new("gg20", 20, 601, [(9, 511), (8, 301), (7, 263), (6, 383)]),
        new("vadim9", 70, 2, [(30, 1), (28, 1), (18, 1), (15, 1), (14, 1), (13, 1), (11, 1), (5, 2)]),
    ];

    /// <summary>Fewest boards of one length, without a kerf.</summary>
    public static IReadOnlyList<PublishedProblem> OneLength { get; } = [.. OneDimensional.Select(lengths => Create(lengths, 0))];

    /// <summary>
    /// The same with a kerf of 2: n parts fit if their lengths and n - 1 kerfs do, so parts and boards that are shorter by a kerf fit as before.
    /// </summary>
    public static IReadOnlyList<PublishedProblem> WithKerf { get; } =
        [.. OneDimensional.Where(lengths => lengths.Items.All(item => item.Length > 2)).Select(lengths => Create(lengths, 2))];

    /// <summary>
    /// Christofides and Whitlock (1977), instance 1, with two stages: plate 15 x 10, optimum 244. Each item can be bought at its size for its profit,
    /// so the least money is that of all items less the optimum of the knapsack.
    /// </summary>
    public static PublishedProblem Cgcut1 { get; } = Knapsack(
        "cgcut1", 15, 10, 244, [(8, 4, 66, 2), (3, 7, 35, 1), (8, 2, 24, 3), (3, 4, 17, 5), (3, 3, 11, 2), (3, 2, 8, 2), (2, 1, 2, 1)]);

    private static PublishedProblem Create(Lengths lengths, int kerf)
    {
        var problem = Empty(kerf) with
        {
            Design = new Design
            {
                Name = lengths.Name,
                Parts = [.. lengths.Items.Select(item => CreatePart($"{item.Length}", item.Length - kerf, 100, item.Count))],
            },
            Offers = [CreateOffer("board", lengths.Stock - kerf, 100, 1)],
        };
        return new PublishedProblem(lengths.Name, problem, new Money(lengths.Optimum));
    }

    private static PublishedProblem Knapsack(string name, int length, int width, int optimum, (int Length, int Width, int Profit, int Most)[] items)
    {
        var problem = Empty(0) with
        {
            Stock =
            [
                new Board
                {
                    Id = BoardIds.FromNumber(1), Kind = BoardKind.Sheet, Species = "plate", Surface = Surface.Surfaced, Size = Size(length, width), LoggedAt = DateTimeOffset.UnixEpoch,
                },
            ],
            Design = new Design
            {
                Name = name,
                Parts = [.. items.Select(item => CreatePart($"{item.Length} x {item.Width}", item.Length, item.Width, item.Most))],
            },
            Offers = [.. items.Select(item => CreateOffer($"{item.Length} x {item.Width}", item.Length, item.Width, item.Profit))],
        };
        return new PublishedProblem(name, problem, new Money(items.Sum(item => item.Profit * item.Most) - optimum));
    }

    /// <summary>A shop with one saw, nothing in stock and nothing to build.</summary>
    internal static PlanningProblem Empty(int kerf) => new()
    {
        Stock = [],
        Design = new Design { Name = "none" },
        Shop = new Shop { Unit = DisplayUnit.Millimetre, Kerf = Length.FromMillimetres(kerf), Recut = false },
    };

    internal static Part CreatePart(string name, int length, int width, int quantity) =>
        new() { Name = name, Quantity = quantity, Finished = Size(length, width), Species = ["plate"] };

    internal static Offer CreateOffer(string id, int length, int width, int price) => new()
    {
        Id = id,
        Supplier = "yard",
        Kind = BoardKind.Sheet,
        Species = "plate",
        Thickness = Length.FromMillimetres(18),
        Surface = Surface.Surfaced,
        Form = new ByThePiece(Length.FromMillimetres(width), Length.FromMillimetres(length), new Money(price)),
    };

    internal static Dimensions Size(int length, int width) =>
        new(Length.FromMillimetres(18), Length.FromMillimetres(width), Length.FromMillimetres(length));
}
