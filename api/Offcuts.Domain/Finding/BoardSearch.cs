namespace Offcuts.Domain;

/// <summary>What was found on the rack for a piece.</summary>
/// <param name="Fits">The boards that give at least one piece, the nearest fit first.</param>
/// <param name="Boards">How many entries of the inventory give at least one, listed or not.</param>
/// <param name="Gives">How many pieces all of them together give.</param>
/// <param name="Nearest">Where none does: the boards that come nearest, the nearest first.</param>
public sealed record BoardSearch(IReadOnlyList<BoardFit> Fits, int Boards, long Gives, IReadOnlyList<MissingPart> Nearest);

/// <summary>A board, or several alike, of which each gives at least one piece.</summary>
/// <param name="Board">The board, with as many alike as are free.</param>
/// <param name="Reach">How hard it is to get at.</param>
/// <param name="Gives">How many pieces one of them gives at most.</param>
/// <param name="Cut">How many are cut from the first of them: no more than are wanted.</param>
/// <param name="WorthSpent">Its worth less that of what goes back to the rack.</param>
/// <param name="Leftovers">What goes back, the largest face first.</param>
public sealed record BoardFit(Board Board, Reach Reach, int Gives, int Cut, Money WorthSpent, IReadOnlyList<Dimensions> Leftovers);
