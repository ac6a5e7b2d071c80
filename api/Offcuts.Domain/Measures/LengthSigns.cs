using System.Text;

namespace Offcuts.Domain;

/// <summary>Brings the signs that word processors and telephones put into sizes to plain ones.</summary>
internal static class LengthSigns
{
    /// <summary>Plain quotation marks, hyphens, spaces and fractions; single spaces; nothing at the ends.</summary>
    public static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var sign in text)
        {
            plain.Append(Of(sign));
        }

        plain.Replace("''", "\"");
        return string.Join(' ', plain.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>The plain signs for one sign; a fraction's begin with a space.</summary>
    internal static string Of(char sign) => sign switch
    {
        '\u2032' or '\u2018' or '\u2019' or '\u00B4' => "'",
        '\u2033' or '\u201C' or '\u201D' => "\"",
        '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2212' => "-",
        '\u2044' or '\u2215' => "/",
        '\u00D7' => "x",
        '\t' or '\u00A0' or '\u2007' or '\u2009' or '\u202F' => " ",
        _ => Fraction(sign) ?? sign.ToString(),
    };

    // Eighths are the finest fractions that have signs of their own; thirds, fifths and sevenths are no lengths.
    private static string? Fraction(char sign) => sign switch
    {
        '\u00BC' => " 1/4",
        '\u00BD' => " 1/2",
        '\u00BE' => " 3/4",
        '\u215B' => " 1/8",
        '\u215C' => " 3/8",
        '\u215D' => " 5/8",
        '\u215E' => " 7/8",
        _ => null,
    };
}
