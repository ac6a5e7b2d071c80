using Refit;

namespace Offcuts.Contracts;

/// <summary>A piece to look for: as a maker says it, or by its species and finished sizes.</summary>
public sealed record FindQuery
{
    /// <summary>The piece as a maker says it: <c>walnut 3/4 x 5 x 36</c>.</summary>
    [AliasAs("text")]
    public string? Text { get; init; }

    /// <summary>Species id.</summary>
    [AliasAs("species")]
    public string? Species { get; init; }

    /// <summary>Finished thickness in millimetres.</summary>
    [AliasAs("thicknessMm")]
    public decimal? ThicknessMm { get; init; }

    /// <summary>Finished width in millimetres.</summary>
    [AliasAs("widthMm")]
    public decimal? WidthMm { get; init; }

    /// <summary>Finished length in millimetres.</summary>
    [AliasAs("lengthMm")]
    public decimal? LengthMm { get; init; }

    /// <summary>How many are wanted; 1, or what the text says, if null.</summary>
    [AliasAs("quantity")]
    public int? Quantity { get; init; }

    /// <summary><c>clear</c>, <c>sound-knots</c> or <c>paint</c>; clear, or what the text says, if null.</summary>
    [AliasAs("appearance")]
    public string? Appearance { get; init; }

    /// <summary><c>fixed</c> or <c>free</c>; fixed if null.</summary>
    [AliasAs("grain")]
    public string? Grain { get; init; }

    /// <summary>Only boards that lie there; what the text says if null.</summary>
    [AliasAs("place")]
    public string? Place { get; init; }

    /// <summary>Only boards of that batch; what the text says if null.</summary>
    [AliasAs("batch")]
    public string? Batch { get; init; }

    /// <summary>The most boards to list, 1 to 500; 20 if null.</summary>
    [AliasAs("limit")]
    public int? Limit { get; init; }
}

/// <summary>What was found for a piece.</summary>
/// <param name="Understood">What was looked for, in words.</param>
/// <param name="Quantity">How many are wanted.</param>
/// <param name="Items">The boards that give at least one, the nearest fit first.</param>
/// <param name="Boards">How many boards (ids) give at least one, listed or not.</param>
/// <param name="Gives">How many pieces all of them together give.</param>
/// <param name="Nearest">Where none gives one: the boards that come nearest, the nearest first.</param>
/// <param name="Currency">ISO 4217 code.</param>
public sealed record BoardFindRecord(
    string Understood, int Quantity, IReadOnlyList<BoardFitRecord> Items, int Boards, long Gives, IReadOnlyList<NearBoardRecord> Nearest, string Currency);

/// <summary>A board, or several alike, of which each gives at least one piece.</summary>
/// <param name="Board">The board; its quantity is how many of them are free.</param>
/// <param name="Reach">How hard it is to get at: <c>easy</c>, <c>behind</c> or <c>buried</c>.</param>
/// <param name="Gives">How many pieces one of them gives at most.</param>
/// <param name="Cut">How many are cut from the first of them: no more than are wanted.</param>
/// <param name="WorthSpent">Its worth less that of what goes back to the rack.</param>
/// <param name="Leftovers">What goes back, the largest face first.</param>
public sealed record BoardFitRecord(BoardRecord Board, string Reach, int Gives, int Cut, decimal WorthSpent, IReadOnlyList<SizeRecord> Leftovers);

/// <summary>A board that does not give the piece, and why.</summary>
/// <param name="Board">The board.</param>
/// <param name="Lacks">All that stops it.</param>
/// <param name="Text">The same in words, with sizes in the shop's unit.</param>
public sealed record NearBoardRecord(BoardRecord Board, IReadOnlyList<BoardLackRecord> Lacks, string Text);

/// <summary>Something that stops a board from giving a piece.</summary>
/// <param name="Reason"><c>not-good-enough</c>, <c>wrong-thickness</c>, <c>too-wide-for-machines</c>, <c>too-short</c>, <c>too-narrow</c> or <c>too-warped</c>.</param>
/// <param name="NeededMm">What it would have to have, where that is a size.</param>
/// <param name="HasMm">What it has.</param>
public sealed record BoardLackRecord(string Reason, decimal? NeededMm, decimal? HasMm);
