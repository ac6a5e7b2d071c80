using Offcuts.Domain;

namespace Offcuts.Planning;

/// <summary>A value of a parameter, and what building with it asks for.</summary>
/// <param name="Value">The value, as the parameter counts.</param>
/// <param name="Ways">The ways to build it, the preferred first; none where the design gives nothing that can be built.</param>
public sealed record StretchOption(long Value, IReadOnlyList<PlanningProblem> Ways);

/// <summary>Which value of a parameter stays within a limit.</summary>
/// <param name="Values">The values, the best first.</param>
/// <param name="Option">What building with a value asks for.</param>
/// <param name="Limit">The most to spend. Further stops are not spent, and count nothing here.</param>
/// <param name="CountsItems">Whether all that is paid counts, items and suppliers' charges too, or the wood alone.</param>
/// <param name="IsMonotone">Whether every plan for a value holds one for all that are less good, as with copies of a design; then what is out takes the better ones with it.</param>
public sealed record StretchQuestion(IReadOnlyList<long> Values, Func<long, StretchOption> Option, Money Limit, bool CountsItems, bool IsMonotone = false);

/// <summary>What is known of a value.</summary>
public enum StretchVerdict
{
    /// <summary>A plan stays within the limit.</summary>
    Within,

    /// <summary>It is proved that none does.</summary>
    Out,

    /// <summary>Neither is known.</summary>
    Open,
}

/// <summary>A value and what it costs.</summary>
/// <param name="Value">The value.</param>
/// <param name="Verdict">Whether it stays within the limit.</param>
/// <param name="Way">The way that was planned last; null if there is none.</param>
/// <param name="Plan">Its plan; null if there is none.</param>
/// <param name="Bound">No plan spends less, what counts for the limit together; null where nothing can have all parts.</param>
public sealed record StretchedValue(long Value, StretchVerdict Verdict, int? Way, Plan? Plan, Money? Bound);

/// <summary>How far the search for a value is.</summary>
/// <param name="Tried">How many values were looked at.</param>
/// <param name="Best">The best so far that stays within the limit; null before the first.</param>
public readonly record struct StretchProgress(int Tried, long? Best);

/// <summary>The answer to a <see cref="StretchQuestion"/>.</summary>
/// <param name="Best">The best value that stays within the limit; null if none is known to.</param>
/// <param name="Open">Values that would be better, of which it is not known; if there are none, the answer is proved.</param>
/// <param name="Neighbours">Values below and above the best, in ascending order.</param>
/// <param name="Tried">How many values were looked at.</param>
public sealed record StretchAnswer(StretchedValue? Best, IReadOnlyList<long> Open, IReadOnlyList<StretchedValue> Neighbours, int Tried)
{
    /// <summary>Whether no better value can stay within the limit.</summary>
    public bool IsSure => Open.Count == 0;
}
