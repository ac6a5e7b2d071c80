using System.Diagnostics;
using System.Globalization;
using Offcuts.Domain;
using Offcuts.Planning;

namespace Offcuts.Benchmarks;

/// <summary>The demo's side table stretched over all lengths, and the answer against planning every length.</summary>
internal static class StretchTable
{
    /// <summary>Asks for the largest and the smallest length, and for the nearest to some, each with no purchase and with some money.</summary>
    /// <param name="demo">The folder of the demo's documents.</param>
    /// <param name="budget">Time for one answer.</param>
    /// <param name="perValue">Time for planning one value, for comparison; none is planned if it is zero.</param>
    /// <param name="output">Where the table goes.</param>
    public static void Print(string demo, TimeSpan budget, TimeSpan perValue, TextWriter output)
    {
        var design = DemoShop.Design(demo, "side-table");
        var parameter = design.Parameters.Single(each => each.Name == "length");
        var frame = DemoShop.Problem(demo, design);
        var options = parameter.Values.ToDictionary(value => value, value => Option(frame, design, value));
        output.WriteLine($"{parameter.Count} values, {options.Values.Max(option => option.Ways.Count)} ways to build each");
        output.WriteLine("limit  goal         answer  open  tried  seconds  agrees");
        foreach (var limit in new[] { 0L, 2000L, 6000L })
        {
            var truth = perValue == TimeSpan.Zero ? null : parameter.Values.ToDictionary(value => value, value => Truth(options[value], new Money(limit), perValue));
            foreach (var (goal, values) in Goals(parameter))
            {
                var began = Stopwatch.GetTimestamp();
                var answer = new StretchSearch(
                    new StretchQuestion(values, value => options[value], new Money(limit), CountsItems: false), new PlanLimits(budget), Planner.Solve, CancellationToken.None).Run();
                var seconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
                output.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{limit / 100m,5:0}  {goal,-10} {(answer.Best is { } best ? parameter.Text(best.Value, DisplayUnit.Inch) : "none"),8} {answer.Open.Count,5} {answer.Tried,6} {seconds,8:0.00}  {Agrees(answer, values, truth)}"));
            }
        }
    }

    private static IEnumerable<(string Goal, IReadOnlyList<long> Values)> Goals(Parameter parameter)
    {
        yield return ("largest", [.. parameter.Values.Reverse()]);
        yield return ("smallest", [.. parameter.Values]);
        foreach (var inches in new[] { 25, 36 })
        {
            yield return ($"near {inches}in", [.. parameter.Values.OrderBy(value => Math.Abs(value - Length.FromInches(inches).Ticks))]);
        }
    }

    private static string Agrees(StretchAnswer answer, IReadOnlyList<long> values, Dictionary<long, StretchVerdict>? truth)
    {
        if (truth is null)
        {
            return "not compared";
        }

        long? known = values.Where(value => truth[value] == StretchVerdict.Within).Select(value => (long?)value).FirstOrDefault();
        var unknown = values.TakeWhile(value => value != (answer.Best?.Value ?? known)).Count(value => truth[value] == StretchVerdict.Open);
        return answer.Best?.Value == known ? $"yes{(unknown > 0 ? $", {unknown} better ones were not decided in the time" : "")}"
            : answer.Best is { } best && truth[best.Value] == StretchVerdict.Open ? "better than what was found"
            : "NO";
    }

    private static StretchVerdict Truth(StretchOption option, Money limit, TimeSpan time)
    {
        var trials = option.Ways.Select(way => Trial.Run(way, limit, isEnoughWithin: true, new PlanLimits(time / option.Ways.Count), Planner.Solve, CancellationToken.None)).ToList();
        return trials.Exists(trial => trial.IsWithin) ? StretchVerdict.Within : trials.TrueForAll(trial => trial.IsOut) ? StretchVerdict.Out : StretchVerdict.Open;
    }

    private static StretchOption Option(PlanningProblem frame, Design design, long value)
    {
        var instance = DesignInstance.At(
            design, new Dictionary<string, long> { ["length"] = value }, (pointer, detail) => throw new InvalidOperationException($"{pointer}: {detail}"));
        return new(value, [.. Alternatives.Of(instance.Design, SpeciesCatalogue.Default.All).Select(way => frame with { Design = DesignResolver.Resolve(way.Design, SpeciesCatalogue.Default.All) })]);
    }
}
