using System.CommandLine;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>What the options of an edit make of a board; what is not named stays as it is.</summary>
internal static class BoardEdit
{
    private static readonly Option<string> Size = new("--size") { Description = "Thickness x width x length", HelpName = "SIZE" };

    /// <summary>The options, but for the place.</summary>
    public static readonly Option[] Options =
    [
        Size, BoardOptions.Species, BoardOptions.Quantity, BoardOptions.Kind, BoardOptions.Surface,
        BoardOptions.Appearance, BoardOptions.Status, BoardOptions.Defect, BoardOptions.AddDefect, BoardOptions.Warp, BoardOptions.Ends, BoardOptions.Moisture, BoardOptions.Batch,
        BoardOptions.Source, BoardOptions.Note,
    ];

    /// <summary>The board as it is to be, and how its size was read, where it was called by a nominal name.</summary>
    public static async Task<(BoardEntry Entry, string? Reading)> OfAsync(Run run, IOffcutsApi api, DisplayUnit unit, BoardRecord old, string? place)
    {
        var species = run.Get(BoardOptions.Species) ?? old.Species;
        // The list of species is asked for only where it decides something.
        var known = run.Get(BoardOptions.Species) is not null || SizeText.IsNominal(run.Get(Size))
            ? await KnownSpecies.FindAsync(api, species, run.Cancellation)
            : null;
        var (size, nominal) = run.Get(Size) is { } text
            ? Lengths.BoardSize("--size", [text], unit, known?.IsSoftwood == true)
            : (new(Length.FromMillimetres(old.ThicknessMm), Length.FromMillimetres(old.WidthMm), Length.FromMillimetres(old.LengthMm)), null);
        var kind = run.Get(BoardOptions.Kind) ?? (run.Get(BoardOptions.Species) is null ? old.Kind : Word(known?.Kind) ?? old.Kind);
        // What becomes a sheet is surfaced, what becomes solid wood is rough, unless it is said: the server decides.
        var milled = nominal is not null ? "surfaced" : kind == old.Kind ? old.Surface : null;
        return (new BoardEntry(
            species,
            size.Thickness.Millimetres, size.Width.Millimetres, size.Length.Millimetres,
            kind,
            run.Get(BoardOptions.Quantity) ?? old.Quantity,
            Condition.Surface(run.Get(BoardOptions.Surface)) ?? milled,
            run.Get(BoardOptions.Appearance) ?? old.Appearance,
            run.Get(BoardOptions.Status) ?? old.Status,
            Condition.Defects(run, size, unit, old.Defects),
            place,
            run.Get(BoardOptions.Source) ?? old.Source,
            run.Get(BoardOptions.Note) ?? old.Note,
            run.Get(BoardOptions.Batch) ?? old.Batch,
            Condition.Warp(run, unit, old.Warp),
            Condition.Ends(run, old.Ends),
            // Whoever writes a size has measured it.
            run.Get(Size) is null ? old.Estimated : null,
            Condition.Moisture(run, old.Moisture)), nominal is null ? null : SizeText.FormatNominal(nominal, size));
    }

    /// <summary>Says which defects an edit has put others in the place of.</summary>
    public static void SayReplaced(Run run, BoardRecord old, DisplayUnit unit)
    {
        if (run.Get(BoardOptions.Defect) is { Length: > 0 } && old.Defects.Count > 0)
        {
            run.Say($"{BoardOptions.Defect.Name} took the place of what was known of {old.Id}: {string.Join("; ", old.Defects.Select(defect => Condition.Text(defect, unit)))}. {BoardOptions.AddDefect.Name} adds to it; 'offcuts journal undo' takes this back.");
        }
    }

    private static string? Word(BoardKind? kind) => kind switch
    {
        BoardKind.Sheet => "sheet",
        BoardKind.Solid => "solid",
        _ => null,
    };
}
