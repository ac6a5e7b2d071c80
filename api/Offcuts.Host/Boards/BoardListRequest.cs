using System.Globalization;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary>What a list of boards was asked for.</summary>
internal sealed record BoardListRequest(BoardFilter Filter, BoardOrder? Order, BoardMark? After, int Limit)
{
    /// <summary>The parameters that restrict a list.</summary>
    public static readonly string[] Filters =
        ["species", "minThicknessMm", "maxThicknessMm", "minLengthMm", "maxLengthMm", "minWidthMm", "status", "place", "kind", "batch", "loggedBefore"];

    public static BoardListRequest Read(IQueryCollection query, SpeciesCatalogue catalogue)
    {
        var reader = new QueryReader(query, [.. Filters, "sort"]);
        var filter = FilterOf(reader, catalogue);
        var order = OrderOf(reader);
        var (place, key, limit) = reader.Page(isSorted: order is not null);
        return new(filter, order, place is { } sequence ? new BoardMark(sequence, key) : null, limit);
    }

    /// <summary>Which boards a query asks for.</summary>
    public static BoardFilter FilterOf(FieldReader reader, SpeciesCatalogue catalogue) => new()
    {
        Species = reader.Species("species", catalogue),
        Place = reader.Text("place"),
        Batch = reader.Text("batch"),
        MinThickness = reader.Size("minThicknessMm"),
        MaxThickness = reader.Size("maxThicknessMm"),
        MinLength = reader.Size("minLengthMm"),
        MaxLength = reader.Size("maxLengthMm"),
        MinWidth = reader.Size("minWidthMm"),
        Status = reader.Word<BoardStatus>("status"),
        Kind = reader.Word<BoardKind>("kind"),
        LoggedBefore = Day("loggedBefore", reader),
    };

    private static BoardOrder? OrderOf(FieldReader reader)
    {
        if (reader.Text("sort") is not { } word)
        {
            return null;
        }

        var isReversed = word.StartsWith('-');
        if (Words.TryRead<BoardKey>(isReversed ? word[1..] : word, out var by))
        {
            return new BoardOrder(by, isReversed);
        }

        reader.Faults.Add("?sort", $"'{word}' is not known: give {string.Join(", ", Words.All<BoardKey>())}, with - before it for the other way round.");
        return null;
    }

    private static DateOnly? Day(string name, FieldReader reader)
    {
        if (reader.Text(name) is not { } text)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return day;
        }

        reader.Faults.Add($"?{name}", $"'{text}' is no day: give for instance 2026-03-14.");
        return null;
    }
}
