using Offcuts.Domain;
using Offcuts.Host.Boards;
using Offcuts.Host.Http;

namespace Offcuts.Host.Finding;

/// <summary>The piece that a query asks for, said in words or by its sizes.</summary>
/// <param name="catalogue">The species at hand.</param>
/// <param name="lines">Reads what is said in words.</param>
/// <param name="shop">Whose unit the numbers in words have.</param>
internal sealed class PieceRequest(SpeciesCatalogue catalogue, SpokenLines lines, Shop shop)
{
    private const int DefaultLimit = 20;
    private const int MaxLimit = 500;

    private static readonly string[] Sizes = ["thicknessMm", "widthMm", "lengthMm"];
    private static readonly string[] Fields = ["species", .. Sizes];

    /// <summary>The piece, and how many boards to list.</summary>
    public (PieceWanted Piece, int Limit) Read(IQueryCollection query)
    {
        var reader = new FieldReader(query, ["text", .. Fields, "quantity", "appearance", "grain", "place", "batch", "limit"]);
        var limit = reader.Whole("limit", 1, MaxLimit) ?? DefaultLimit;
        var piece = reader.Text("text") is { } text ? Said(text, reader) : Written(reader);
        piece = piece with
        {
            Quantity = reader.Whole("quantity", 1, Limits.MaxQuantity) ?? piece.Quantity,
            Appearance = reader.Word<Appearance>("appearance") ?? piece.Appearance,
            Grain = reader.Word<Grain>("grain") ?? piece.Grain,
            Place = reader.Text("place") ?? piece.Place,
            Batch = reader.Text("batch") ?? piece.Batch,
        };
        reader.Faults.ThrowIfAny();
        return (piece, limit);
    }

    private PieceWanted Written(FieldReader reader)
    {
        foreach (var missing in Fields.Where(name => reader.Text(name) is null))
        {
            reader.Faults.Add($"?{missing}", "It is missing: give species, thicknessMm, widthMm and lengthMm, or say the piece in text.");
        }

        var sides = Sizes.Select(reader.Size).ToList();
        return new PieceWanted(new(sides[0] ?? default, sides[1] ?? default, sides[2] ?? default), reader.Species("species", catalogue) ?? "");
    }

    private PieceWanted Said(string text, FieldReader reader)
    {
        foreach (var other in Fields.Where(name => reader.Text(name) is not null))
        {
            reader.Faults.Add($"?{other}", "Say it in text, or leave text out.");
        }

        var reading = lines.ReadOne(text, new QuickCarry(), shop, catalogue, "?text", "The piece is not understood: see errors.");
        if (reading.Board is not { } said)
        {
            reader.Faults.Add("?text", "It names no piece: say its finished size and its species, for instance 3/4 x 5 x 36 walnut.");
            return new PieceWanted(default, "");
        }

        if (said.Estimates.Any || !said.Warp.IsFlat || said.Ends != default || said.Defects.Count > 0 || said.Moisture is not null
            || said.Source is not null || said.Note is not null)
        {
            reader.Faults.Add("?text", "It says what only a board has (about, warp, ends, defects, moisture, from, note): say how large the finished piece must be, its species, how many, and what its faces must be good for.");
        }

        return new PieceWanted(said.Size, said.Species, said.Quantity, said.Appearance, Grain.Fixed, said.Place, said.Batch);
    }
}
