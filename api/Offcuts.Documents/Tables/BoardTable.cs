using System.Security.Cryptography;
using System.Text;
using Offcuts.Domain;

namespace Offcuts.Documents.Tables;

/// <summary>What a table of boards says.</summary>
/// <param name="Added">Boards without an id: they are new.</param>
/// <param name="Changed">Boards that are in the store, as they were and as the table has them.</param>
/// <param name="Unchanged">How many boards are in the store just as the table has them.</param>
/// <param name="Mark">
/// Tells this content of new boards from any other, however the file was written; null if there are none. By it the same file is known again.
/// </param>
public sealed record BoardTableReading(IReadOnlyList<Board> Added, IReadOnlyList<(Board Before, Board After)> Changed, int Unchanged, string? Mark);

/// <summary>
/// Boards as a table for spreadsheets, one row a board. A row with an id is a board in the store; what its cells say is changed there, and what
/// was not changed since it was written stays exactly as it is. A row without one is a new board.
/// </summary>
public static class BoardTable
{
    /// <summary>The names of the columns, in the order in which they are written.</summary>
    public static IReadOnlyList<string> Columns { get; } = [.. BoardColumn.All.Select(column => column.Name)];

    /// <summary>Writes boards.</summary>
    /// <param name="boards">The boards.</param>
    /// <param name="unit">The unit of sizes, wherever they are exact in it.</param>
    /// <param name="separator">A comma; or a semicolon, and then decimal numbers have a comma.</param>
    public static string Write(IEnumerable<Board> boards, DisplayUnit unit, char separator) =>
        CsvText.Write(Columns, boards.Select(board => (IReadOnlyList<string>)[.. Cells(board, unit).Select(cell => separator == ';' ? TableNumber.WithComma(cell) : cell)]), separator);

    /// <summary>Reads a table.</summary>
    /// <param name="text">The file.</param>
    /// <param name="unit">The unit of bare numbers in rows that name none.</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <param name="find">The board in the store with an id; null if there is none.</param>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.Invalid"/>, with every fault and its line.</exception>
    public static BoardTableReading Read(string text, DisplayUnit unit, SpeciesCatalogue catalogue, Func<string, Board?> find)
    {
        var faults = new DocumentFaults("table");
        var rows = CsvText.Read(text, Columns, faults);
        if (rows.Count > Limits.MaxEntries)
        {
            faults.Add("#", null, FormattableString.Invariant($"There are {rows.Count} rows: give at most {Limits.MaxEntries}, and the others in another file."));
        }

        faults.ThrowIfAny();
        var (added, changed, unchanged) = (new List<Board>(), new List<(Board, Board)>(), 0);
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            var reader = new RowReader(row, unit, catalogue, faults);
            if (!row.Cells.TryGetValue("id", out var written))
            {
                added.Add(reader.New());
            }
            else if (!BoardIds.TryNormalise(written, out var id) || find(id) is not { } before)
            {
                faults.Add("#/id", row.Line, $"There is no board {LengthText.Quote(written)}: leave the id of a new board empty.");
            }
            else if (!ids.Add(id))
            {
                faults.Add("#/id", row.Line, $"Board {id} stands twice: leave one of the lines out.");
            }
            else if (reader.Changed(before) is var after && Cells(after, unit).SequenceEqual(Cells(before, unit), StringComparer.Ordinal))
            {
                unchanged++;
            }
            else
            {
                changed.Add((before, after));
            }
        }

        faults.ThrowIfAny();
        return new(added, changed, unchanged, MarkOf(added));
    }

    private static IEnumerable<string> Cells(Board board, DisplayUnit unit)
    {
        var own = TableNumber.UnitOf(board, unit);
        return BoardColumn.All.Select(column => column.Write(board, own));
    }

    // Of what the rows say, not of the file's bytes: a spreadsheet may write them otherwise each time. A column that came later counts only where
    // it says something, so that a table that was imported before there was one is still known.
    private static string? MarkOf(List<Board> added)
    {
        if (added.Count == 0)
        {
            return null;
        }

        var isThere = BoardColumn.All.Select(column => !column.IsLater || added.Exists(board => column.Write(board, DisplayUnit.Inch).Length > 0)).ToList();
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
            CsvText.Write(Counted(Columns), added.Select(board => Counted(Cells(board, DisplayUnit.Inch))), ','))));

        IReadOnlyList<string> Counted(IEnumerable<string> cells) => [.. cells.Zip(isThere).Where(cell => cell.Second).Select(cell => cell.First)];
    }
}
