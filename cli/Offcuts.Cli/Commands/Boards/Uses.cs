using System.Globalization;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary><c>offcuts boards uses</c>.</summary>
internal static class Uses
{
    public static Verb Create() => new Verb(
        "uses", "Tell which parts of the saved designs a board could become, and how many of each if it is cut for nothing else",
        "offcuts boards uses K7M", "offcuts boards uses K7M --json")
        .With(BoardOptions.Id).Does(ShowAsync);

    private static async Task<int> ShowAsync(Run run)
    {
        var uses = await (await run.ConnectAsync()).GetBoardUsesAsync(run.Get(BoardOptions.Id), run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(uses, ClientJson.Default.BoardUsesRecord);
            return ExitCode.Ok;
        }

        if (uses.Items.Count == 0)
        {
            run.Say($"Board {uses.Board.Id} gives no part of any saved design.");
            return ExitCode.Ok;
        }

        var unit = await run.UnitAsync();
        var table = new Table("DESIGN", "PART", ">FINISHED SIZE", ">GIVES", ">WANTED");
        foreach (var (design, part) in uses.Items.SelectMany(design => design.Parts.Select(part => (design, part))))
        {
            table.Add(
                design.Design, part.Name, Lengths.Text(new(part.ThicknessMm, part.WidthMm, part.LengthMm), unit), Gives(part),
                part.Wanted.ToString(CultureInfo.InvariantCulture));
        }

        table.Write(run.Terminal);
        return ExitCode.Ok;

        string Gives(PartUseRecord part) => part is { Count: 0, StripWidthMm: { } width }
            ? $"strips, {LengthText.Format(Length.FromMillimetres(width), unit)} wide"
            : part.Count.ToString(CultureInfo.InvariantCulture);
    }
}
