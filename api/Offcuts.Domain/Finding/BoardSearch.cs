namespace Offcuts.Domain;

/// <summary>What was found on the rack for a piece.</summary>
/// <param name="Fits">The boards that give at least one piece, the nearest fit first.</param>
/// <param name="Boards">How many entries of the inventory give at least one, listed or not.</param>
/// <param name="Gives">How many pieces all of them together give.</param>
/// <param name="Nearest">Where none does: the boards that come nearest, the nearest first.</param>
public sealed record BoardSearch(IReadOnlyList<BoardFit> Fits, int Boards, long Gives, IReadOnlyList<NearBoard> Nearest);

/// <summary>A board, or several alike, of which each gives at least one piece.</summary>
/// <param name="Board">The board, with as many alike as are free.</param>
/// <param name="Reach">How hard it is to get at.</param>
/// <param name="Gives">How many pieces one of them gives at most.</param>
/// <param name="Cut">How many are cut from the first of them: no more than are wanted.</param>
/// <param name="WorthSpent">Its worth less that of what goes back to the rack.</param>
/// <param name="Leftovers">What goes back, the largest face first.</param>
public sealed record BoardFit(Board Board, Reach Reach, int Gives, int Cut, Money WorthSpent, IReadOnlyList<Dimensions> Leftovers);

/// <summary>A board that does not give the piece.</summary>
/// <param name="BoardId">The board.</param>
/// <param name="Lacks">All that stops it; never none.</param>
public sealed record NearBoard(string BoardId, IReadOnlyList<BoardLack> Lacks);

/// <summary>Something that stops a board from giving a piece.</summary>
/// <param name="Reason">What it is.</param>
/// <param name="Needed">What the board would have to have, where that is a size.</param>
/// <param name="Has">What it has instead.</param>
public sealed record BoardLack(MissingReason Reason, Length? Needed = null, Length? Has = null)
{
    /// <summary>How much of what is needed is lacking, from 0 to 1; all of it where the reason is no size.</summary>
    public double Share => Needed is { Ticks: > 0 } needed && Has is { } has ? Math.Min(1, Math.Abs((double)(needed - has).Ticks) / needed.Ticks) : 1;
}
