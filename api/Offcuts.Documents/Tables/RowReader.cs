using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Documents.Tables;

/// <summary>Makes a board of a row, or says what stands against it.</summary>
internal sealed class RowReader(CsvRow row, DisplayUnit shop, SpeciesCatalogue catalogue, DocumentFaults faults)
{
    private static readonly string[] Sides = ["thickness", "width", "length"];

    /// <summary>The new board of a row without an id.</summary>
    public Board New()
    {
        foreach (var required in Sides.Prepend("species").Where(name => !row.Cells.ContainsKey(name)))
        {
            Fault(required, "It is empty, and there is no id: every new board needs species, thickness, width and length.");
        }

        var unit = Unit(shop);
        var species = Cell("species") is { } name ? SpeciesOf(name) : null;
        var kind = species?.Kind ?? BoardKind.Solid;
        var (size, estimates) = Size(unit, default, default);
        var board = new Board
        {
            Id = "",
            Species = species?.Id ?? "",
            Kind = kind,
            Size = size,
            Estimates = estimates,
            Surface = kind == BoardKind.Sheet ? Surface.Surfaced : Surface.Rough,
            LoggedAt = default,
        };
        return Checked(Read(board, unit, _ => true), species);
    }

    /// <summary>A board of the store with what this row changes of it.</summary>
    public Board Changed(Board before)
    {
        var own = TableNumber.UnitOf(before, shop);
        var unit = Unit(own);
        var was = BoardColumn.All.ToDictionary(column => column.Name, column => column.Write(before, own), StringComparer.Ordinal);
        if (IsNew("logged"))
        {
            Fault("logged", "When a board was logged does not change: leave the cell as it was, or empty.");
        }

        var species = IsNew("species") && Cell("species") is { } name ? SpeciesOf(name) : catalogue.Find(before.Species);
        var board = before with { Species = species?.Id ?? before.Species };
        if (unit != own || Sides.Any(IsNew))
        {
            var (size, estimates) = Size(unit, before.Size, before.Estimates);
            board = board with { Size = size, Estimates = estimates };
        }

        return Checked(Read(board, unit, IsNew), species);

        // What stands as it was written has not been touched; a column that is not there says nothing.
        bool IsNew(string column) => row.Cells.TryGetValue(column, out var cell) && cell != was[column] && TableNumber.WithPoint(cell) != was[column];
    }

    // What no board may be without is left as it is where its cell is empty.
    private Board Read(Board board, DisplayUnit unit, Func<string, bool> isNew)
    {
        board = board with
        {
            Kind = Word("kind", board.Kind, ("sheet", BoardKind.Sheet), ("solid", BoardKind.Solid)),
            Quantity = Value("quantity", Whole, board.Quantity),
            Surface = Word(
                "surface", board.Surface, ("rough", Surface.Rough), ("skip planed", Surface.SkipPlaned), ("skip", Surface.SkipPlaned), ("surfaced", Surface.Surfaced)),
            Appearance = Word("appearance", board.Appearance, ("clear", Appearance.Clear), ("sound knots", Appearance.SoundKnots), ("paint", Appearance.Paint)),
            Status = Word(
                "status", board.Status, ("free", BoardStatus.Free), ("reserved", BoardStatus.Reserved), ("used", BoardStatus.Used), ("gone", BoardStatus.Gone)),
            Ends = Value<Ends>("ends", EndsText.TryParse, board.Ends),
            Warp = Value("warp", (string text, out Warp warp, out string? error) => WarpText.TryParse(text, unit, out warp, out error), board.Warp),
            LoggedAt = board.Id.Length > 0 ? board.LoggedAt : Value("logged", Date, board.LoggedAt),
            Moisture = Value("moisture", Moist, board.Moisture),
            Batch = Cell("batch") ?? board.Batch,
            Place = Cell("place") ?? board.Place,
            Source = Cell("source") ?? board.Source,
            Note = Cell("note") ?? board.Note,
        };
        return Cell("defects") is { } defects && isNew("defects") ? board with { Defects = Defects(defects, board.Size, unit) } : board;

        T Word<T>(string column, T otherwise, params (string Word, T Value)[] words)
        {
            if (Cell(column) is not { } cell || !isNew(column))
            {
                return otherwise;
            }

            var said = cell.ToLowerInvariant().Replace('-', ' ');
            foreach (var (word, value) in words)
            {
                if (word == said)
                {
                    return value;
                }
            }

            Fault(column, $"{LengthText.Quote(cell)} is not known: give {string.Join(", ", words.Select(word => word.Word))}.");
            return otherwise;
        }

        T Value<T>(string column, Reader<T> reader, T otherwise)
        {
            if (Cell(column) is not { } cell || !isNew(column))
            {
                return otherwise;
            }

            if (reader(cell, out var value, out var error))
            {
                return value;
            }

            Fault(column, error!);
            return otherwise;
        }
    }

