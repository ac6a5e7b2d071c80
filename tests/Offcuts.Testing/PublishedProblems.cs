using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>A problem with the least money that is known for it.</summary>
/// <param name="Name">Its name in the literature.</param>
/// <param name="Problem">The problem; for most, a millimetre stands for each unit of length.</param>
/// <param name="Least">The least money.</param>
public sealed record PublishedProblem(string Name, PlanningProblem Problem, Money Least)
{
    /// <summary>Whether <see cref="Least"/> is that of patterns of any number of stages, of which the planner's are only some.</summary>
    public bool IsOfAnyStages { get; init; }

    /// <summary>The best published result of patterns of two stages, if there is one beside <see cref="Least"/>.</summary>
    public Money? TwoStages { get; init; }
}

/// <summary>
/// Small cutting problems in one dimension of the literature, typed in. Boards and parts are sheets of one width, so that milling takes nothing.
/// The optima were recomputed by an integer program over all patterns before they were written here.
/// </summary>
public static class PublishedProblems
{
    /// <param name="Name">Its name.</param>
    /// <param name="Stock">The only length on offer, at a price of 1; without limit.</param>
    /// <param name="Optimum">The least money.</param>
    /// <param name="Items">Lengths wanted.</param>
    /// <param name="Unit">Millimetres of a unit of length.</param>
    private sealed record Lengths(string Name, int Stock, int Optimum, (int Length, int Count)[] Items, decimal Unit = 1)
    {
        /// <summary>All lengths on offer, where there are several, with how many there are and the price of each.</summary>
        public (int Length, int? Available, int Price)[] Offers { get; init; } = [(Stock, null, 1)];
    }

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
        // Large whole numbers.
        new("n4", 1_000_000, 2, [(46620, 21), (20979, 34), (9324, 27)], Unit: 0.1m),
        // CUTGEN1 (Gau and Waescher 1995): the first and the last of the sample printed in the paper.
        new("CUTGEN1 1", 1000, 394, [(577, 63), (570, 64), (544, 85), (539, 84), (526, 54), (512, 20), (504, 24), (459, 31), (446, 48), (378, 27)]),
        new("CUTGEN1 150", 1000, 322, [(570, 16), (558, 94), (543, 20), (540, 99), (513, 59), (490, 48), (476, 78), (453, 35), (434, 51)]),
        // Three lengths, of each only so many, at a price of 1 for each unit of length: instance Crainic1_1_A_0_0 of variable sized bin packing.
        new("Crainic1_1_A_0_0", 150, 1280,
            [
                (99, 1), (95, 1), (92, 1), (83, 1), (79, 1), (77, 2), (71, 1), (66, 1), (63, 1), (55, 1), (54, 1), (50, 1), (40, 1),
                (38, 1), (36, 1), (33, 1), (32, 1), (29, 1), (24, 1), (19, 2), (17, 1), (14, 1), (10, 1),
            ]) { Offers = [(150, 9, 150), (120, 11, 120), (100, 13, 100)] },
        // Falkenauer's triplets (1996): every board of the optimum is three parts without waste, 20 boards for 60 parts.
        new("Falkenauer t60_04", 1000, 20,
            [
                (498, 1), (496, 1), (494, 1), (491, 1), (478, 1), (470, 1), (455, 1), (434, 1), (428, 1), (425, 1), (418, 1), (414, 1), (411, 1), (409, 1),
                (403, 1), (402, 1), (401, 1), (379, 2), (378, 1), (357, 1), (346, 1), (336, 1), (328, 1), (326, 1), (319, 1), (315, 1), (314, 1), (310, 1),
                (304, 1), (296, 2), (293, 1), (291, 1), (287, 1), (286, 1), (284, 2), (283, 1), (282, 1), (281, 2), (279, 1), (276, 1), (264, 3), (258, 1),
                (256, 2), (254, 1), (253, 3), (252, 3), (251, 2), (250, 1),
            ]),
        new("vadim9", 70, 2, [(30, 1), (28, 1), (18, 1), (15, 1), (14, 1), (13, 1), (11, 1), (5, 2)]),
    ];

    /// <summary>Fewest boards of one length, without a kerf.</summary>
    public static IReadOnlyList<PublishedProblem> OneLength { get; } = [.. OneDimensional.Select(lengths => Create(lengths, 0))];

    /// <summary>
    /// The same with a kerf of half a unit: n parts fit if their lengths and n - 1 kerfs do, so parts and boards that are shorter by a kerf fit as before.
    /// </summary>
    public static IReadOnlyList<PublishedProblem> WithKerf { get; } = [.. OneDimensional.Select(lengths => Create(lengths, 0.5m))];

    private static PublishedProblem Create(Lengths lengths, decimal kerf)
    {
        decimal Shorter(int length) => (length - kerf) * lengths.Unit;
        var problem = Empty(kerf * lengths.Unit) with
        {
            Design = new Design
            {
                Name = lengths.Name,
                Parts = [.. lengths.Items.Select(item => CreatePart($"{item.Length}", Shorter(item.Length), 100, item.Count))],
            },
            Offers = [.. lengths.Offers.Select(offer => CreateOffer($"board {offer.Length}", Shorter(offer.Length), 100, offer.Price) with { Available = offer.Available })],
        };
        return new PublishedProblem(lengths.Name, problem, new Money(lengths.Optimum));
    }

    /// <summary>A shop with one saw, nothing in stock and nothing to build.</summary>
    public static PlanningProblem Empty(decimal kerf) => new()
    {
        Stock = [],
        Design = new Design { Name = "none" },
        Shop = new Shop { Unit = DisplayUnit.Millimetre, Kerf = Length.FromMillimetres(kerf), Recut = false },
    };

    public static Part CreatePart(string name, decimal length, decimal width, int quantity) =>
        new() { Name = name, Quantity = quantity, Finished = Size(length, width), Species = ["plate"] };

    public static Offer CreateOffer(string id, decimal length, decimal width, int price) => new()
    {
        Id = id,
        Supplier = "yard",
        Kind = BoardKind.Sheet,
        Species = "plate",
        Thickness = Length.FromMillimetres(18),
        Surface = Surface.Surfaced,
        Form = new ByThePiece(Length.FromMillimetres(width), Length.FromMillimetres(length), new Money(price)),
    };

    public static Dimensions Size(decimal length, decimal width) =>
        new(Length.FromMillimetres(18), Length.FromMillimetres(width), Length.FromMillimetres(length));
}
