using Offcuts.Planning.Modelling;
using Offcuts.Planning.Pricing;

namespace Offcuts.Planning.Search;

/// <summary>
/// Does a step of the search two times at once, each time with its own dice and pricer. Always two, whatever the machine has, so that the plan is the
/// same everywhere.
/// </summary>
internal sealed class TwoAtATime(PlanningModel model, PatternPricer pricer, PlansAtHand hand, Random random)
{
    /// <summary>How often a step is done.</summary>
    public const int Times = 2;

    private readonly PatternPricer[] pricers = [pricer, new PatternPricer(model)];

    /// <summary>A step: the pricer, the dice and where to put patterns that are found; gives plans, null where there is none.</summary>
    public delegate IReadOnlyList<Solution?> Step(PatternPricer pricing, Random dice, Action<Pattern> found);

    /// <summary>Prepares both steps one after the other, does them at once, and takes what they found in the order of their preparation.</summary>
    public void Run(Func<int, Step> prepare)
    {
        var tries = pricers.Select((each, n) => (Pricer: each, Step: prepare(n), Dice: new Random(random.Next()), Found: new List<Pattern>())).ToList();
        var solutions = new IReadOnlyList<Solution?>[tries.Count];
        Parallel.For(0, tries.Count, at => solutions[at] = tries[at].Step(tries[at].Pricer, tries[at].Dice, tries[at].Found.Add));
        hand.Keep(tries.SelectMany(each => each.Found));
        foreach (var solution in solutions.SelectMany(each => each))
        {
            hand.Offer(solution);
        }
    }
}
