namespace Offcuts.Domain;

/// <summary>How far a search has come.</summary>
/// <param name="Elapsed">Time since it began.</param>
/// <param name="Cost">Outlay of the best plan so far (<see cref="Plan.Outlay"/>); null before the first.</param>
/// <param name="Bound">The lower bound so far.</param>
/// <param name="Improved">The best plan, where it is new; not yet audited.</param>
public sealed record PlanProgress(TimeSpan Elapsed, Money? Cost, Money Bound, Plan? Improved);
