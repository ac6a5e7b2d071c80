using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Volumes as makers write them: <c>60 bd ft</c>, <c>0.2m3</c>.</summary>
public static partial class VolumeReading
{
    private const decimal Largest = 1_000_000m;

    /// <summary>Reads a volume; a number without a unit is board feet in a shop that measures in inches, else cubic metres.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="unit">The shop's unit.</param>
    /// <param name="cubicMetres">The volume in cubic metres, more than zero.</param>
    /// <param name="error">What is wrong and how to mend it.</param>
    public static bool TryParse(string text, DisplayUnit unit, out decimal cubicMetres, [NotNullWhen(false)] out string? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        cubicMetres = 0;
        error = null;
        var read = Pattern().Match(text.Trim());
        if (!read.Success || !decimal.TryParse(read.Groups["number"].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
        {
            error = $"{LengthText.Quote(text)} is no volume: give for instance 60 bd ft or 0.2 m3.";
            return false;
        }

        if (number is <= 0 or > Largest)
        {
            error = $"{LengthText.Quote(text)}: give a volume of more than zero and at most {Largest.ToString(CultureInfo.InvariantCulture)}.";
            return false;
        }

        var isBoardFeet = read.Groups["feet"].Success || (!read.Groups["metres"].Success && unit == DisplayUnit.Inch);
        cubicMetres = isBoardFeet ? number * BoardMeasure.CubicMetresPerBoardFoot : number;
        return true;
    }

    [GeneratedRegex(
        @"^(?<number>[0-9]+(\.[0-9]+)?|\.[0-9]+)\s*((?<feet>bf|bd\.?\s*ft\.?|board[\s-](foot|feet))|(?<metres>m3|m³|m\^3|cubic\s+met(re|er)s?))?$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex Pattern();
}
