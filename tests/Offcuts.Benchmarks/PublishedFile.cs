using System.Globalization;
using System.Text.Json;
using Offcuts.Domain;
using Offcuts.Testing;

namespace Offcuts.Benchmarks;

/// <summary>
/// Reads one file of a folder of published problems: one-dimensional ones (<c>stocks</c>, <c>items</c>, <c>opt</c>), guillotine knapsacks of two
/// stages (<c>L</c>, <c>W</c>, <c>items</c>, <c>opt_2stage_H</c>, <c>opt_2stage_V</c>) and orders of guillotine plates (<c>L</c>, <c>W</c>,
/// <c>items</c>, <c>opt_unlimited_fixed</c>, <c>two_stage</c>). A unit of length is 0.1 mm.
/// </summary>
/// <param name="kerf">
/// Half a unit for the form of every problem with a kerf: parts and boards are shorter by it, in both directions where both count, so that the same fits.
/// </param>
internal sealed class PublishedFile(Length kerf)
{
    private const int Width = 1000;

    /// <summary>A kerf of half a unit.</summary>
    public static Length HalfUnit { get; } = Length.FromTicks(Length.TicksPerMillimetre / 20);

    /// <summary>The problem; null if the file holds another kind or names no proven optimum.</summary>
    public PublishedProblem? Read(string path)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(path));
        var root = document.RootElement;
        if (root.TryGetProperty("stocks", out var stocks) && root.TryGetProperty("opt", out var optimum) && optimum.ValueKind == JsonValueKind.Number)
        {
            return OneDimensional(root, stocks, optimum.GetInt64());
        }

        return root.TryGetProperty("opt_2stage_H", out var h) && root.TryGetProperty("opt_2stage_V", out var v)
            ? Knapsack(root, Math.Max(h.GetInt64(), v.GetInt64()))
            : root.TryGetProperty("opt_unlimited_fixed", out var plates)
            ? Plates(root, plates)
            : null;
    }

    // At most as many plates as the better of the two-stage results; the fewest, where they are known for any number of stages.
    private PublishedProblem? Plates(JsonElement root, JsonElement optimum)
    {
        var twoStage = root.TryGetProperty("two_stage", out var two) && two.ValueKind == JsonValueKind.Object
            ? two.EnumerateObject().Where(each => each.Value.ValueKind == JsonValueKind.Array).Select(each => (long?)each.Value[1].GetInt64()).Min()
            : null;
        var least = optimum.ValueKind == JsonValueKind.Number ? optimum.GetInt64() : twoStage;
        if (least is null)
        {
            return null;
        }

        var problem = Create(
            root, least.Value, [],
            [
                new Offer
                {
                    Id = "plate",
                    Supplier = "yard",
                    Kind = BoardKind.Sheet,
                    Species = "plate",
                    Thickness = Thickness,
                    Surface = Surface.Surfaced,
                    Form = new ByThePiece(Units(Int(root, "W")), Units(Int(root, "L")), new Money(1)),
                },
            ],
            item => (Int(item, "length"), Int(item, "width"), Int(item, "demand")));
        return problem with
        {
            Problem = problem.Problem with { Shop = problem.Problem.Shop with { Recut = true } },
            IsOfAnyStages = true,
            TwoStages = twoStage is null ? null : new Money(twoStage.Value),
        };
    }

    private PublishedProblem OneDimensional(JsonElement root, JsonElement stocks, long optimum) => Create(
        root, optimum, [],
        stocks.EnumerateArray().Select(stock => new Offer
        {
            Id = $"board {Int(stock, "length")}",
            Supplier = "yard",
            Kind = BoardKind.Sheet,
            Species = "plate",
            Thickness = Thickness,
            Surface = Surface.Surfaced,
            Available = stock.TryGetProperty("available", out var available) && available.ValueKind == JsonValueKind.Number ? available.GetInt32() : null,
            Form = new ByThePiece(Units(Width), Units(Int(stock, "length")), new Money(Int(stock, "cost"))),
        }),
        item => (Int(item, "length"), Width, Int(item, "demand")));

    // Each item can be bought at its size for its profit: the least money is that of all items less the optimum of the knapsack.
    // What is bought for one item is of a kind that no other accepts, or a large cheap one would be cut up for the others.
    private PublishedProblem Knapsack(JsonElement root, long optimum)
    {
        var items = root.GetProperty("items").EnumerateArray().ToList();
        var plate = new Board
        {
            Id = BoardIds.FromNumber(1),
            Kind = BoardKind.Sheet,
            Species = "plate",
            Surface = Surface.Surfaced,
            LoggedAt = DateTimeOffset.UnixEpoch,
            Size = new Dimensions(Thickness, Units(Int(root, "W")), Units(Int(root, "L"))),
        };
        return Create(
            root, items.Sum(item => (long)Int(item, "profit") * Int(item, "max")) - optimum, [plate],
            items.Select((item, index) => new Offer
            {
                Id = string.Create(CultureInfo.InvariantCulture, $"item {index}"),
                Supplier = "yard",
                Kind = BoardKind.Sheet,
                Species = ItemName(index),
                Thickness = Thickness,
                Surface = Surface.Surfaced,
                Form = new ByThePiece(Units(Int(item, "width")), Units(Int(item, "length")), new Money(Int(item, "profit"))),
            }),
            item => (Int(item, "length"), Int(item, "width"), Int(item, "max")));
    }

    private static Length Thickness => Length.FromMillimetres(18);

    private PublishedProblem Create(
        JsonElement root, long least, IReadOnlyList<Board> stock, IEnumerable<Offer> offers, Func<JsonElement, (int Length, int Width, int Count)> read) => new(
        root.GetProperty("name").GetString() ?? "",
        new PlanningProblem
        {
            Stock = stock,
            Offers = [.. offers],
            Shop = new Shop { Unit = DisplayUnit.Millimetre, Kerf = kerf, Recut = false },
            Design = new Design
            {
                Name = "published",
                Parts = [.. root.GetProperty("items").EnumerateArray().Select(read).Select((item, index) => new Part
                {
                    Name = ItemName(index), Quantity = item.Count, Species = ["plate", ItemName(index)],
                    Finished = new Dimensions(Thickness, Units(item.Width), Units(item.Length)),
                })],
            },
        },
        new Money(least));

    private static string ItemName(int index) => string.Create(CultureInfo.InvariantCulture, $"item {index}");

    private Length Units(int units) => Length.FromTicks(units * (Length.TicksPerMillimetre / 10)) - kerf;

    private static int Int(JsonElement element, string name) => element.GetProperty(name).GetInt32();
}
