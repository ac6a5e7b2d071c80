using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Boards;

/// <summary>What a list of boards was asked for.</summary>
internal sealed record BoardListRequest(BoardFilter Filter, long After, int Limit)
{
    public static BoardListRequest Read(IQueryCollection query, SpeciesCatalogue catalogue)
    {
        var reader = new QueryReader(
            query, "species", "minThicknessMm", "maxThicknessMm", "minLengthMm", "minWidthMm", "status", "place", "kind", "batch");
        var filter = new BoardFilter
        {
            Species = reader.Species("species", catalogue),
            Place = reader.Text("place"),
            Batch = reader.Text("batch"),
            MinThickness = reader.Size("minThicknessMm"),
            MaxThickness = reader.Size("maxThicknessMm"),
            MinLength = reader.Size("minLengthMm"),
            MinWidth = reader.Size("minWidthMm"),
            Status = reader.Word<BoardStatus>("status"),
            Kind = reader.Word<BoardKind>("kind"),
        };
        var (place, limit) = reader.Page();
        return new(filter, place ?? 0, limit);
    }
}
