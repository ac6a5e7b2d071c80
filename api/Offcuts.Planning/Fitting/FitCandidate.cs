using Offcuts.Domain;

namespace Offcuts.Planning.Fitting;

/// <summary>A design on its way to a place.</summary>
internal sealed class FitCandidate(DesignReach reach, FitStock stock)
{
    private FitOutcome? outcome;

    public DesignReach Reach => reach;

    public string Reference => reach.Design.Reference;

    /// <summary>What its last plan came to; null before the first.</summary>
    public FitOutcome? Outcome
    {
        get => outcome;
        set => (outcome, Known) = (value, value?.Figures(stock.WeightOf) ?? default);
    }

    /// <summary>The figures of its last plan.</summary>
    public FitFigures Known { get; private set; }

    /// <summary>Whether it is being planned.</summary>
    public bool IsBusy { get; set; }

    /// <summary>Whether that plan is to be a settled one.</summary>
    public bool IsToBeSettled { get; set; }
}
