using Offcuts.Domain;
using Offcuts.Planning.Mixing;

namespace Offcuts.Planning;

/// <summary>How many copies of a build a mix may have.</summary>
/// <param name="Least">Fewest.</param>
/// <param name="Most">Most.</param>
public readonly record struct MixRange(int Least, int Most);

/// <summary>How many copies of which builds use most of the stock, without a purchase.</summary>
/// <param name="Problem">The builds as a joint design (<see cref="JointDesign"/>), once each, and the boards that may be cut; its offers are not looked at.</param>
/// <param name="Ranges">How many copies of each build there may be, in their order.</param>
public sealed record MixQuestion(PlanningProblem Problem, IReadOnlyList<MixRange> Ranges);

/// <summary>What mixes are compared by: the wood that goes into the builds, then how many pieces that makes.</summary>
/// <param name="Wood">The finished wood in cubic ticks, each times its species' rate in minor units a board foot: whole, so that equal mixes are equal.</param>
/// <param name="Pieces">Parts and panels.</param>
public readonly record struct MixRank(Int128 Wood, long Pieces) : IComparable<MixRank>
{
    private const double CubicTicksPerBoardFoot = 144.0 * Length.TicksPerInch * Length.TicksPerInch * Length.TicksPerInch;

    /// <summary>What the finished wood is worth, in minor units.</summary>
    public double MinorUnits => (double)Wood / CubicTicksPerBoardFoot;

    /// <summary>The same, rounded down.</summary>
    public Money Worth => new((long)Math.Floor(MinorUnits));

    /// <summary>What one copy of each build counts.</summary>
    public static IReadOnlyList<MixRank> OfCopies(MixQuestion question) => new MixBuilds(question).Ranks;

    /// <inheritdoc/>
    public int CompareTo(MixRank other) => Wood != other.Wood ? Wood.CompareTo(other.Wood) : Pieces.CompareTo(other.Pieces);

    /// <summary>Whether the first ranks below the second.</summary>
    public static bool operator <(MixRank one, MixRank other) => one.CompareTo(other) < 0;

    /// <summary>Whether the first ranks no higher than the second.</summary>
    public static bool operator <=(MixRank one, MixRank other) => one.CompareTo(other) <= 0;

    /// <summary>Whether the first ranks above the second.</summary>
    public static bool operator >(MixRank one, MixRank other) => one.CompareTo(other) > 0;

    /// <summary>Whether the first ranks no lower than the second.</summary>
    public static bool operator >=(MixRank one, MixRank other) => one.CompareTo(other) >= 0;
}

/// <summary>A mix and its plan.</summary>
/// <param name="Counts">Copies of each design, in the order of the builds.</param>
/// <param name="Rank">What it is compared by.</param>
/// <param name="Problem">What was planned.</param>
/// <param name="Plan">A plan for all of it that buys no wood.</param>
public sealed record PlannedMix(IReadOnlyList<int> Counts, MixRank Rank, PlanningProblem Problem, Plan Plan);

/// <summary>The answer to a <see cref="MixQuestion"/>.</summary>
/// <param name="Best">The best mix found; null if none is known.</param>
/// <param name="AtMost">No mix ranks above this; null if that is not known.</param>
/// <param name="IsSure">Whether it is proved that no other is better; if there is no best, that there is no mix.</param>
/// <param name="Tried">How many mixes were looked at.</param>
public sealed record MixAnswer(PlannedMix? Best, MixRank? AtMost, bool IsSure, int Tried);

/// <summary>How far the search for a mix is.</summary>
/// <param name="Tried">How many mixes were looked at.</param>
/// <param name="Counts">Copies of each design in the best mix so far; null before the first.</param>
public sealed record MixProgress(int Tried, IReadOnlyList<int>? Counts);
