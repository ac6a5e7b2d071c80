using System.Runtime.ExceptionServices;
using Offcuts.Domain;
using Offcuts.Planning.Explaining;

namespace Offcuts.Planning.Fitting;

/// <summary>Plans a design; null if the plan must not be used.</summary>
public delegate Plan? PlanFit(SavedDesign design, PlanningProblem problem, PlanLimits limits, CancellationToken cancellationToken);

/// <summary>
/// Ranks designs, the best first. Each has figures that it can come to at best: by areas, then by the bound of a quick plan, then those of a careful
/// one. The design with the best of these is planned next; once it needs no further plan, it has its place, for no other can come before it. So only what
/// can still rank is planned.
/// </summary>
/// <remarks>
/// The first <see cref="CarefulPlaces"/> places are by careful plans, those behind them by quick ones. In the order <see cref="FitOrder.Cheapest"/> a careful plan is a
/// thorough one, or a quick one that is proved to cost the least. Where the pile is what counts it is a thorough one, or a settled one that is proved. No quick one is made before:
/// that says less of what a design eats than areas do. Of these bounds plans come to much the same part, and so no design is expected to come to a much larger part of its
/// own than those with the largest bounds did (<see cref="Expected"/>).
/// </remarks>
/// <param name="stock">What there is.</param>
/// <param name="question">What is asked.</param>
/// <param name="memory">What is known from before.</param>
/// <param name="plan">Makes the plans.</param>
public sealed class FitSearch(FitStock stock, FitQuestion question, IFitMemory memory, PlanFit plan)
{
    /// <summary>So many places are by careful plans.</summary>
    public const int CarefulPlaces = 10;

    /// <summary>
    /// A design may come to eat so much larger a part of its bound than any of those with the largest bounds did. (Of 200 random designs the settled plans of the 40
    /// with the largest bounds came to 0.77 to 0.88 of them, those of the first ten to up to 0.85.)
    /// </summary>
    private const decimal Slack = 1.02m;

    /// <summary>So large a part of the boards changes little in what a design eats of all of them.</summary>
    private const double FewNew = 0.02;

    /// <summary>Plans that are made at once, whatever the machine has, so that the ranking is the same everywhere.</summary>
    private const int Threads = 2;

    private static readonly PlanLimits Glance = new(TimeSpan.FromSeconds(1)) { Effort = PlanEffort.Glance };
    private static readonly PlanLimits Quick = new(TimeSpan.FromSeconds(2)) { Effort = PlanEffort.Quick };

    private static readonly PlanLimits Settled = new(TimeSpan.FromSeconds(2)) { Effort = PlanEffort.Settled };

    /// <summary>The limits of a thorough plan.</summary>
    public static PlanLimits Thorough { get; } = new(TimeSpan.FromSeconds(2));

    private readonly FitOrdering ordering = new(question.Order);
    private readonly List<string> failed = [];

    // Threads wait for each other at it, which a Lock cannot.
    private readonly object gate = new();
    private readonly MissingReasons reasons = new(stock.Shop);

    private List<FitCandidate> open = [];

    // Where the pile counts, those with the largest bounds, which are planned first.
    private List<FitCandidate> largest = [];
    private Action<FitEvent> tell = _ => { };
    private FitProgress progress = new(0, 0, 0, 0);
    private int places;
    private int tooDear;
    private int eatNone;

    /// <summary>Ranks them.</summary>
    /// <param name="designs">The designs of the store.</param>
    /// <param name="told">Told of progress and places as they come, never twice at once.</param>
    /// <param name="timeUp">Ends it early; what is known by then is placed.</param>
    /// <param name="cancellationToken">Gives it up.</param>
    public FitSummary Run(IReadOnlyList<SavedDesign> designs, Action<FitEvent> told, CancellationToken timeUp, CancellationToken cancellationToken)
    {
        tell = told;
        List<SavedDesign> asked = [.. designs.Where(design => question.Asks(design.Design))];
        progress = progress with { Designs = asked.Count };
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(timeUp, cancellationToken);
        LookAt(asked, stop);
        open = [.. open.Where(candidate => !IsLeftOut(candidate))];
        largest = question.Order != FitOrder.Pile ? []
            : [.. open.OrderBy(candidate => (candidate.Reach.Optimistic, candidate.Reference), ordering).Take(CarefulPlaces)];
        InThreads(() => Work(stop.Token), stop);
        cancellationToken.ThrowIfCancellationRequested();
        var isFinished = !timeUp.IsCancellationRequested || open.Count == 0 || places == question.Limit;
        if (!isFinished)
        {
            PlaceWhatIsKnown();
        }

        return new FitSummary(progress, designs.Count - asked.Count, tooDear, eatNone, failed, isFinished);
    }

