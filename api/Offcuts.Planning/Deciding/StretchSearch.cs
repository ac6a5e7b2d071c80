using System.Collections.Concurrent;
using Offcuts.Domain;
using Offcuts.Planning.Deciding;
using Offcuts.Planning.Search;

namespace Offcuts.Planning;

/// <summary>
/// Finds the best value of a parameter that stays within a limit. What fits is not always monotone in the value: other parts may shrink as one
/// grows, a panel may need one more sub-panel, a thickness may just be that of a board. So every value that would be better than the answer is looked at,
/// and is out only if a bound proves it. Halving the values only finds an answer early.
/// </summary>
/// <param name="question">The question.</param>
/// <param name="limits">Time for all of it.</param>
/// <param name="solve">The planner.</param>
/// <param name="cancellationToken">Ends it early, with what is known.</param>
/// <param name="progress">Told of every value that was looked at or planned, one at a time.</param>
public sealed class StretchSearch(
    StretchQuestion question, PlanLimits limits, Solving solve, CancellationToken cancellationToken, Action<StretchProgress>? progress = null)
{
    /// <summary>Values on either side of the answer that are planned.</summary>
    private const int NeighboursOnASide = 2;

    /// <summary>The part of the time in which the answer is sought; the rest is for the plans of its neighbours.</summary>
    private const double SearchShare = 0.75;

    private const int Workers = 2;
    private static readonly TimeSpan LeastTrial = TimeSpan.FromMilliseconds(50);

    private readonly SearchClock clock = new(limits.Budget, cancellationToken);
    private readonly SearchClock searching = new(limits.Budget * SearchShare, cancellationToken);
    private readonly PriceMemory memory = new();
    private readonly StretchVerdict?[] verdicts = new StretchVerdict?[question.Values.Count];
    private readonly ConcurrentDictionary<(int At, int Way), EarlierPlan> found = [];
    private readonly StretchedValue?[] planned = new StretchedValue?[question.Values.Count];
    private readonly Lock telling = new();
    private int tried;
    private int? bestTold;

    /// <summary>Searches until the answer is proved and its neighbours are planned, or until time is up.</summary>
    public StretchAnswer Run()
    {
        var best = Halve();
        best = Scan(best);
        best = TryOpen(best);
        var answer = best is { } found ? PlanWhole(found, (2 * NeighboursOnASide) + 1) : null;
        // What a quick look found, a plan must confirm: else it is as open as the better values.
        var isConfirmed = answer?.Verdict == StretchVerdict.Within;
        var better = Enumerable.Range(0, isConfirmed ? best!.Value : verdicts.Length).Where(at => verdicts[at] is not StretchVerdict.Out).Select(at => question.Values[at]);
        return new StretchAnswer(isConfirmed ? answer : null, [.. better], Neighbours(best), tried);
    }

    /// <summary>Some value that stays within the limit, found by halving: the best of all if fitting is monotone.</summary>
    private int? Halve()
    {
        int? best = null;
        for (var (from, to) = (0, verdicts.Length - 1); from <= to && !searching.IsOver;)
        {
            var middle = from + ((to - from) / 2);
            if (Look(middle) == StretchVerdict.Within)
            {
                (best, to) = (middle, middle - 1);
            }
            else
            {
                from = middle + 1;
            }
        }

        return best;
    }

    /// <summary>Looks at every better value, some at a time; ends at the first that stays within.</summary>
    private int? Scan(int? best)
    {
        const int AtATime = 4 * Workers;
        for (var from = 0; from < (best ?? verdicts.Length) && !searching.IsOver; from += AtATime)
        {
            var to = Math.Min(from + AtATime, best ?? verdicts.Length);
            Parallel.For(from, to, new ParallelOptions { MaxDegreeOfParallelism = Workers }, at => Look(at));
            best = Enumerable.Range(from, to - from).Where(at => verdicts[at] == StretchVerdict.Within).Select(at => (int?)at).FirstOrDefault() ?? best;
        }

        return best;
    }

    /// <summary>Searches for plans of better values that are still open, the best first, each for its share of the time.</summary>
    private int? TryOpen(int? best)
    {
        List<int> open = [.. Enumerable.Range(0, best ?? verdicts.Length).Where(at => verdicts[at] is null or StretchVerdict.Open)];
        if (question.IsMonotone)
        {
            // From what is known to be within upwards, as far as it goes.
            open.Reverse();
        }

        foreach (var (index, at) in open.Index())
        {
            if (searching.IsOver)
            {
                return best;
            }

            var share = searching.Left / Math.Min(open.Count - index, 8);
            var (verdict, result) = Trials(at, share > LeastTrial ? share : LeastTrial, isEnoughWithin: true);
            planned[at] = result;
            Learn(at, verdict);
            Tell(at, verdict, looked: 0);
            best = verdict == StretchVerdict.Within ? at : best;
            if (question.IsMonotone ? verdict != StretchVerdict.Within : best == at)
            {
                return best;
            }
        }

        return best;
    }

    private StretchVerdict Look(int at)
    {
        if (verdicts[at] is { } known)
        {
            return known;
        }

        var verdict = StretchVerdict.Out;
        foreach (var (index, way) in WaysOf(question.Values[at]).Index())
        {
            var limit = WoodLimit(way).MinorUnits;
            var seen = limit < 0 ? new Screened(0, null) : Screen.Look(way, limit, limits.Seed, memory, searching);
            verdict = limit >= 0 && seen.Cost <= limit ? StretchVerdict.Within
                : limit >= 0 && seen.Bound <= limit ? StretchVerdict.Open
                : verdict;
            if (seen.Plan is { } plan)
            {
                found[(at, index)] = plan;
            }

            if (verdict == StretchVerdict.Within)
            {
                break;
            }
        }

        Learn(at, verdict);
        Tell(at, verdict, looked: 1);
        return verdict;
    }

    private void Tell(int at, StretchVerdict verdict, int looked)
    {
        lock (telling)
        {
            tried += looked;
            bestTold = verdict == StretchVerdict.Within && !(bestTold <= at) ? at : bestTold;
            progress?.Invoke(new StretchProgress(tried, bestTold is { } best ? question.Values[best] : null));
        }
    }

    private void Learn(int at, StretchVerdict verdict)
    {
        verdicts[at] = verdict;
        if (question.IsMonotone && verdict == StretchVerdict.Out)
        {
            Array.Fill(verdicts, StretchVerdict.Out, 0, at);
        }
    }

    /// <summary>Plans the ways of one value against the limit.</summary>
    private (StretchVerdict Verdict, StretchedValue Planned) Trials(int at, TimeSpan time, bool isEnoughWithin)
    {
        var value = question.Values[at];
        var ways = WaysOf(value);
        StretchedValue? best = null;
        var isOpen = false;
        Money? bound = null;
        foreach (var (index, way) in ways.Index())
        {
            var trial = Trial.Run(found.TryGetValue((at, index), out var known) ? way with { Earlier = known } : way, WoodLimit(way), isEnoughWithin, limits with { Budget = time / ways.Count }, solve, cancellationToken);
            var least = Trial.LacksForSure(trial.Plan) ? (Money?)null : Counted(trial.Bound, trial.Plan);
            bound = bound is null || least < bound ? least ?? bound : bound;
            isOpen |= trial is { IsWithin: false, IsOut: false };
            if (best?.Plan is not { } before || (Rank(trial.Plan), 1).CompareTo((Rank(before), 0)) < 0)
            {
                best = new StretchedValue(value, trial.IsWithin ? StretchVerdict.Within : StretchVerdict.Out, index, trial.Plan, null);
            }

            if (isEnoughWithin && trial.IsWithin)
            {
                break;
            }
        }

        var verdict = best?.Verdict == StretchVerdict.Within ? StretchVerdict.Within : isOpen ? StretchVerdict.Open : StretchVerdict.Out;
        // What a screen or a trial proved before stays proved.
        verdict = verdict == StretchVerdict.Open && verdicts[at] == StretchVerdict.Out ? StretchVerdict.Out : verdict;
        return (verdict, (best ?? new StretchedValue(value, verdict, null, null, null)) with { Verdict = verdict, Bound = bound });
    }

    /// <summary>A value planned until its money is proved, or for its share of what is left.</summary>
    private StretchedValue PlanWhole(int at, int shares)
    {
        var share = clock.Left / shares;
        var (verdict, result) = Trials(at, share > LeastTrial ? share : LeastTrial, isEnoughWithin: false);
        // A plan that was found before stays the answer if this one is dearer.
        result = planned[at] is { Plan: { } before } && result.Plan is { } now && Rank(before).CompareTo(Rank(now)) < 0 ? planned[at]! with { Bound = result.Bound } : result;
        verdicts[at] = result.Verdict;
        return result with { Verdict = result.Verdict == StretchVerdict.Within ? result.Verdict : verdict };
    }

    private List<StretchedValue> Neighbours(int? best)
    {
        List<long> ascending = [.. question.Values.Order()];
        // Without an answer, the values that would be taken last.
        var middle = ascending.IndexOf(question.Values[best ?? question.Values.Count - 1]);
        List<long> beside = [.. Enumerable.Range(middle - NeighboursOnASide, (2 * NeighboursOnASide) + 1)
            .Where(place => place >= 0 && place < ascending.Count && (place != middle || best is null)).Select(place => ascending[place])];
        return [.. beside.Index().Select(each => PlanWhole(PlaceOf(each.Item), beside.Count - each.Index))];
    }

    private int PlaceOf(long value) => question.Values.Index().First(each => each.Item == value).Index;

    private IReadOnlyList<PlanningProblem> WaysOf(long value) =>
        [.. question.Option(value).Ways.Select(way => question.CountsItems ? Spending.AsPaid(way) : Spending.OfWood(way))];

    private Money WoodLimit(PlanningProblem way) =>
        question.CountsItems ? question.Limit - way.Design.ItemCost : question.Limit;

    private Money Counted(Money wood, Plan plan) => question.CountsItems ? wood + plan.ItemCost : wood;

    private (int Missing, long Cost) Rank(Plan plan) => (plan.MissingCount, Counted(plan.Outlay, plan).MinorUnits);
}
