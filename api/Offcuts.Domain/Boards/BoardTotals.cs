namespace Offcuts.Domain;

/// <summary>By what boards are added up.</summary>
public enum TotalsBy
{
    /// <summary>By species.</summary>
    Species,

    /// <summary>By thickness.</summary>
    Thickness,

    /// <summary>By bands of length.</summary>
    Length,

    /// <summary>By place.</summary>
    Place,

    /// <summary>By batch.</summary>
    Batch,

    /// <summary>By how long they have lain.</summary>
    Age,
}

/// <summary>Some boards, added up.</summary>
/// <param name="Name">What they have in common, in words.</param>
/// <param name="Boards">How many boards and sheets.</param>
/// <param name="CubicMetres">Their volume.</param>
/// <param name="Worth">What they are worth by the rates with which plans are made; see <see cref="Domain.Worth"/>.</param>
/// <param name="From">The least thickness or length; null where they share another thing.</param>
/// <param name="To">The length that all are below, or the thickness; null where there is none.</param>
public sealed record BoardTotal(string Name, int Boards, decimal CubicMetres, Money Worth, Length? From = null, Length? To = null);

/// <summary>Adds boards up.</summary>
/// <param name="unit">The unit of sizes in names, and of bands.</param>
/// <param name="today">The day from which ages count.</param>
/// <param name="nameOf">The name of a species.</param>
/// <param name="worthOf">What one board is worth.</param>
public sealed class BoardTotals(DisplayUnit unit, DateOnly today, Func<string, string> nameOf, Func<Board, Money> worthOf)
{
    /// <summary>The boards by what they have in common: by name, or from the thin to the thick, the short to the long, the young to the old.</summary>
    public IReadOnlyList<BoardTotal> Of(IEnumerable<Board> boards, TotalsBy by) =>
    [
        .. boards.GroupBy(board => GroupOf(board, by))
            .OrderBy(group => group.Key.Rank).ThenBy(group => group.Key.Name, StringComparer.OrdinalIgnoreCase).ThenBy(group => group.Key.Name, StringComparer.Ordinal)
            .Select(group => Sum(group, group.Key.Name) with { From = group.Key.From, To = group.Key.To }),
    ];

    /// <summary>All boards together.</summary>
    public BoardTotal Of(IEnumerable<Board> boards) => Sum(boards, "all");

    private BoardTotal Sum(IEnumerable<Board> boards, string name) => boards.Aggregate(new BoardTotal(name, 0, 0, Money.Zero), (sum, board) => sum with
    {
        Boards = sum.Boards + board.Quantity,
        CubicMetres = sum.CubicMetres + (board.Quantity * BoardMeasure.CubicMetres(board.Size)),
        Worth = sum.Worth + (worthOf(board) * board.Quantity),
    });

    private Group GroupOf(Board board, TotalsBy by) => by switch
    {
        TotalsBy.Species => new(0, nameOf(board.Species)),
        TotalsBy.Thickness => new(board.Size.Thickness.Ticks, LengthText.Format(board.Size.Thickness, unit), board.Size.Thickness, board.Size.Thickness),
        TotalsBy.Length => Band(board.Size.Length),
        TotalsBy.Place => Named(board.Place, "no place"),
        TotalsBy.Batch => Named(board.Batch, "no batch"),
        TotalsBy.Age => Age(DateOnly.FromDateTime(board.LoggedAt.UtcDateTime)),
    };

    // What has no name comes last.
    private static Group Named(string? name, string none) => name is null ? new(1, none) : new(0, name);

    private Group Band(Length length)
    {
        var (below, above) = LengthBands.Around(length, unit);
        return new(below?.Ticks ?? 0, LengthBands.Name(below, above, unit), below ?? Length.Zero, above);
    }

    private Group Age(DateOnly logged) =>
        logged > today.AddMonths(-3) ? new(0, "under 3 months")
        : logged > today.AddYears(-1) ? new(1, "3 to 12 months")
        : logged > today.AddYears(-2) ? new(2, "1 to 2 years")
        : logged > today.AddYears(-3) ? new(3, "2 to 3 years")
        : new(4, "3 years and more");

    private readonly record struct Group(long Rank, string Name, Length? From = null, Length? To = null);
}
