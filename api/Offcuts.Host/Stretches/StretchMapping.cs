using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Plans;
using Offcuts.Planning;
using Offcuts.Storage;

namespace Offcuts.Host.Stretches;

/// <summary>Answers from the planner to the wire.</summary>
internal static class StretchMapping
{
    /// <summary>The client waits for the answer, and gives up after half a minute.</summary>
    public const int MostMilliseconds = 20_000;

    private const int MostOpenShown = 20;

    /// <summary>The answer as it is told.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="design">The design as it is listed.</param>
    /// <param name="parameter">What was sought.</param>
    /// <param name="kind">What its values count.</param>
    /// <param name="values">How many values there are.</param>
    /// <param name="currency">The shop's currency.</param>
    /// <param name="elapsed">How long it took.</param>
    /// <param name="answersOf">The answers to choices of a way to build a value.</param>
    public static StretchRecord ToRecord(
        StretchAnswer answer, PlanDesign design, string parameter, ParameterKind kind, int values, string currency, TimeSpan elapsed,
        Func<long, int, IReadOnlyDictionary<string, string>> answersOf)
    {
        return new(
            design, parameter, currency, answer.Best is { } best ? Told(best) : null, answer.IsSure, [.. answer.Open.Take(MostOpenShown).Select(Number)], answer.Open.Count,
            [.. answer.Neighbours.Select(Told)], values, answer.Tried, ResultMapping.Milliseconds(elapsed));

        decimal Number(long value) => LengthMm(value, kind) ?? value;

        decimal? InCurrency(Money? money) => money is { } known ? MoneyText.ToDecimal(known, currency) : null;

        StretchedValueRecord Told(StretchedValue value) => new(
            LengthMm(value.Value, kind), Count(value.Value, kind),
            Words.Of(value.Verdict), InCurrency(value.Plan?.Outlay), InCurrency(value.Plan?.ItemCost), InCurrency(value.Bound),
            value.Plan?.MissingCount,
            value.Way is { } way ? answersOf(value.Value, way) : new Dictionary<string, string>());
    }

    /// <summary>How far it is as it is told.</summary>
    public static StretchProgressRecord ToRecord(StretchProgress progress, ParameterKind kind, int values) =>
        new(values, progress.Tried, LengthMm(progress.Best, kind), Count(progress.Best, kind));

    private static decimal? LengthMm(long? value, ParameterKind kind) => kind == ParameterKind.Length && value is { } ticks ? Length.FromTicks(ticks).Millimetres : null;

    private static int? Count(long? value, ParameterKind kind) => kind == ParameterKind.Count ? (int?)value : null;
}