    // A part of the pile that is asked for by name may be what has just come.
    private double MayBeNew => question.Order == FitOrder.Cheapest ? double.PositiveInfinity : question.Focus is null ? FewNew : 0;

    private void LookAt(List<SavedDesign> asked, CancellationTokenSource stop)
    {
        var next = -1;
        InThreads(
            () =>
            {
                for (var at = Interlocked.Increment(ref next); at < asked.Count && !stop.IsCancellationRequested; at = Interlocked.Increment(ref next))
                {
                    var reach = DesignReach.Of(stock, asked[at]);
                    var known = memory.Recall(reach, MayBeNew);
                    lock (gate)
                    {
                        open.Add(new FitCandidate(reach, stock) { Outcome = known });
                        progress = progress with { LookedAt = progress.LookedAt + 1, Remembered = progress.Remembered + (known is null ? 0 : 1) };
                        tell(progress);
                    }
                }
            },
            stop);
    }

    private void Work(CancellationToken stop)
    {
        while (Next(stop) is { } candidate)
        {
            var outcome = Plan(candidate, stop);
            lock (gate)
            {
                candidate.IsBusy = false;
                if (outcome is not null)
                {
                    candidate.Outcome = outcome;
                    progress = progress with { Planned = progress.Planned + 1 };
                    tell(progress);
                }
                else if (!stop.IsCancellationRequested)
                {
                    open.Remove(candidate);
                    largest.Remove(candidate);
                    failed.Add(candidate.Reference);
                }

                Monitor.PulseAll(gate);
            }
        }
    }

    private FitOutcome? Plan(FitCandidate candidate, CancellationToken stop)
    {
        // Few boards will do unless money is to be saved.
        var limits = candidate.IsToBeSettled ? Settled : candidate.Outcome is null ? Quick : Thorough;
        var made = limits.Effort == PlanEffort.Thorough ? Made(candidate.Reach.Problem(stock), limits)
            : FromFew(limits.Effort == PlanEffort.Quick ? Glance : limits) ?? Made(candidate.Reach.Problem(stock), limits);
        if (made is null || stop.IsCancellationRequested)
        {
            return null;
        }

        var outcome = FitOutcome.Of(made, candidate.Reach.Design.Design, limits.Effort);
        memory.Keep(candidate.Reach, outcome);
        return outcome;

        Plan? Made(PlanningProblem problem, PlanLimits within) => plan(candidate.Reach.Design, problem, within, stop);

        Plan? FromFew(PlanLimits within) => candidate.Reach.SmallProblem(stock) is { } few && Made(few, within) is { Missing.Count: 0 } found ? found : null;
    }

    /// <summary>Places what has its place, and gives the next to plan, waiting for it if need be; null at the end.</summary>
    private FitCandidate? Next(CancellationToken stop)
    {
        lock (gate)
        {
            while (!stop.IsCancellationRequested)
            {
                PlaceAll();
                if (places == question.Limit || open.Count == 0)
                {
                    break;
                }

                if (Best(candidate => !candidate.IsBusy && !IsSettled(candidate) && (IsExpectationKnown || largest.Contains(candidate))) is { } next)
                {
                    (next.IsBusy, next.IsToBeSettled) = (true, question.Order == FitOrder.Pile && places < CarefulPlaces && next.Outcome is not { Effort: PlanEffort.Settled });
                    return next;
                }

                Monitor.Wait(gate);
            }

            Monitor.PulseAll(gate);
            return null;
        }
    }

    private void PlaceAll()
    {
        while (places < question.Limit && Best(_ => true) is { IsBusy: false } best && IsSettled(best))
        {
            open.Remove(best);
            if (!IsLeftOut(best))
            {
                Place(best, IsSure(best));
            }
        }
    }

    private void PlaceWhatIsKnown()
    {
        foreach (var candidate in open.Where(candidate => candidate.Outcome is not null && !IsLeftOut(candidate))
            .OrderBy(candidate => (candidate.Known, candidate.Reference), ordering).Take(question.Limit - places))
        {
            Place(candidate, isSure: false);
        }
    }

