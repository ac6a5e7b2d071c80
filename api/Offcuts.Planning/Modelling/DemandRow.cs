using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>One thing to be covered: the pieces of a part, or the width of one sub-panel.</summary>
internal abstract record DemandRow(int Index, string Name, Appearance Appearance, Length Thickness, IReadOnlyList<string> Species)
{
    /// <summary>How much is asked: pieces of a part, or ticks of net width.</summary>
    public abstract long Needed { get; }

    /// <summary>An amount as linear programs count it: pieces of a part, or in parts of the whole sub-panel.</summary>
    public virtual double Scaled(long amount) => amount;

    /// <summary>The most that can count for it.</summary>
    public virtual long MostCounted => Needed;

    /// <summary>Kinds of defects that it may contain.</summary>
    public IReadOnlyList<string> Tolerates { get; init; } = [];

    /// <summary>The batches that it may be of; null where any will do.</summary>
    public IReadOnlyList<string>? Batches { get; init; }

    /// <summary>The largest finished thickness that will do.</summary>
    public virtual Length MostThickness => Thickness;

    /// <summary>Whether it may contain defects of all these kinds.</summary>
    public bool MayHold(IReadOnlyList<string> kinds) => kinds.All(kind => DefectKinds.Tolerates(Tolerates, kind));
}

/// <summary>
/// A part's pieces. A piece counts as many units as all its ways to be laminated can share: with one number of layers n, which is
/// all that a plan has, a whole piece counts n and a layer 1.
/// <c>LayerCounts</c>, in ascending order, are the numbers of layers from which it may be glued; none if it must be in one piece.
/// </summary>
internal sealed record PartRow(
    int Index, string Name, Appearance Appearance, Length Thickness, IReadOnlyList<string> Species,
    int Quantity, Length Width, Length Length, bool MayTurn, IReadOnlyList<int> LayerCounts)
    : DemandRow(Index, Name, Appearance, Thickness, Species)
{
    /// <summary>The largest finished size that will do; the other sizes are the least.</summary>
    public required Dimensions Most { get; init; }

    public override Length MostThickness => Most.Thickness;

    public override long Needed => (long)Quantity * Units;

    /// <summary>What a whole piece counts: the least common multiple of the numbers of layers.</summary>
    public int Units { get; } = LayerCounts.Aggregate(1, (units, count) => units * count / Gcd(units, count));

    private static int Gcd(int a, int b) => b == 0 ? a : Gcd(b, a % b);
}

/// <summary>
/// One sub-panel of one copy of a panel. <c>Width</c> is its share if all are equal. Where there are several, one may be narrower if another is wider,
/// up to <c>Most</c> (see <see cref="SplitPanel"/>).
/// </summary>
internal sealed record StripRow(
    int Index, string Name, Appearance Appearance, Length Thickness, IReadOnlyList<string> Species,
    int Family, int Copy, int SubPanel, Length Width, Length Most, Length Length, Length Narrowest, Length Widest)
    : DemandRow(Index, Name, Appearance, Thickness, Species)
{
    public override long Needed => Width.Ticks;

    public override double Scaled(long amount) => (double)amount / Needed;

    public override long MostCounted => Most.Ticks;

    /// <summary>What it could still take of the panel's width, in ticks.</summary>
    /// <param name="made">What the strips of every row reach.</param>
    public long Room(long[] made) => Math.Max(0, Most.Ticks - made[Index]);
}
