using System.Globalization;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary>What a list of boards was asked for.</summary>
internal sealed record BoardListRequest(BoardFilter Filter, long After, int Limit)
{
    private const int DefaultLimit = 100;
    private const int MaxLimit = 500;
    private static readonly string[] Known =
        ["species", "minThicknessMm", "maxThicknessMm", "minLengthMm", "minWidthMm", "status", "place", "kind", "limit", "cursor"];

    public static BoardListRequest Read(IQueryCollection query)
    {
        var faults = new Faults();
        foreach (var (name, values) in query)
        {
            if (!Known.Contains(name, StringComparer.Ordinal))
            {
                faults.Add($"?{name}", $"There is no such parameter: give {string.Join(", ", Known)}.");
            }
            else if (values.Count > 1)
            {
                faults.Add($"?{name}", "It is given more than once: give it once.");
            }
        }

        var filter = new BoardFilter
        {
            Species = Text("species"),
            Place = Text("place"),
            MinThickness = Size("minThicknessMm"),
            MaxThickness = Size("maxThicknessMm"),
            MinLength = Size("minLengthMm"),
            MinWidth = Size("minWidthMm"),
            Status = Text("status") is { } status ? faults.Word<BoardStatus>("?status", status) : null,
            Kind = Text("kind") is { } kind ? faults.Word<BoardKind>("?kind", kind) : null,
        };
        var limit = DefaultLimit;
        if (Text("limit") is { } wanted
            && (!int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out limit) || limit is < 1 or > MaxLimit))
        {
            faults.Add("?limit", $"'{wanted}': give 1 to {MaxLimit}.");
        }

        var after = 0L;
        if (Text("cursor") is { } cursor && !Cursor.TryRead(cursor, out after))
        {
            faults.Add("?cursor", "It is none of ours: give the next of a page, or leave it out to start over.");
        }

        faults.ThrowIfAny();
        return new(filter, after, limit);

        string? Text(string name) => query.TryGetValue(name, out var values) ? values[0] : null;

        Length? Size(string name)
        {
            if (Text(name) is not { } text)
            {
                return null;
            }

            if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
            {
                return faults.Millimetres($"?{name}", value);
            }

            faults.Add($"?{name}", $"'{text}' is not a decimal number of millimetres: give for instance 25.4.");
            return null;
        }
    }
}
