using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>
/// One thing to be made: a blank, or the strips of a sub-panel. The species are those of this choice; the finished width of a sub-panel is the width
/// that its strips must reach together.
/// </summary>
internal abstract record Job(string Name, int Copy, IReadOnlyList<string> Species, Appearance Appearance, Dimensions Finished);

/// <summary>One copy of a part.</summary>
internal sealed record PartJob(string Name, int Copy, IReadOnlyList<string> Species, Appearance Appearance, Dimensions Finished, bool MayTurn)
    : Job(Name, Copy, Species, Appearance, Finished);

/// <summary>One sub-panel of one copy of a panel.</summary>
internal sealed record StripJob(
    string Name, int Copy, IReadOnlyList<string> Species, Appearance Appearance, Dimensions Finished, int SubPanel, Length Narrowest, Length Widest)
    : Job(Name, Copy, Species, Appearance, Finished);
