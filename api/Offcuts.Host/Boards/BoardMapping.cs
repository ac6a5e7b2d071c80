using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary>Boards between the wire and the domain.</summary>
internal static class BoardMapping
{
    /// <summary>A board that is logged or changed: as <see cref="ToBoard"/>, and tells what no such board can be.</summary>
    public static Board ToLogged(BoardEntry entry, string id, SpeciesCatalogue catalogue, string at, Faults faults)
    {
        var board = ToBoard(entry, id, catalogue, at, faults);
        (string Pointer, string? Detail)[] impossible =
        [
            ($"{at}/kind", catalogue.Find(board.Species)?.WhyNot(board.Kind)),
            ($"{at}/thicknessMm", BoardShape.ThicknessFault(board.Kind, board.Size)),
            ($"{at}/widthMm", BoardShape.WidthFault(board.Kind, board.Size)),
        ];
        // A length that cannot be read is zero and has its fault already.
        var isRead = Length.Min(board.Size.Thickness, Length.Min(board.Size.Width, board.Size.Length)) > Length.Zero;
        foreach (var (pointer, detail) in impossible.Where(fault => fault.Detail is not null && (isRead || fault.Pointer == $"{at}/kind")))
        {
            faults.Add(pointer, detail!);
        }

        return board;
    }

    /// <summary>The board that was entered; the store gives it the time, and its id if it is new.</summary>
    public static Board ToBoard(BoardEntry entry, string id, SpeciesCatalogue catalogue, string at, Faults faults)
    {
        faults.Text($"{at}/batch", entry.Batch, Limits.MaxName);
        faults.Text($"{at}/place", entry.Place, Limits.MaxLine);
        faults.Text($"{at}/source", entry.Source, Limits.MaxLine);
        faults.Text($"{at}/note", entry.Note, Limits.MaxNote);
        var size = new Dimensions(
            faults.Millimetres($"{at}/thicknessMm", entry.ThicknessMm),
            faults.Millimetres($"{at}/widthMm", entry.WidthMm),
            faults.Millimetres($"{at}/lengthMm", entry.LengthMm));
        var species = faults.Species($"{at}/species", entry.Species, catalogue);
        var kind = entry.Kind is { } written ? faults.Word<BoardKind>($"{at}/kind", written) : catalogue.Find(species)?.Kind ?? BoardKind.Solid;
        return new Board
        {
            Id = id,
            Kind = kind,
            Species = species,
            Size = size,
            Quantity = faults.Count($"{at}/quantity", entry.Quantity, 1, Limits.MaxQuantity),
            Surface = entry.Surface is { } surface ? faults.Word<Surface>($"{at}/surface", surface)
                : kind == BoardKind.Sheet ? Surface.Surfaced
                : Surface.Rough,
            Appearance = faults.Word<Appearance>($"{at}/appearance", entry.Appearance),
            Status = faults.Word<BoardStatus>($"{at}/status", entry.Status),
            Warp = ConditionMapping.ToWarp(entry.Warp, kind, size, $"{at}/warp", faults),
            Ends = ConditionMapping.ToEnds(entry.Ends, $"{at}/ends", faults),
            Estimates = ConditionMapping.ToEstimates(entry.Estimated),
            Batch = entry.Batch,
            Moisture = ConditionMapping.ToMoisture(entry.Moisture, $"{at}/moisture", faults),
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
        board.Place, board.Source, board.Note,
        Batch: board.Batch, Warp: ConditionMapping.ToRecord(board.Warp), Ends: ConditionMapping.ToRecord(board.Ends),
        Holds: board.Holds.Count == 0 ? null : [.. board.Holds.Select(hold => new HoldRecord(hold.PlanId, hold.Number))],
        Origin: board.Origin is { } origin ? new OriginRecord(origin.PlanId, origin.CutFrom) : null,
        Price: board.Price is { } price ? new PriceRecord(MoneyText.ToDecimal(price.Amount, price.Currency), price.Currency) : null,
        Estimated: ConditionMapping.ToRecord(board.Estimates),
        Moisture: board.Moisture is { } reading ? new MoistureRecord(reading.Percent, reading.On) : null);

    public static BoardRecord ToRecord(Board board, SpeciesCatalogue catalogue) =>
        ToRecord(board) with { SpeciesName = catalogue.NameOf(board.Species) };

    internal static List<Defect> ToDefects(IReadOnlyList<DefectRecord> records, Dimensions board, string at, Faults faults)
    {
        var defects = new List<Defect>();
        foreach (var (index, record) in faults.Entries(at, records, Limits.MaxDefects))
        {
            var here = $"{at}/{index}";
            faults.Text($"{here}/kind", record.Kind, Limits.MaxName, required: true);
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
