using System.Globalization;

namespace Offcuts.Domain;

/// <summary>Says which of all that its design leaves open a plan was made with.</summary>
public static class MadeWithText
{
    /// <summary><c>top = 42", shelves = 3, back = sheet</c>; empty if there is nothing.</summary>
    /// <param name="lengths">Lengths in millimetres by their names.</param>
    /// <param name="numbers">Other numbers by their names.</param>
    /// <param name="answers">Answers by choices.</param>
    /// <param name="unit">The unit of lengths.</param>
    public static string Of(
        IReadOnlyDictionary<string, decimal> lengths, IReadOnlyDictionary<string, decimal> numbers, IReadOnlyDictionary<string, string> answers, DisplayUnit unit) =>
        string.Join(", ", lengths.Select(length => $"{length.Key} = {LengthText.Format(Length.FromMillimetres(length.Value), unit)}")
            .Concat(numbers.Select(number => string.Create(CultureInfo.InvariantCulture, $"{number.Key} = {number.Value:0.######}")))
            .Concat(answers.Select(answer => $"{answer.Key} = {answer.Value}")));
}
