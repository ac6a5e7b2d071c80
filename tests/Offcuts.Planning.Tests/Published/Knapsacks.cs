using System.Globalization;
using Offcuts.Domain;
using Offcuts.Testing;

namespace Offcuts.Planning.Tests.Published;

/// <summary>The guillotine knapsacks of <c>two-stage-knapsacks.txt</c> as planning problems, a millimetre for each unit.</summary>
internal static class Knapsacks
{
    private const decimal Thickness = 18;

    private sealed record Item(int Length, int Width, int Profit, int Most);

    private sealed record Knapsack(string Name, int Length, int Width, int Ripped, int Crosscut, IReadOnlyList<Item> Items);

    private static readonly Knapsack[] All = [.. Read()];

    public static IEnumerable<string> Names => All.Select(knapsack => knapsack.Name);

    /// <summary>
    /// The plate is in stock and all items are wanted; each can also be bought at its size for its profit. So the least money is the profit of all items less
    /// the optimum of the knapsack. What is bought for an item is of a material that no other accepts, or a large cheap one would be cut up for others.
    /// </summary>
    /// <param name="name">The knapsack's name.</param>
    /// <param name="kerf">
    /// Parts and boards are shorter and narrower by this. As n pieces and n - 1 kerfs must fit, all that fitted without a kerf still does, and nothing else.
    /// </param>
    public static PublishedProblem Get(string name, decimal kerf)
    {
        var knapsack = All.Single(each => each.Name == name);
        Dimensions Size(int length, int width) => new(
            Length.FromMillimetres(Thickness), Length.FromMillimetres(width - kerf), Length.FromMillimetres(length - kerf));
        var problem = new PlanningProblem
        {
            Shop = new Shop { Unit = DisplayUnit.Millimetre, Kerf = Length.FromMillimetres(kerf), Recut = false },
            Stock =
            [
                new Board
                {
                    Id = BoardIds.FromNumber(1), Kind = BoardKind.Sheet, Species = "plate", Surface = Surface.Surfaced,
                    Size = Size(knapsack.Length, knapsack.Width), LoggedAt = DateTimeOffset.UnixEpoch,
                },
            ],
            Design = new Design
            {
                Name = name,
                Parts = [.. knapsack.Items.Index().Select(entry => new Part
                {
                    Name = Material(entry.Index), Quantity = entry.Item.Most, Finished = Size(entry.Item.Length, entry.Item.Width), Species = ["plate", Material(entry.Index)],
                })],
            },
            Offers = [.. knapsack.Items.Index().Select(entry => ToOffer(entry.Item, Size(entry.Item.Length, entry.Item.Width), Material(entry.Index)))],
        };
        return new PublishedProblem(name, problem, new Money(knapsack.Items.Sum(item => (long)item.Profit * item.Most) - Math.Max(knapsack.Ripped, knapsack.Crosscut)));
    }

    /// <summary>The optima with the first cuts along the plate and across it; which of them is the planner's choice.</summary>
    public static (long Ripped, long Crosscut) Optima(string name) => All.Where(each => each.Name == name).Select(each => ((long)each.Ripped, (long)each.Crosscut)).Single();

    private static string Material(int index) => string.Create(CultureInfo.InvariantCulture, $"item {index}");

    private static Offer ToOffer(Item item, Dimensions size, string material) => new()
    {
        Id = material,
        Supplier = "yard",
        Kind = BoardKind.Sheet,
        Species = material,
        Thickness = size.Thickness,
        Surface = Surface.Surfaced,
        Form = new ByThePiece(size.Width, size.Length, new Money(item.Profit)),
    };

    private static IEnumerable<Knapsack> Read()
    {
        using var stream = typeof(Knapsacks).Assembly.GetManifestResourceStream("two-stage-knapsacks.txt")
            ?? throw new InvalidOperationException("The knapsacks are not in the assembly.");
        using var reader = new StreamReader(stream);
        var blocks = reader.ReadToEnd().ReplaceLineEndings("\n").Split("\n\n", StringSplitOptions.RemoveEmptyEntries).Skip(1);
        foreach (var lines in blocks.Select(block => block.Split('\n', StringSplitOptions.RemoveEmptyEntries)))
        {
            var head = lines[0].Split(' ');
            yield return new Knapsack(
                head[0], Number(head[1]), Number(head[2]), Number(head[3]), Number(head[4]),
                [.. lines.Skip(1).Select(line => line.Split(' ')).Select(cells => new Item(Number(cells[0]), Number(cells[1]), Number(cells[2]), Number(cells[3])))]);
        }
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
