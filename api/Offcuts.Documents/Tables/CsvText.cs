using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using Offcuts.Domain;

namespace Offcuts.Documents.Tables;

/// <summary>A row of a table that a spreadsheet wrote.</summary>
/// <param name="Line">Line in the file where it begins, from 1.</param>
/// <param name="Cells">Its cells by the names of their columns, without spaces around them; empty cells are left out.</param>
internal sealed record CsvRow(int Line, IReadOnlyDictionary<string, string> Cells);

/// <summary>
/// Comma-separated values as spreadsheets write them: with commas, semicolons or tabs between them, with or without a byte order mark, with
/// quoted fields that may hold line breaks (RFC 4180).
/// </summary>
internal static class CsvText
{
    // A spreadsheet takes a cell that begins with one of these for a formula.
    private const string FormulaSigns = "=+-@";

    /// <summary>The rows below the heading.</summary>
    /// <param name="text">The file.</param>
    /// <param name="columns">The columns that it may have.</param>
    /// <param name="faults">Told of headings that are unknown or doubled, and of what is no table.</param>
    public static IReadOnlyList<CsvRow> Read(string text, IReadOnlyCollection<string> columns, DocumentFaults faults)
    {
        text = text.TrimStart('\uFEFF');
        var separator = SeparatorOf(text);
        using var parser = new CsvParser(new StringReader(text), new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = separator.ToString(),
            TrimOptions = TrimOptions.Trim,
            IgnoreBlankLines = true,
            BadDataFound = null,
            LineBreakInQuotedFieldIsBadData = false,
        });
        string[]? headings = null;
        var rows = new List<CsvRow>();
        while (parser.Read())
        {
            var cells = parser.Record ?? [];
            // The parser counts lines to where a row ends; one with line breaks in it began before.
            var line = parser.RawRow - parser.RawRecord.AsSpan().Trim("\r\n").Count('\n');
            if (headings is null)
            {
                // Some spreadsheets say their separator in a line of its own.
                if (cells is [var only, ..] && only.StartsWith("sep=", StringComparison.OrdinalIgnoreCase))
                {
                    continue;
                }

                headings = Headings(cells, columns, line, faults);
            }
            else if (cells.Any(cell => cell.Length > 0))
            {
                rows.Add(Row(cells, headings, line, separator, faults));
            }
        }

        if (headings is null)
        {
            faults.Add("#", null, "The file is empty: its first line should be the names of the columns, for instance species,thickness,width,length.");
        }

        return rows;
    }

    /// <summary>Writes a table.</summary>
    /// <param name="headings">The names of the columns.</param>
    /// <param name="rows">The cells of each row.</param>
    /// <param name="separator">A comma or a semicolon.</param>
    public static string Write(IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows, char separator)
    {
        using var text = new StringWriter();
        using (var writer = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { Delimiter = separator.ToString(), NewLine = "\r\n" }))
        {
            foreach (var row in rows.Prepend(headings))
            {
                foreach (var cell in row)
                {
                    writer.WriteField(cell.Length > 0 && FormulaSigns.Contains(cell[0], StringComparison.Ordinal) ? $"'{cell}" : cell);
                }

                writer.NextRecord();
            }
        }

        return text.ToString();
    }

    private static CsvRow Row(string[] cells, string[] headings, int line, char separator, DocumentFaults faults)
    {
        if (cells.Skip(headings.Length).Any(cell => cell.Length > 0))
        {
            faults.Add("#", line, $"This line has {cells.Length} cells under {headings.Length} headings: put quotes around a cell that holds a '{separator}'.");
        }

        return new(line, headings.Zip(cells).Where(cell => cell is { First.Length: > 0, Second.Length: > 0 })
            .ToDictionary(cell => cell.First, cell => Plain(cell.Second), StringComparer.Ordinal));
    }

    private static string[] Headings(string[] cells, IReadOnlyCollection<string> columns, int line, DocumentFaults faults)
    {
        var headings = cells.Select(cell => cell.Trim().ToLowerInvariant().Replace('_', ' ')).ToArray();
        foreach (var heading in headings.Where(heading => heading.Length > 0 && !columns.Contains(heading)))
        {
            var meant = Spelling.Nearest(heading, columns) is { } near ? $"Did you mean '{near}'?" : $"Known here: {string.Join(", ", columns)}.";
            faults.Add("#", line, $"There is no column {LengthText.Quote(heading)}. {meant}");
        }

        foreach (var twice in headings.Where(heading => heading.Length > 0).GroupBy(heading => heading, StringComparer.Ordinal).Where(same => same.Count() > 1))
        {
            faults.Add("#", line, $"The column {LengthText.Quote(twice.Key)} is there twice: leave one out.");
        }

        faults.ThrowIfAny();
        return headings;
    }

    private static string Plain(string cell) =>
        cell is ['\'', var sign, ..] && FormulaSigns.Contains(sign, StringComparison.Ordinal) ? cell[1..] : cell;

    private static char SeparatorOf(string text)
    {
        var heading = text.AsSpan();
        if (heading.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && heading.Length > 4 && heading[4] is (',' or ';' or '\t'))
        {
            return heading[4];
        }

        var end = heading.IndexOfAny('\r', '\n');
        heading = end < 0 ? heading : heading[..end];
        var (commas, semicolons, tabs) = (heading.Count(','), heading.Count(';'), heading.Count('\t'));
        return semicolons > commas ? ';' : tabs > commas ? '\t' : ',';
    }
}
