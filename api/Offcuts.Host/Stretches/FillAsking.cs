using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Plans;
using Offcuts.Planning;

namespace Offcuts.Host.Stretches;

/// <summary>How many copies of a design there is wood for, between the wire and the planner.</summary>
internal sealed class FillAsking
{
    private const string Copies = "copies";

    private readonly PlanningProblem problem;
    private readonly PlanDesign named;
    private readonly IReadOnlyDictionary<string, string> answers;
    private readonly IReadOnlyList<Alternative> ways;
    private readonly int most;

    private FillAsking(PlanningProblem problem, PlanDesign named, IReadOnlyDictionary<string, string> answers, IReadOnlyList<Alternative> ways)
    {
        (this.problem, this.named, this.answers, this.ways) = (problem, named, answers, ways);
        most = ways.Max(way => DesignCopies.Most(way.Design, problem.Stock));
    }

    /// <summary>What was asked for.</summary>
    /// <exception cref="OffcutsException">Something that cannot be.</exception>
    public static FillAsking Read(FillRequest asked, ProblemBuilder builder)
    {
        var faults = new Faults();
        var (problem, named, catalogue) = builder.Read(asked.Design, asked.Inline, asked.BudgetMs, asked.Seed, from: null, faults, mostMs: StretchMapping.MostMilliseconds);
        var settings = DesignSettings.Read(problem.Design, asked.With, asked.Choose, faults);
        var (settled, _) = settings.Apply(catalogue, faults);
        faults.ThrowIfAny();
        return new FillAsking(problem, named, settings.Answers, [.. Alternatives.Of(settled, catalogue.All)
            .Select(way => way with { Design = DesignResolver.Resolve(way.Design, catalogue.All) })]);
    }

    /// <summary>The question to the planner: as many copies as need no wood to be bought.</summary>
    public StretchQuestion Question() => new(
        [.. Enumerable.Range(1, Math.Max(1, most)).Reverse().Select(copies => (long)copies)],
        copies => new StretchOption(copies, [.. ways.Select(way => problem with { Design = DesignCopies.Of(way.Design, (int)copies), Offers = [] })]),
        Money.Zero, CountsItems: false, IsMonotone: true);

    /// <summary>The answer as it is told.</summary>
    public StretchRecord ToRecord(StretchAnswer answer, TimeSpan elapsed) => StretchMapping.ToRecord(
        answer, named, Copies, ParameterKind.Count, Math.Max(1, most), problem.Shop.Currency, elapsed,
        (_, way) => answers.Concat(ways[way].Answers).ToDictionary(StringComparer.Ordinal));

    /// <summary>How far it is as it is told.</summary>
    public StretchProgressRecord ToRecord(StretchProgress progress) => StretchMapping.ToRecord(progress, ParameterKind.Count, Math.Max(1, most));
}
