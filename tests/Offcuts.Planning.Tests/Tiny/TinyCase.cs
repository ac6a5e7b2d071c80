namespace Offcuts.Planning.Tests.Tiny;

/// <summary>A tiny problem in plain whole numbers, as the search that tries everything reads it.</summary>
/// <param name="Kerf">Width of a cut.</param>
/// <param name="Recut">Whether a band may be cut once more.</param>
/// <param name="Boards">What is owned, price 0, and what can be bought.</param>
/// <param name="Pieces">Every blank that is wanted, one by one.</param>
/// <param name="GroupSpecies">The species of which one must serve all pieces of the group.</param>
internal sealed record TinyCase(int Kerf, bool Recut, IReadOnlyList<TinyBoard> Boards, IReadOnlyList<TinyPiece> Pieces, IReadOnlyList<string> GroupSpecies)
{
    /// <summary>What a metre of the offer in several lengths costs: says its prices in the problem.</summary>
    public int MetrePrice { get; init; }

    /// <summary>Whether all boards are sheets, else surfaced solid wood.</summary>
    public bool Sheets { get; init; }

    /// <summary>By how much a blank is longer and wider than its part.</summary>
    public int Allowance { get; init; }
}

/// <summary>A kind of board: an owned one, or an offer in one or more sizes.</summary>
/// <param name="Species">What it is made of.</param>
/// <param name="Sizes">Its sizes, each with its price.</param>
/// <param name="Available">How many in all sizes together.</param>
internal sealed record TinyBoard(string Species, IReadOnlyList<(int Length, int Width, int Price)> Sizes, int Available)
{
    /// <summary>What is wrong with an owned one.</summary>
    public IReadOnlyList<TinyDefect> Defects { get; init; } = [];
}

/// <summary>A defect.</summary>
/// <param name="X">Where it begins along the board.</param>
/// <param name="Y">Where it begins across the board.</param>
/// <param name="Length">Extent along the board.</param>
/// <param name="Width">Extent across the board.</param>
/// <param name="IsKnot">A knot, which tolerant pieces may hold; else a split.</param>
internal sealed record TinyDefect(int X, int Y, int Length, int Width, bool IsKnot);

/// <summary>A blank.</summary>
/// <param name="Length">Extent along the board.</param>
/// <param name="Width">Extent across the board.</param>
/// <param name="MayTurn">Whether it may be turned by a quarter.</param>
/// <param name="Species">The species accepted.</param>
/// <param name="InGroup">Whether it belongs to the group of one species.</param>
internal sealed record TinyPiece(int Length, int Width, bool MayTurn, IReadOnlyList<string> Species, bool InGroup)
{
    /// <summary>Whether it may hold knots.</summary>
    public bool IsTolerant { get; init; }
}
