using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary>Boards between the wire and the domain.</summary>
internal static class BoardMapping
{
    private const int MaxQuantity = 10_000;
    private const int MaxDefects = 100;

    /// <summary>The board that was entered; the store gives it the time, and its id if it is new.</summary>
    public static Board ToBoard(BoardEntry entry, string id, string at, Faults faults)
    {
        faults.Text($"{at}/species", entry.Species, 80, required: true);
        faults.Text($"{at}/place", entry.Place, 200);
        faults.Text($"{at}/source", entry.Source, 200);
        faults.Text($"{at}/note", entry.Note, 2000);
        if (entry.Quantity is < 1 or > MaxQuantity)
        {
            faults.Add($"{at}/quantity", $"{entry.Quantity}: give 1 to {MaxQuantity}.");
        }

        var size = new Dimensions(
            faults.Millimetres($"{at}/thicknessMm", entry.ThicknessMm),
            faults.Millimetres($"{at}/widthMm", entry.WidthMm),
            faults.Millimetres($"{at}/lengthMm", entry.LengthMm));
        return new Board
        {
            Id = id,
            Kind = faults.Word<BoardKind>($"{at}/kind", entry.Kind),
            Species = entry.Species,
            Size = size,
            Quantity = entry.Quantity,
            Surface = faults.Word<Surface>($"{at}/surface", entry.Surface),
            Appearance = faults.Word<Appearance>($"{at}/appearance", entry.Appearance),
            Status = faults.Word<BoardStatus>($"{at}/status", entry.Status),
            Defects = ToDefects(entry.Defects ?? [], size, $"{at}/defects", faults),
            Place = entry.Place,
            Source = entry.Source,
            Note = entry.Note,
            LoggedAt = default,
        };
    }

    public static BoardRecord ToRecord(Board board) => new(
        board.Id, board.LoggedAt, board.Species,
        board.Size.Thickness.Millimetres, board.Size.Width.Millimetres, board.Size.Length.Millimetres,
        Words.Of(board.Kind), board.Quantity, Words.Of(board.Surface), Words.Of(board.Appearance), Words.Of(board.Status),
        [.. board.Defects.Select(defect => new DefectRecord(
            defect.Kind, defect.Area.X.Millimetres, defect.Area.Y.Millimetres, defect.Area.Length.Millimetres, defect.Area.Width.Millimetres))],
        board.Place, board.Source, board.Note);

    private static List<Defect> ToDefects(IReadOnlyList<DefectRecord> records, Dimensions board, string at, Faults faults)
    {
        if (records.Count > MaxDefects)
        {
            faults.Add(at, $"There are {records.Count} defects: give at most {MaxDefects}.");
            return [];
        }

        var defects = new List<Defect>();
        foreach (var (index, record) in records.Index())
        {
            var here = $"{at}/{index}";
            if (record is null)
            {
                faults.Add(here, "It is null: give a defect or leave it out.");
                continue;
            }

            faults.Text($"{here}/kind", record.Kind, 80, required: true);
            var area = new Rect(
                faults.Millimetres($"{here}/xMm", record.XMm, zeroAllowed: true),
                faults.Millimetres($"{here}/yMm", record.YMm, zeroAllowed: true),
                faults.Millimetres($"{here}/lengthMm", record.LengthMm),
                faults.Millimetres($"{here}/widthMm", record.WidthMm));
            if (area.Right > board.Length || area.Top > board.Width)
            {
                faults.Add(here, "The defect reaches beyond the board: measure it from the left end and the lower edge.");
            }

            defects.Add(new Defect(record.Kind, area));
        }

        return defects;
    }
}
