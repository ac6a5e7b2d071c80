namespace Offcuts.Domain;

/// <summary>What builds cost that are planned one after another, each from what the one before leaves.</summary>
/// <param name="Builds">Their names in that order.</param>
/// <param name="MissingPieces">How many pieces are missing.</param>
/// <param name="TotalCost">All money, each build with its own orders.</param>
/// <param name="Outlay">Wood, charges and what further stops count: every order after the first is one.</param>
public sealed record BuildOrder(IReadOnlyList<string> Builds, int MissingPieces, Money TotalCost, Money Outlay);