    private void Place(FitCandidate candidate, bool isSure)
    {
        var outcome = candidate.Outcome!;
        tell(new FitPlace(
            ++places, candidate.Reach.Design, outcome with { Missing = [.. outcome.Missing.Select(part => Explained(candidate.Reach.Design.Design, part))] },
            candidate.Known, isSure));
    }

    private FitCandidate? Best(Func<FitCandidate, bool> among) => open.Where(among).MinBy(candidate => (FiguresOf(candidate), candidate.Reference), ordering);

    /// <summary>The best that it can still come to.</summary>
    private FitFigures FiguresOf(FitCandidate candidate) => IsSettled(candidate) ? candidate.Known
        : question.Order == FitOrder.Pile ? Expected(candidate.Reach.Optimistic)
        : candidate.Outcome is { } outcome ? candidate.Reach.Optimistic with { Cost = outcome.ItemCost + outcome.WoodBound }
        : candidate.Reach.Optimistic;

    /// <summary>Whether those with the largest bounds are planned. Until then no other is, so that the expectation is the same on every run.</summary>
    private bool IsExpectationKnown => places >= CarefulPlaces || largest.TrueForAll(IsSettled);

    /// <summary>What a design may come to that could come to so much by areas, judging by those that could come to most.</summary>
    private FitFigures Expected(FitFigures optimistic)
    {
        if (!IsExpectationKnown)
        {
            return optimistic;
        }

        var part = largest.Select(candidate => candidate.Reach.Optimistic.Eaten == 0 ? 1 : candidate.Known.Eaten / candidate.Reach.Optimistic.Eaten).DefaultIfEmpty(1).Max();
        return optimistic with { Eaten = optimistic.Eaten * Math.Min(1, part * Slack) };
    }

    /// <summary>Whether it needs no further plan.</summary>
    private bool IsSettled(FitCandidate candidate) => candidate.Outcome is not null && (places >= CarefulPlaces || IsSure(candidate));

    private bool IsSure(FitCandidate candidate) => candidate.Outcome is { } outcome
        && (outcome.Effort == PlanEffort.Thorough || (outcome.IsProved && (question.Order == FitOrder.Cheapest || outcome.Effort == PlanEffort.Settled)));

    /// <summary>What finishing it takes, or at least takes. Further stops count in the choice and in the bound, but nobody is paid for them.</summary>
    private Money LeastSpent(FitCandidate candidate) => candidate.Outcome is not { } outcome ? candidate.Reach.Optimistic.Cost
        : IsSettled(candidate) ? outcome.Cost
        : stock.Shop.Shop.SecondStop == Money.Zero ? outcome.ItemCost + outcome.WoodBound
        : candidate.Reach.Optimistic.Cost;

    private bool IsLeftOut(FitCandidate candidate)
    {
        var figures = FiguresOf(candidate);
        if (question.Focus is not null && figures.Eaten == 0)
        {
            eatNone++;
            return true;
        }

        if (question.MostMoney is { } most && (figures.Missing > 0 || LeastSpent(candidate) > most))
        {
            tooDear++;
            return true;
        }

        return false;
    }

    // The plan was made from what the design can touch, and so knows nothing of what comes close; nor does one of before of what has left since.
    private MissingPart Explained(Design design, MissingPart missing) =>
        design.Parts.FirstOrDefault(part => part.Name == missing.Name) is { } part ? reasons.OfPart(part, missing.Quantity, part.Species) ?? missing
        : design.Panels.FirstOrDefault(panel => panel.Name == missing.Name) is { } panel ? reasons.OfPanel(panel, missing.Quantity, panel.Species) ?? missing
        : missing;

    // The search keeps its threads for seconds, so it takes none from the pool. A fault in one ends the others, and is thrown where someone can hear it.
    private void InThreads(Action work, CancellationTokenSource stop)
    {
        ExceptionDispatchInfo? fault = null;
        var threads = Enumerable.Range(0, Threads).Select(_ => new Thread(() =>
        {
            try
            {
                work();
            }
            catch (Exception thrown)
            {
                lock (gate)
                {
                    fault ??= ExceptionDispatchInfo.Capture(thrown);
                    stop.Cancel();
                    Monitor.PulseAll(gate);
                }
            }
        })).ToList();
        threads.ForEach(thread => thread.Start());
        threads.ForEach(thread => thread.Join());
        fault?.Throw();
    }
}
