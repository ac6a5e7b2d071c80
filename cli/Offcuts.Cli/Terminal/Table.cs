namespace Offcuts.Cli;

/// <summary>
/// A plain table: columns two spaces apart, a heading, one line a row. Written here because a table library costs a tenth of a
/// second at start, which is more than the listing itself.
/// </summary>
/// <param name="headings">Headings; one that begins with <c>&gt;</c> sets its column to the right.</param>
internal sealed class Table(params string[] headings)
{
    private const string Gap = "  ";
    private const int NarrowestCut = 6;
    private readonly List<string[]> rows = [];

    /// <summary>Adds a row; cells are made safe for a terminal.</summary>
    public void Add(params IEnumerable<string?> cells) => rows.Add([.. cells.Select(SafeText.Of)]);

    /// <summary>Writes the table; on a screen too narrow for it, the widest columns of words lose their ends, but never a number or size.</summary>
    public void Write(Terminal terminal)
    {
        var names = headings.Select(heading => heading.TrimStart('>')).ToArray();
        var widths = Widths(names, terminal.Width);
        terminal.Out.WriteLine(terminal.Bold(Line(names, widths)));
        foreach (var row in rows)
        {
            terminal.Out.WriteLine(Line(row, widths));
        }
    }

    private int[] Widths(string[] names, int screen)
    {
        var widths = names.Select((name, column) => Math.Max(name.Length, rows.Max(row => (int?)row[column].Length) ?? 0)).ToArray();
        var words = Enumerable.Range(0, widths.Length).Where(column => headings[column][0] != '>').ToList();
        while (widths.Sum() + (Gap.Length * (widths.Length - 1)) > screen
            && words.MaxBy(column => widths[column]) is var widest && widths[widest] > NarrowestCut)
        {
            widths[widest]--;
        }

        return widths;
    }

    private string Line(string[] cells, int[] widths) => string.Join(Gap, cells.Select((cell, column) =>
    {
        var shown = cell.Length <= widths[column] ? cell : string.Concat(cell.AsSpan(0, widths[column] - 1), "…");
        return headings[column][0] == '>' ? shown.PadLeft(widths[column]) : shown.PadRight(widths[column]);
    })).TrimEnd();
}
