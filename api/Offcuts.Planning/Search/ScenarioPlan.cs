namespace Offcuts.Planning.Search;

/// <summary>A choice of species with the searches for its components.</summary>
internal sealed class ScenarioPlan(Scenario scenario, IReadOnlyList<ComponentSearch> components)
{
    public Scenario Scenario => scenario;

    public IReadOnlyList<ComponentSearch> Components => components;

    public int MissingCount => scenario.Missing.Sum(part => part.Quantity);

    /// <summary>Whether every component has a plan for all that is wanted of it.</summary>
    public bool IsComplete => components.All(component => component.Best is { IsComplete: true });

    /// <summary>Money of the plan; only if it is complete.</summary>
    public long Money => components.Sum(component => component.Best!.Money);

    /// <summary>Second objective of the plan; only if it is complete.</summary>
    public double Worth => components.Sum(component => component.Best!.Worth);

    /// <summary>No plan with this choice costs less: the components share no board, so their bounds add up.</summary>
    public long Bound => components.Sum(component => component.RoundedBound);

    public bool Beats(ScenarioPlan? other) => IsComplete
        && (other is null || Money < other.Money || (Money == other.Money && (Scattered < other.Scattered
            || (Scattered == other.Scattered && Worth < other.Worth - 1e-6))));

    /// <summary>From how many batches the groups come that had better come from few.</summary>
    public int Scattered => scenario.Scattered;
}
