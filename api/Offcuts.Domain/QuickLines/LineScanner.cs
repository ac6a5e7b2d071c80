using System.Text;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>A line with plain signs that is walked through from left to right, and the columns where its signs stood.</summary>
internal sealed class LineScanner
{
    private readonly List<int> columns = [];

    public LineScanner(string line)
    {
        var plain = new StringBuilder(line.Length);
        for (var at = 0; at < line.Length; at++)
        {
            var isTwoPrimes = at + 1 < line.Length && LengthSigns.Of(line[at]) == "'" && LengthSigns.Of(line[at + 1]) == "'";
            var signs = isTwoPrimes ? "\"" : LengthSigns.Of(line[at]);
            plain.Append(signs);
            columns.AddRange(Enumerable.Repeat(at + 1, signs.Length));
            at += isTwoPrimes ? 1 : 0;
        }

        columns.Add(line.Length + 1);
        Text = plain.ToString();
        SkipSpaces();
    }

    /// <summary>The line with plain signs.</summary>
    public string Text { get; }

    /// <summary>Where the next thing begins.</summary>
    public int At { get; private set; }

    /// <summary>Whether all is read.</summary>
    public bool IsAtEnd => At >= Text.Length;

    /// <summary>The column in the line as it was written, from 1.</summary>
    public int ColumnOf(int at) => columns[Math.Min(at, columns.Count - 1)];

    /// <summary>Takes what the pattern (which begins with <c>\G</c>) matches here, and the spaces behind it; null if it does not.</summary>
    public Match? Take(Regex pattern)
    {
        var match = pattern.Match(Text, At);
        if (!match.Success || match.Length == 0)
        {
            return null;
        }

        TakeSigns(match.Length);
        return match;
    }

    /// <summary>Takes so many signs, and the spaces behind them.</summary>
    public void TakeSigns(int count)
    {
        At += count;
        SkipSpaces();
    }

    private void SkipSpaces()
    {
        while (At < Text.Length && char.IsWhiteSpace(Text[At]))
        {
            At++;
        }
    }
}
