using System.Globalization;
using System.Text;

namespace Offcuts.Cli;

/// <summary>Keeps what others wrote from steering the terminal.</summary>
internal static class SafeText
{
    /// <summary>
    /// The text with control and formatting characters (escape sequences, line breaks, marks that turn the direction of writing)
    /// replaced by U+FFFD, so that a board named <c>ESC [2J</c> clears no screen.
    /// </summary>
    public static string Of(string? text)
    {
        if (text is null || !text.Any(IsUnsafe))
        {
            return text ?? "";
        }

        var safe = new StringBuilder(text.Length);
        foreach (var character in text)
        {
            safe.Append(IsUnsafe(character) ? '\uFFFD' : character);
        }

        return safe.ToString();
    }

    private static bool IsUnsafe(char character) =>
        char.GetUnicodeCategory(character) is UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