    private (Dimensions Size, Estimates Estimates) Size(DisplayUnit unit, Dimensions size, Estimates estimates)
    {
        var (thickness, isThick) = Side("thickness", size.Thickness, estimates.Thickness);
        var (width, isWide) = Side("width", size.Width, estimates.Width);
        var (length, isLong) = Side("length", size.Length, estimates.Length);
        return (new(thickness, width, length), new(isThick, isWide, isLong));

        (Length Length, bool IsEstimated) Side(string column, Length otherwise, bool wasEstimated)
        {
            if (Cell(column) is not { } cell)
            {
                return (otherwise, wasEstimated);
            }

            var text = TableNumber.WithPoint(cell).TrimStart('~').Trim();
            if (LengthText.TryParse(text, unit, out var read, out var error))
            {
                return (read, cell.StartsWith('~'));
            }

            Fault(column, error);
            return (otherwise, wasEstimated);
        }
    }

    private List<Defect> Defects(string cell, Dimensions size, DisplayUnit unit)
    {
        var defects = new List<Defect>();
        foreach (var text in cell.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (DefectText.TryParse(text, size, unit, out var defect, out var error))
            {
                defects.Add(defect);
            }
            else
            {
                Fault("defects", error);
            }
        }

        return defects;
    }

    private Board Checked(Board board, Species? species)
    {
        // A size that cannot be read has its fault already.
        if (board.Size.Thickness > Length.Zero && board.Size.Width > Length.Zero && board.Size.Length > Length.Zero && species is not null)
        {
            foreach (var fault in BoardRules.Check(NewBoard.Of(board)))
            {
                Fault(fault.Pointer.TrimStart('#', '/').Split('/')[0], fault.Detail);
            }

            if (species.WhyNot(board.Kind) is { } wrong)
            {
                Fault("kind", wrong);
            }

            if (Cell("thickness") is { } thickness && NominalSizes.QuartersFault(thickness, board.Surface) is { } quarters)
            {
                Fault("thickness", quarters);
            }
        }

        return board;
    }

    private DisplayUnit Unit(DisplayUnit otherwise)
    {
        if (Cell("unit") is not { } word)
        {
            return otherwise;
        }

        if (!DocumentContext.TryUnit(word.ToLowerInvariant(), out var unit))
        {
            Fault("unit", $"{LengthText.Quote(word)}: give in or mm.");
        }

        return unit;
    }

    private Species? SpeciesOf(string name)
    {
        if (catalogue.Find(name) is { } species)
        {
            return species;
        }

        Fault("species", DocumentContext.UnknownSpecies(name, catalogue));
        return null;
    }

    private static bool Whole(string text, out int value, out string? error)
    {
        error = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value) ? null : $"{LengthText.Quote(text)} is no whole number.";
        return error is null;
    }

    private static bool Moist(string text, out MoistureReading? value, out string? error)
    {
        var isRead = MoistureText.TryParse(TableNumber.WithPoint(text), out var reading, out error);
        value = isRead ? reading : null;
        return isRead;
    }

    private static bool Date(string text, out DateTimeOffset value, out string? error)
    {
        error = DateTimeOffset.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out value) && value.Year >= 1900
            ? null : $"{LengthText.Quote(text)} is not a date: write year, month and day, for instance 2026-03-14.";
        return error is null;
    }

    private string? Cell(string column) => row.Cells.GetValueOrDefault(column);

    private void Fault(string column, string detail) => faults.Add($"#/{column}", row.Line, detail);
}
