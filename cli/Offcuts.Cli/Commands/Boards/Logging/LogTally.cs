using System.Globalization;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>What a session has logged so far, so that the last of it can be taken back.</summary>
internal sealed class LogTally(DisplayUnit unit)
{
    private readonly List<BoardRecord> boards = [];

    /// <summary>The last board, or null.</summary>
    public BoardRecord? Last => boards.Count > 0 ? boards[^1] : null;

    /// <summary>Counts a board.</summary>
    public void Add(BoardRecord board) => boards.Add(board);

    /// <summary>Takes the last board off again.</summary>
    public void RemoveLast() => boards.RemoveAt(boards.Count - 1);

    /// <summary>The running total: pieces, and the volume of the solid wood.</summary>
    public string Total()
    {
        var pieces = boards.Sum(board => board.Quantity);
        var solid = boards.Where(board => board.Kind != "sheet").Sum(board => board.Quantity * BoardMeasure.CubicMetres(Size(board)));
        return string.Create(CultureInfo.InvariantCulture, $"{pieces} {(pieces == 1 ? "piece" : "pieces")}, {VolumeText.OfCubicMetres(solid, unit)}");
    }

    private static Dimensions Size(BoardRecord board) => Lengths.Size(board.ThicknessMm, board.WidthMm, board.LengthMm);
}
