using System.Text;

namespace Offcuts.Pictures.Drawing;

/// <summary>
/// How much room text takes. The reader's font is not known, so the widths are those of a wide common sans-serif
/// (in thousandths of the font size, read off its metrics and rounded up by eye).
/// </summary>
internal static class Lettering
{
    /// <summary>Distance between two lines, in font sizes.</summary>
    public const decimal LineHeight = 1.2m;

    /// <summary>Width of one line.</summary>
    public static decimal Width(string text, decimal fontSize, bool bold = false) =>
        text.EnumerateRunes().Sum(rune => Thousandths(rune)) * fontSize * (bold ? 1.08m : 1m) / 1000m;

    /// <summary>The text, cut off with an ellipsis if it is wider than there is room.</summary>
    public static string Shorten(string text, decimal fontSize, decimal room, bool bold = false)
    {
        if (Width(text, fontSize, bold) <= room)
        {
            return text;
        }

        var left = room - Width("…", fontSize, bold);
        var kept = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            left -= Width(rune.ToString(), fontSize, bold);
            if (left < 0)
            {
                break;
            }

            kept.Append(rune.ToString());
        }

        return $"{kept.ToString().TrimEnd()}…";
    }

    /// <summary>The text in as many lines as it takes, broken between words; a word wider than the room is cut off.</summary>
    public static IReadOnlyList<string> Wrap(string text, decimal fontSize, decimal room)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && Width($"{line} {word}", fontSize) > room)
            {
                lines.Add(line);
                line = "";
            }

            line = line.Length == 0 ? Shorten(word, fontSize, room) : $"{line} {word}";
        }

        lines.Add(line);
        return lines;
    }

    private static int Thousandths(Rune rune) => rune.Value switch
    {
        >= 0x1100 => 1050,
        'm' or 'w' or 'M' or 'W' or '@' or '%' => 1000,
        ' ' or 'i' or 'l' or 'j' or '.' or ',' or ':' or ';' or '\'' or '|' => 330,
        't' or 'f' or 'r' or '(' or ')' or '/' or '-' or '"' => 460,
        >= 'A' and <= 'Z' => 760,
        <= 0x7F => 640,
        _ => 800,
    };
}
