using System.Globalization;

namespace Offcuts.Domain;

/// <summary>A board in words, as it was understood: <c>3 of white ash, rough, 3/4 x 5 1/2 x about 36 in, place rack 2</c>.</summary>
public static class BoardSentence
{
    /// <summary>All that is known of a board but its id.</summary>
    /// <param name="board">The board.</param>
    /// <param name="species">Its species as people say it.</param>
    /// <param name="nominal">The nominal name that its size was read from; null for a size as measured.</param>
    /// <param name="unit">The unit of sizes.</param>
    public static string Of(NewBoard board, string species, string? nominal, DisplayUnit unit)
    {
        string?[] parts =
        [
            board.Quantity == 1 ? species : string.Create(CultureInfo.InvariantCulture, $"{board.Quantity} of {species}"),
            board.Kind == BoardKind.Sheet ? "sheet" : Word(board.Surface),
            SizeText.Format(board.Size, board.Estimates, unit) + (nominal is null ? "" : $" ({SizeText.FormatNominal(nominal, board.Size)})"),
            board.Appearance switch
            {
                Appearance.Clear => null,
                Appearance.SoundKnots => "sound knots",
                Appearance.Paint => "for paint",
            },
            board.Warp.IsFlat ? null : WarpText.Format(board.Warp, unit),
            board.Ends == default ? null : $"ends {EndsText.Format(board.Ends)}",
            .. board.Defects.Select(defect => DefectText.Format(defect, unit)),
            board.Moisture is { } reading ? $"moisture {MoistureText.Format(reading)}" : null,
            Named("batch", board.Batch), Named("place", board.Place), Named("from", board.Source), Named("note:", board.Note),
        ];
        return string.Join(", ", parts.OfType<string>());
    }

    private static string? Named(string what, string? name) => name is null ? null : $"{what} {name}";

    private static string Word(Surface surface) => surface switch
    {
        Surface.Rough => "rough",
        Surface.SkipPlaned => "skip-planed",
        Surface.Surfaced => "surfaced",
    };
}
