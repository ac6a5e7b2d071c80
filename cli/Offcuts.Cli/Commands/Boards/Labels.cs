using System.CommandLine;
using Offcuts.Contracts;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards labels</c>.</summary>
internal static class Labels
{
    private static readonly Argument<string[]> Ids = new("ID") { Description = "Ids of the boards; all that are free or reserved if left out", Arity = ArgumentArity.ZeroOrMore };
    private static readonly Option<string> Stock = new("--stock")
    {
        Description = "Sheet of labels: letter-3x10 (2 5/8 x 1 in, if left out), letter-2x10 (4 x 1 in), letter-2x5 (4 x 2 in), letter-4x20 (1 3/4 x 1/2 in), "
            + "a4-3x7 (63.5 x 38.1 mm), a4-3x8 (70 x 37 mm), a4-2x7 (99.1 x 38.1 mm), a4-5x13 (38.1 x 21.2 mm)",
        HelpName = "NAME",
        CompletionSources = { "letter-3x10", "letter-2x10", "letter-2x5", "letter-4x20", "a4-3x7", "a4-3x8", "a4-2x7", "a4-5x13" },
    };

    private static readonly Option<int?> Skip = new("--skip") { Description = "Labels of the first sheet that were used before", HelpName = "COUNT", CustomParser = Values.Whole };
    private static readonly Option<int?> Sheet = new("--sheet") { Description = "Only this sheet, as SVG", HelpName = "NUMBER", CustomParser = Values.Whole };
    private static readonly Option<string> Output = new("--output", "-o") { Description = "Write to a file; standard output if left out", HelpName = "FILE" };

    public static Verb Create() => new Verb(
        "labels",
        "Labels with id, species, size and a QR code, to print on sheets of labels: a page to print at full size (100 %, no margins)",
        "offcuts boards labels -o labels.html",
        "offcuts boards labels K7M H6K --stock a4-3x8 --skip 5 -o labels.html",
        "offcuts boards labels --place \"rack 2\" --sheet 1 -o labels.svg")
        .With(Ids, Stock, BoardOptions.Place, Skip, Sheet, Output).Does(WriteAsync);

    private static async Task<int> WriteAsync(Run run)
    {
        var api = await run.ConnectAsync();
        var query = new LabelQuery
        {
            Stock = run.Get(Stock),
            Ids = run.Get(Ids) is { Length: > 0 } ids ? string.Join(',', ids) : null,
            Place = run.Get(BoardOptions.Place),
            Skip = run.Get(Skip),
        };
        var labels = run.Get(Sheet) is { } sheet ? await api.GetLabelSheetAsync(sheet, query, run.Cancellation) : await api.GetLabelsAsync(query, run.Cancellation);
        await Files.WriteOrPrintAsync(run, run.Get(Output), labels);
        return ExitCode.Ok;
    }
}
