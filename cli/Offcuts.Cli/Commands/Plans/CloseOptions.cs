using System.CommandLine;
using System.Globalization;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>What can be said of a board that is cut.</summary>
internal static class CloseOptions
{
    private static readonly Option<string> Size = new("--size") { Description = "The board's size before cutting, if it was not as planned", HelpName = "SIZE" };
    private static readonly Option<string[]> Leftover = new("--leftover") { Description = "How a planned leftover came out: its number on the board, then width x length, thickness x width x length, or gone; may be given again", HelpName = "NUMBER=SIZE" };
    private static readonly Option<string[]> Add = new("--add") { Description = "A piece worth keeping that was not foreseen, thickness x width x length; may be given again", HelpName = "SIZE" };
    private static readonly Option<string[]> Spoiled = new("--spoiled") { Description = "A piece that came to nothing, by its name in the plan; may be given again", HelpName = "PIECE" };
    private static readonly Option<string[]> Waste = new("--waste") { Description = "What was thrown away beyond the plan, width x length; may be given again", HelpName = "SIZE" };
    private static readonly Option<string> Place = new("--place") { Description = "Where the leftovers lie, if not where the board lay", HelpName = "TEXT" };
    private static readonly Option<string> Batch = new("--batch") { Description = "The leftovers' batch, if not the board's", HelpName = "TEXT" };
    private static readonly Option<string> Because = new("--because") { Description = "How it is, if what came out is less than the board; more than the board it cannot be", HelpName = "TEXT" };

    /// <summary>In the order in which help lists them.</summary>
    public static readonly Symbol[] All = [Size, Leftover, Add, Spoiled, Waste, Place, Batch, Because];

    /// <summary>Whether anything is said.</summary>
    public static bool IsAnyGiven(Run run) =>
        new[] { Size, Place, Batch, Because }.Any(option => run.Get(option) is not null)
        || new[] { Leftover, Add, Spoiled, Waste }.Any(option => run.Get(option) is { Length: > 0 });

    /// <summary>What is said of one board.</summary>
    /// <exception cref="CliException">Something that cannot be read.</exception>
    public static BoardClosingEntry Read(Run run, BoardCutRecord? board, int number, DisplayUnit unit, PlanResult? plan)
    {
        var thickness = Length.FromMillimetres(board?.Size.ThicknessMm ?? 0);
        return new BoardClosingEntry(
            number,
            run.Get(Size) is { } size ? ToRecord(Lengths.Size(Size.Name, [size], unit)) : null,
            [.. Given(run, Leftover).Select(text => ReadLeftover(text, thickness, unit))],
            [.. Given(run, Add).Select(text => new AddedPieceEntry(ToRecord(Lengths.Size(Add.Name, [text], unit))))],
            [.. Given(run, Spoiled).Select(name => Piece(run, name, board, unit, plan))],
            [.. Given(run, Waste).Select(text => Face(text, unit))],
            run.Get(Place), run.Get(Batch), run.Get(Because));
    }

    private static string[] Given(Run run, Option<string[]> option) => run.Get(option) ?? [];

    private static LeftoverClosingEntry ReadLeftover(string text, Length thickness, DisplayUnit unit)
    {
        if (text.Split('=', 2) is not [var which, var what]
            || !int.TryParse(which.Trim().TrimStart('#'), NumberStyles.None, CultureInfo.InvariantCulture, out var leftover))
        {
            throw CliException.Invalid($"{Leftover.Name}: '{text}' names no leftover. Write its number, then =, then how it came out: 1=5 x 30, or 1=gone.");
        }

        return what.Trim().Equals("gone", StringComparison.OrdinalIgnoreCase) ? new LeftoverClosingEntry(leftover, Kept: false)
            : SizeText.TryParseFace(what, unit, out var width, out var length, out _) ? new LeftoverClosingEntry(leftover, true, ToRecord(new(thickness, width, length)))
            : new LeftoverClosingEntry(leftover, true, ToRecord(Lengths.Size(Leftover.Name, [what], unit)));
    }

    private static FaceRecord Face(string text, DisplayUnit unit) => SizeText.TryParseFace(text, unit, out var width, out var length, out var error)
        ? new FaceRecord(length.Millimetres, width.Millimetres)
        : throw CliException.Invalid($"{Waste.Name}: {error}");

    private static int Piece(Run run, string name, BoardCutRecord? board, DisplayUnit unit, PlanResult? plan)
    {
        var names = plan is null || board is null ? [] : board.Pieces.Select(new PlanView(run.Terminal, unit, plan).Piece).ToList();
        var place = names.FindIndex(known => Plain(known) == Plain(name));
        return place >= 0 ? place + 1
            : throw CliException.Invalid($"{Spoiled.Name}: the board has no piece '{name}'. It has {string.Join(", ", names.Where((_, index) => board!.Pieces[index].Kind is "part" or "strip"))}.");
    }

    private static string Plain(string name) => name.Replace("#", "", StringComparison.Ordinal).Trim().ToLowerInvariant();

    private static SizeRecord ToRecord(Dimensions size) => new(size.Thickness.Millimetres, size.Width.Millimetres, size.Length.Millimetres);
}
