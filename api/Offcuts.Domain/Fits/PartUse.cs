namespace Offcuts.Domain;

/// <summary>What one board gives for one part or panel, where nothing else is cut from it.</summary>
/// <param name="Name">The part or panel.</param>
/// <param name="IsPanel">Whether it is a panel, glued up from strips.</param>
/// <param name="Wanted">How many the design asks for.</param>
/// <param name="Count">How many whole ones the board gives; of a panel, 0 where its strips are too narrow together.</param>
/// <param name="StripWidth">Of a panel, the width that its strips reach together after jointing; else zero.</param>
public sealed record PartUse(string Name, bool IsPanel, int Wanted, int Count, Length StripWidth);
