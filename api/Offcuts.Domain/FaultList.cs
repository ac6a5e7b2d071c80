using System.Globalization;

namespace Offcuts.Domain;

/// <summary>Collects what is wrong with an input, so that all of it is told at once.</summary>
internal sealed class FaultList
{
    private readonly List<InputFault> found = [];

    public IReadOnlyList<InputFault> Found => found;

    public void Add(string pointer, FormattableString detail) =>
        found.Add(new(pointer, detail.ToString(CultureInfo.InvariantCulture)));

    public void Text(string pointer, string? text, int longest, bool required = false)
    {
        if (required && string.IsNullOrWhiteSpace(text))
        {
            Add(pointer, $"It is empty: give a value.");
        }
        else if (text?.Length > longest)
        {
            Add(pointer, $"It has {text.Length} characters: give at most {longest}.");
        }
        else if (text is not null && text.Any(sign => char.IsControl(sign) && sign is not ('\n' or '\t')))
        {
            Add(pointer, $"It has control characters: leave them out.");
        }
    }

    public void Quantity(string pointer, int quantity) => Count(pointer, quantity, 1, Limits.MaxQuantity);

    public void Count(string pointer, int count, int least, int most)
    {
        if (count < least || count > most)
        {
            Add(pointer, $"{count}: give {least} to {most}.");
        }
    }

    public void Size(string pointer, Dimensions size)
    {
        Size(pointer, "thickness", size.Thickness);
        Size(pointer, "width", size.Width);
        Size(pointer, "length", size.Length);
    }

    public void Size(string pointer, string what, Length length)
    {
        if (length <= Length.Zero || length > Length.Max)
        {
            Add(pointer, $"The {what} is {LengthText.FormatExact(length)}: give more than zero and at most 100 m.");
        }
    }

    public void Price(string pointer, Money price)
    {
        if (price < Money.Zero || price.MinorUnits > MoneyText.MaxMinorUnits)
        {
            Add(pointer, $"{price.MinorUnits} minor units: give zero or more and at most {MoneyText.MaxMinorUnits}.");
        }
    }
}
