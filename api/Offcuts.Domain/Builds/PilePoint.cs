namespace Offcuts.Domain;

/// <summary>What lay on the rack at the end of a day (UTC), free or held by plans.</summary>
/// <param name="Day">The day.</param>
/// <param name="Boards">How many boards and sheets.</param>
/// <param name="CubicMetres">Their wood.</param>
public sealed record PilePoint(DateOnly Day, int Boards, decimal CubicMetres);
