namespace Offcuts.Domain;

/// <summary>A board that the shop does not have, and what it would save if it had.</summary>
/// <param name="Kind">Solid wood or a sheet.</param>
/// <param name="Species">Species id.</param>
/// <param name="Surface">How far it is milled.</param>
/// <param name="Size">Its size.</param>
/// <param name="Estimate">What it is worth by the prices of the linear program, which no single board reaches in whole: a guide to what is tried.</param>
/// <param name="Saves">What a plan with it spends less, found by planning again; nothing where such a plan was not found.</param>
public sealed record WorthHaving(BoardKind Kind, string Species, Surface Surface, Dimensions Size, Money Estimate, Money Saves);
