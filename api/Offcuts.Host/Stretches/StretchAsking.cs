using System.Collections.Concurrent;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Planning;

namespace Offcuts.Host.Stretches;

/// <summary>What to aim at.</summary>
internal enum StretchGoal
{
    /// <summary>The largest value.</summary>
    Largest,

    /// <summary>The smallest value.</summary>
    Smallest,

    /// <summary>The value nearest to a wish; of two as near, the larger.</summary>
    Nearest,
}

/// <summary>A question between the wire and the planner.</summary>
internal sealed class StretchAsking
{
    private readonly PlanningProblem problem;
    private readonly PlanDesign named;
    private readonly SpeciesCatalogue catalogue;
    private readonly DesignSettings settings;
    private readonly Parameter parameter;
    private readonly StretchGoal goal;
    private readonly long wish;
    private readonly Money? spend;
    private readonly ConcurrentDictionary<long, IReadOnlyList<Alternative>> ways = [];

    private StretchAsking(
        (PlanningProblem Problem, PlanDesign Design, SpeciesCatalogue Catalogue) read, DesignSettings settings, Parameter parameter, StretchGoal goal, long wish, Money? spend)
    {
        (problem, named, catalogue) = read;
        (this.settings, this.parameter, this.goal, this.wish, this.spend) = (settings, parameter, goal, wish, spend);
    }

    /// <summary>What was asked for.</summary>
    /// <exception cref="OffcutsException">Something that cannot be.</exception>
    public static StretchAsking Read(StretchRequest asked, ProblemBuilder builder)
    {
        var faults = new Faults();
        var read = builder.Read(asked.Design, asked.Inline, asked.BudgetMs, asked.Seed, from: null, faults, mostMs: StretchMapping.MostMilliseconds);
        var design = read.Problem.Design;
        var settings = DesignSettings.Read(design, asked.With, asked.Choose, faults);
        var goal = faults.Word<StretchGoal>("#/goal", asked.Goal);
        var spend = asked.Spend is { } most ? faults.Money("#/spend", most, read.Problem.Shop.Currency) : (Money?)null;
        if ((goal == StretchGoal.Nearest) != (asked.Wish is not null))
        {
            faults.Add("#/wish", "Give a wish with the goal nearest, and with no other.");
        }

        if (settings.Values.ContainsKey(asked.Parameter))
        {
            faults.Add($"#/with/{asked.Parameter}", "This is the parameter whose value is to be found: leave it out.");
        }

        var parameter = DesignSettings.FindParameter(design, asked.Parameter, "#/parameter", faults);
        var wish = parameter is not null && asked.Wish is { } wished ? DesignSettings.ToValue(parameter, wished, "#/wish", faults) : 0;
        faults.ThrowIfAny();
        var asking = new StretchAsking(read, settings, parameter!, goal, wish ?? 0, spend);
        // Too many ways are a fault of the question, to be told before the search.
        asking.WaysOf(parameter!.Default);
        return asking;
    }

    /// <summary>The question to the planner.</summary>
    public StretchQuestion Question() => new(
        [.. goal switch
        {
            StretchGoal.Largest => parameter.Values.Reverse(),
            StretchGoal.Smallest => parameter.Values,
            StretchGoal.Nearest => parameter.Values.OrderBy(value => Math.Abs(value - wish)).ThenByDescending(value => value),
        }],
        value => new StretchOption(value, [.. WaysOf(value).Select(way => problem with { Design = DesignResolver.Resolve(way.Design, catalogue.All) })]),
        spend ?? Money.Zero, CountsItems: spend is not null);

    /// <summary>The answer as it is told.</summary>
    public StretchRecord ToRecord(StretchAnswer answer, TimeSpan elapsed) => StretchMapping.ToRecord(
        answer, named, parameter.Name, parameter.Kind, parameter.Count, problem.Shop.Currency, elapsed,
        (value, way) => settings.Answers.Concat(WaysOf(value)[way].Answers).ToDictionary(StringComparer.Ordinal));

    /// <summary>How far it is as it is told.</summary>
    public StretchProgressRecord ToRecord(StretchProgress progress) => StretchMapping.ToRecord(progress, parameter.Kind, parameter.Count);

    private IReadOnlyList<Alternative> WaysOf(long value) => ways.GetOrAdd(value, _ =>
        (settings with { Values = new Dictionary<string, long>(settings.Values, StringComparer.Ordinal) { [parameter.Name] = value } }).Ways(catalogue));
}
