namespace Offcuts.Planning.Modelling;

/// <summary>A cutting pattern of one board type: what each of its areas is cut to.</summary>
internal sealed class Pattern
{
    public required BoardType Board { get; init; }

    /// <summary>How the board is sawn down to the areas; null if it is cut as one rectangle.</summary>
    public Division? Division { get; init; }

    /// <summary>What is cut from each area of the division; one, the board itself, where there is no division.</summary>
    public required IReadOnlyList<AreaPattern> Areas { get; init; }

    /// <summary>Row and amount (pieces or ticks of net width) for every row that it serves.</summary>
    public required (int Row, long Amount)[] Cover { get; init; }

    /// <summary>Money in minor units.</summary>
    public long Money => Board.Price;

    /// <summary>Second objective in minor units: worth consumed less worth returned, plus handling.</summary>
    public required double Worth { get; init; }

    /// <summary>The boards that an earlier plan cuts like this, in its order; none for a new pattern.</summary>
    public IReadOnlyList<EarlierPlace> Earlier { get; init; } = [];

    /// <summary>Patterns with the same key do the same.</summary>
    public string Key => key ??= $"{Board.Index}:{string.Join(',', Cover.Select(c => $"{c.Row}x{c.Amount}"))}";

    private string? key;
}

/// <summary>A board of an earlier plan.</summary>
/// <param name="BoardId">Id of the board in stock; null for a bought one.</param>
/// <param name="Copy">Which of several alike, from 1.</param>
internal readonly record struct EarlierPlace(string? BoardId, int Copy);

/// <summary>
/// How one rectangle of a board is cut. First cuts divide it into sections, second cuts divide a section into bands,
/// third cuts divide a band into blanks. Extents named First run in the direction in which the first cuts follow each other
/// (along the board when crosscutting first, across it when ripping first), extents named Second in the other.
/// </summary>
/// <param name="Area">The rectangle: an area of a board, or a board without divisions.</param>
/// <param name="RipFirst">Which way the first cuts go.</param>
/// <param name="Sections">The sections in order.</param>
internal sealed record AreaPattern(BoardType Area, bool RipFirst, IReadOnlyList<Section> Sections);

/// <summary>A section of an area and the bands in it.</summary>
internal sealed record Section(long First, IReadOnlyList<Band> Bands);

/// <summary>A band of a section: a run of blanks, or one strip for a panel.</summary>
internal sealed record Band(long Second, IReadOnlyList<BlankOption> Run, StripCut? Strip);

/// <summary>A strip for a panel row with the net width it counts for; <see cref="Along"/> is its length on the board.</summary>
internal readonly record struct StripCut(int Row, long Net, long Along);
