using System.CommandLine;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>The condition of a board between the command line and the wire.</summary>
internal static class Condition
{
    /// <summary>The word for a surface as the wire has it; the trade also says skip and hit-or-miss.</summary>
    public static string? Surface(string? word) => word?.Trim().ToLowerInvariant() is "skip" or "hit-or-miss" ? "skip-planed" : word;

    /// <summary>The warp that was given; <paramref name="otherwise"/> if none was.</summary>
    /// <exception cref="CliException">It is no warp.</exception>
    public static WarpRecord? Warp(Run run, DisplayUnit unit, WarpRecord? otherwise = null)
    {
        if (run.Get(BoardOptions.Warp) is not { } text)
        {
            return otherwise;
        }

        return WarpText.TryParse(text, unit, out var warp, out var error)
            ? new(warp.Bow.Millimetres, warp.Crook.Millimetres, warp.Cup.Millimetres, warp.Twist.Millimetres)
            : throw CliException.Invalid($"{BoardOptions.Warp.Name}: {error}");
    }

    /// <summary>The ends that were given; <paramref name="otherwise"/> if none were.</summary>
    /// <exception cref="CliException">It does not say how the ends are.</exception>
    public static EndsRecord? Ends(Run run, EndsRecord? otherwise = null)
    {
        if (run.Get(BoardOptions.Ends) is not { } text)
        {
            return otherwise;
        }

        return EndsText.TryParse(text, out var ends, out var error)
            ? new(Word(ends.Left), Word(ends.Right))
            : throw CliException.Invalid($"{BoardOptions.Ends.Name}: {error}");
    }

    /// <summary>The moisture reading that was given; <paramref name="otherwise"/> if none was.</summary>
    /// <exception cref="CliException">It is no reading.</exception>
    public static MoistureRecord? Moisture(Run run, MoistureRecord? otherwise = null)
    {
        if (run.Get(BoardOptions.Moisture) is not { } text)
        {
            return otherwise;
        }

        if (text.Trim().Equals("none", StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        return MoistureText.TryParse(text, out var reading, out var error)
            ? new(reading.Percent, reading.On)
            : throw CliException.Invalid($"{BoardOptions.Moisture.Name}: {error}");
    }

    /// <summary>A moisture reading in words; null where none is known.</summary>
    public static string? Text(MoistureRecord? moisture) => moisture is null ? null : MoistureText.Format(new(moisture.Percent, moisture.On));

    /// <summary>The defects that were given, which take the place of those known before; <paramref name="otherwise"/> if none were. What is to be added comes last.</summary>
    /// <exception cref="CliException">One of them is no defect.</exception>
    public static IReadOnlyList<DefectRecord>? Defects(Run run, Dimensions board, DisplayUnit unit, IReadOnlyList<DefectRecord>? otherwise = null)
    {
        var stated = run.Get(BoardOptions.Defect) is not { Length: > 0 } texts ? otherwise
            : texts is [var word] && word.Trim().Equals("none", StringComparison.OrdinalIgnoreCase) ? []
            : [.. texts.Select(text => Defect(BoardOptions.Defect, text, board, unit))];
        return run.Get(BoardOptions.AddDefect) is { Length: > 0 } more ? [.. stated ?? [], .. more.Select(text => Defect(BoardOptions.AddDefect, text, board, unit))] : stated;
    }

    /// <summary>A defect in words.</summary>
    public static string Text(DefectRecord defect, DisplayUnit unit) => DefectText.Format(
        new(defect.Kind, new Rect(Length.FromMillimetres(defect.XMm), Length.FromMillimetres(defect.YMm), Length.FromMillimetres(defect.LengthMm), Length.FromMillimetres(defect.WidthMm))), unit);

    private static DefectRecord Defect(Option<string[]> option, string text, Dimensions board, DisplayUnit unit) => DefectText.TryParse(text, board, unit, out var defect, out var error)
        ? new DefectRecord(defect.Kind, defect.Area.X.Millimetres, defect.Area.Y.Millimetres, defect.Area.Length.Millimetres, defect.Area.Width.Millimetres)
        : throw CliException.Invalid($"{option.Name}: {error}");

    /// <summary>A warp in words; null for a flat board.</summary>
    public static string? Text(WarpRecord? warp, DisplayUnit unit) => warp is null ? null : WarpText.Format(
        new(Length.FromMillimetres(warp.BowMm), Length.FromMillimetres(warp.CrookMm), Length.FromMillimetres(warp.CupMm), Length.FromMillimetres(warp.TwistMm)), unit);

    /// <summary>The ends in words; null where nothing is known of them.</summary>
    public static string? Text(EndsRecord? ends) =>
        ends is null or { Left: "unknown", Right: "unknown" } ? null
        : ends.Left == ends.Right ? ends.Left
        : $"left {ends.Left}, right {ends.Right}";

    /// <summary>What a piece of a plan loses to warp, in words; empty for nothing.</summary>
    public static string Loss(PieceRecord piece, DisplayUnit unit) => LossText.Of(
        (piece.LossThicknessMm, piece.LossWidthMm) is (null, null) ? null
            : new Loss(Length.FromMillimetres(piece.LossThicknessMm ?? 0), Length.FromMillimetres(piece.LossWidthMm ?? 0)),
        unit);

    private static string Word(EndState state) => state switch
    {
        EndState.Checked => "checked",
        EndState.Sound => "sound",
        EndState.Unknown => "unknown",
    };
}
