using System.CommandLine;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards edit</c>.</summary>
internal static class Edit
{
    private static readonly Option<string> Size = new("--size") { Description = "Thickness x width x length", HelpName = "SIZE" };

    public static Verb Create() => new Verb(
        "edit",
        "Change what is known of a board; what is not named stays as it is",
        "offcuts boards edit K7M --place \"wall rack\" --status reserved",
        "offcuts boards edit K7M --warp flat --ends sound",
        "offcuts boards edit K7M --moisture \"7.5% on 2026-11-01\"",
        "offcuts boards edit K7M --size \"3/4 x 5 1/2 x 30 1/4\" --note \"split end cut off\"")
        .With(BoardOptions.Id, Size, BoardOptions.Species, BoardOptions.Quantity, BoardOptions.Kind, BoardOptions.Surface,
            BoardOptions.Appearance, BoardOptions.Status, BoardOptions.Defect, BoardOptions.Warp, BoardOptions.Ends, BoardOptions.Moisture, BoardOptions.Batch,
            BoardOptions.Place, BoardOptions.Source, BoardOptions.Note)
        .Does(EditAsync);

    private static async Task<int> EditAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var old = await api.GetBoardAsync(run.Get(BoardOptions.Id), run.Cancellation);
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
        var entry = new BoardEntry(
            species,
            size.Thickness.Millimetres, size.Width.Millimetres, size.Length.Millimetres,
            kind,
            run.Get(BoardOptions.Quantity) ?? old.Quantity,
            Condition.Surface(run.Get(BoardOptions.Surface)) ?? milled,
            run.Get(BoardOptions.Appearance) ?? old.Appearance,
            run.Get(BoardOptions.Status) ?? old.Status,
            Condition.Defects(run, size, unit, old.Defects),
            run.Get(BoardOptions.Place) ?? old.Place,
            run.Get(BoardOptions.Source) ?? old.Source,
            run.Get(BoardOptions.Note) ?? old.Note,
            run.Get(BoardOptions.Batch) ?? old.Batch,
            Condition.Warp(run, unit, old.Warp),
            Condition.Ends(run, old.Ends),
            // Whoever writes a size has measured it.
            run.Get(Size) is null ? old.Estimated : null,
            Condition.Moisture(run, old.Moisture));
        var board = await api.ReplaceBoardAsync(old.Id, entry, run.Cancellation);
        DefectNotes.Say(run, board.Defects.Select(defect => defect.Kind));
        if (run.Json)
        {
            run.WriteJson(board, ClientJson.Default.BoardRecord);
        }
        else
        {
            BoardView.WriteDetails(board, unit, run.Terminal);
            if (nominal is not null)
            {
                run.Say($"--size was {SizeText.FormatNominal(nominal, size)}.");
            }
        }

        return ExitCode.Ok;
    }

    private static string? Word(BoardKind? kind) => kind switch
    {
        BoardKind.Sheet => "sheet",
        BoardKind.Solid => "solid",
        _ => null,
    };
}
