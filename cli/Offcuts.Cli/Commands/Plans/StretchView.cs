using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>The best value of something, with its neighbours, as a person reads it.</summary>
internal static class StretchView
{
    private const int MostOpen = 5;

    /// <summary>The verdict and the table of values.</summary>
    public static void Write(StretchRecord answer, string verdict, DisplayUnit unit, Run run)
    {
        run.Terminal.Out.WriteLine(run.Terminal.Bold(SafeText.Of($"{answer.Design.Name}: {answer.Parameter}")));
        run.Terminal.Out.WriteLine(SafeText.Of(verdict));
        var table = new Table(" ", $">{answer.Parameter.ToUpperInvariant()}", ">WOOD", ">ITEMS", ">AT LEAST", "NOTE");
        foreach (var value in answer.Neighbours.Append(answer.Best).OfType<StretchedValueRecord>().OrderBy(value => value.LengthMm ?? value.Count))
        {
            table.Add(
                value == answer.Best ? "->" : "", Text(value, unit), Money(value.WoodCost), Money(value.ItemCost), Money(value.CostAtLeast),
                value.Missing > 0 ? string.Create(CultureInfo.InvariantCulture, $"{value.Missing} missing") : Answers(value));
        }

        run.Terminal.Out.WriteLine();
        table.Write(run.Terminal);

        string? Money(decimal? amount) => amount is { } known ? Price.Of(known, answer.Currency) : null;
    }

    /// <summary>A value.</summary>
    public static string Text(StretchedValueRecord value, DisplayUnit unit) =>
        value.LengthMm is { } length ? Text(length, unit) : (value.Count ?? 0).ToString(CultureInfo.InvariantCulture);

    /// <summary>How far a search is.</summary>
    /// <param name="far">How far.</param>
    /// <param name="what">What is tried.</param>
    /// <param name="unit">The unit of lengths.</param>
    public static string Text(StretchProgressRecord far, string what, DisplayUnit unit)
    {
        var best = far.LengthMm is { } length ? Text(length, unit) : far.Count?.ToString(CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"Trying {what}: {far.Tried} of {far.Values} looked at{(best is null ? "" : $", best so far {best}")}");
    }

    /// <summary>The first of the values of which it is not known.</summary>
    public static string OpenValues(StretchRecord answer, DisplayUnit unit)
    {
        var isLength = answer.Best?.LengthMm is not null;
        var shown = answer.OpenValues.Take(MostOpen).Select(value => isLength ? Text(value, unit) : value.ToString(CultureInfo.InvariantCulture));
        return string.Join(", ", answer.OpenCount > MostOpen ? shown.Append("...") : shown);
    }

    private static string Answers(StretchedValueRecord value) => string.Join(", ", value.Choices.Select(choice => $"{choice.Key} = {choice.Value}"));

    private static string Text(decimal millimetres, DisplayUnit unit) => LengthText.Format(Length.FromMillimetres(millimetres), unit);
}
