using System.CommandLine;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards add</c>.</summary>
internal static class Add
{
    private static readonly Argument<string[]> Size = new("SIZE")
    {
        Description = "Thickness x width x length as measured, for instance 3/4 x 5 1/2 x 36",
        Arity = ArgumentArity.OneOrMore,
    };

    private static readonly Option<string> Species = new("--species") { Description = BoardOptions.Species.Description, HelpName = "SPECIES", Required = true };

    public static Verb Create() => new Verb(
        "add",
        "Log a board, or several exactly alike",
        "offcuts boards add 3/4 x 5 1/2 x 36 --species white-ash --place \"rack 2\"",
        "offcuts boards add 4/4 x 7 x 8ft --species black-walnut --quantity 2 --source \"bench build\"",
        "offcuts boards add 15/16 x 8 x 70 --species white-oak --surface skip-planed --warp \"bow 1/4, cup 1/8\" --ends \"left checked\"",
        "offcuts boards add 4/4 x 6 x 60 --species cherry --defect \"knot 30..32 x 2..3 1/2\" --defect \"split 4in at the right end\"",
        "offcuts boards add 4/4 x 6 x 60 --species cherry --moisture 8%",
        "offcuts boards add 18mm x 600mm x 1200mm --species baltic-birch")
        .With(Size, Species, BoardOptions.Quantity, BoardOptions.Kind, BoardOptions.Surface, BoardOptions.Appearance,
            BoardOptions.Defect, BoardOptions.Warp, BoardOptions.Ends, BoardOptions.Moisture, BoardOptions.Batch, BoardOptions.Place, BoardOptions.Source, BoardOptions.Note)
        .Begins().Does(AddAsync);

    private static async Task<int> AddAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        // The list of species is asked for only where a nominal size may be meant: of softwood.
        var isSoftwood = SizeText.IsNominal(string.Join(' ', run.Get(Size)))
            && (await KnownSpecies.FindAsync(api, run.Get(Species)!, run.Cancellation))?.IsSoftwood == true;
        var (size, nominal) = Lengths.BoardSize("SIZE", run.Get(Size), unit, isSoftwood);
        var entry = new BoardEntry(
            run.Get(Species)!, size.Thickness.Millimetres, size.Width.Millimetres, size.Length.Millimetres, run.Get(BoardOptions.Kind),
            run.Get(BoardOptions.Quantity) ?? 1,
            Condition.Surface(run.Get(BoardOptions.Surface)) ?? (nominal is null ? null : "surfaced"),
            run.Get(BoardOptions.Appearance) ?? "clear",
            Defects: Condition.Defects(run, size, unit),
            Place: run.Get(BoardOptions.Place), Source: run.Get(BoardOptions.Source), Note: run.Get(BoardOptions.Note),
            Batch: run.Get(BoardOptions.Batch), Warp: Condition.Warp(run, unit), Ends: Condition.Ends(run), Moisture: Condition.Moisture(run));
        var board = await api.CreateBoardAsync(entry, run.Cancellation);
        DefectNotes.Say(run, board.Defects.Select(defect => defect.Kind));
        if (run.Json)
        {
            run.WriteJson(board, ClientJson.Default.BoardRecord);
            return ExitCode.Ok;
        }

        // The id is the data: a script takes it, a person writes it on the end grain.
        run.Terminal.Out.WriteLine(SafeText.Of(board.Id));
        var reading = nominal is null ? "" : $" ({SizeText.FormatNominal(nominal, size)})";
        run.Say($"Logged {BoardView.Species(board)}, {BoardView.Milled(board)}, {BoardView.Size(board, unit)}{reading}{BoardView.Condition(board, unit)}. Write {board.Id} on its end grain.");
        return ExitCode.Ok;
    }
}
