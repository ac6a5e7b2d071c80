using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>A list of boards to be logged, in YAML or JSON.</summary>
public static class BoardListDocument
{
    private static readonly string[] DateForms = ["yyyy-MM-dd", "yyyy-MM-ddTHH:mm:ssK", "yyyy-MM-ddTHH:mm:ss.FFFFFFFK"];

    /// <summary>Reads a list of boards.</summary>
    /// <param name="text">The document, at most 1 MB.</param>
    /// <param name="bareUnit">The unit of bare numbers where the document does not say (key <c>unit</c>).</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.Invalid"/>, with every fault, its pointer and its line.</exception>
    public static IReadOnlyList<NewBoard> Parse(string text, DisplayUnit bareUnit, SpeciesCatalogue catalogue)
    {
        var faults = new DocumentFaults("board list");
        var root = new Fields(NodeReader.Read(text, faults), faults);
        var context = DocumentContext.Of(root, faults, bareUnit, catalogue, "USD");
        var groups = root.Groups("boards", required: true);
        var boards = groups.Select(fields => ToBoard(fields, context)).ToList();
        root.End();
        faults.ThrowIfAny();
        foreach (var (board, fields) in boards.Zip(groups))
        {
            faults.Add(BoardRules.Check(board), fields.Mapping);
        }

        faults.ThrowIfAny();
        return boards;
    }

    private static NewBoard ToBoard(Fields fields, DocumentContext context)
    {
        var species = context.Species(fields);
        var kind = DocumentContext.Kind(fields, species);
        var (size, isNominal) = context.BoardSize(fields, species);
        var surface = DocumentContext.Surface(fields) ?? (kind == BoardKind.Sheet || isNominal ? Surface.Surfaced : Surface.Rough);
        DocumentContext.CheckQuarters(fields, "size", surface);
        var board = new NewBoard
        {
            Kind = kind,
            Species = species?.Id ?? "",
            Size = size,
            Quantity = fields.Quantity(),
            Surface = surface,
            Appearance = fields.Word<Appearance>("appearance") ?? Appearance.Clear,
            Batch = fields.OptionalText("batch"),
            Moisture = Moisture(fields),
            Warp = Warp(fields, context),
            Ends = Ends(fields),
            Defects = Defects(fields, size, context),
            Place = fields.OptionalText("place"),
            Source = fields.OptionalText("source"),
            LoggedAt = Logged(fields),
            Note = fields.OptionalText("note"),
        };
        fields.End();
        return board;
    }

    private static Warp Warp(Fields fields, DocumentContext context)
    {
        fields.TryRead(
            fields.Optional("warp"), (string text, out Warp value, out string? error) => WarpText.TryParse(text, context.Unit, out value, out error), out var warp);
        return warp;
    }

    private static Ends Ends(Fields fields)
    {
        fields.TryRead(fields.Optional("ends"), (string text, out Ends value, out string? error) => EndsText.TryParse(text, out value, out error), out var ends);
        return ends;
    }

    private static MoistureReading? Moisture(Fields fields) => fields.TryRead(
        fields.Optional("moisture"), (string text, out MoistureReading value, out string? error) => MoistureText.TryParse(text, out value, out error), out var reading)
        ? reading
        : null;

    private static List<Defect> Defects(Fields fields, Dimensions board, DocumentContext context)
    {
        var defects = new List<Defect>();
        foreach (var scalar in fields.Scalars("defects"))
        {
            if (fields.TryRead(
                scalar,
                (string text, out Defect? value, out string? error) => DefectText.TryParse(text, board, context.Unit, out value, out error),
                out var defect))
            {
                defects.Add(defect!);
            }
        }

        return defects;
    }

    private static DateTimeOffset? Logged(Fields fields)
    {
        if (fields.OptionalText("logged") is not { } text)
        {
            return null;
        }

        if (DateTimeOffset.TryParseExact(
            text, DateForms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var date) && date.Year >= 1900)
        {
            return date.ToUniversalTime();
        }

        fields.Fault("logged", "This is not a date: write year, month and day, for instance 2026-03-14.");
        return null;
    }
}
