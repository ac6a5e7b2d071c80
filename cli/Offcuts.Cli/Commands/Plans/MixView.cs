using System.Globalization;
using Offcuts.Cli.Commands.Prices;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>A mix of designs as a person reads it.</summary>
internal static class MixView
{
    private const int MostLeftovers = 12;

    /// <summary>The verdict, the copies, what of the pile goes and what comes back.</summary>
    public static void Write(MixRecord answer, DisplayUnit unit, Run run)
    {
        var terminal = run.Terminal;
        terminal.Out.WriteLine(Verdict(answer));
        if (answer.Best is not { } best)
        {
            return;
        }

        terminal.Out.WriteLine();
        var table = new Table(">COPIES", "DESIGN", ">PIECES", ">WORTH OF ITS WOOD");
        foreach (var design in answer.Designs)
        {
            table.Add(Text(design.Copies ?? 0), design.Reference ?? design.Name, Text((design.Copies ?? 0) * design.Pieces), Price.Of((design.Copies ?? 0) * design.Worth, answer.Currency));
        }

        table.Write(terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"Cut: {Text(best.Cut.Boards)} of {Text(best.Free.Boards)} free boards, {Volume(best.Cut.VolumeM3)} of {Volume(best.Free.VolumeM3)}; {Volume(best.BuildsM3)} are in the finished builds.");
        terminal.Out.WriteLine(best.Leftovers.Count == 0
            ? "Nothing of them comes back."
            : $"{Counted(best.Back.Boards, "leftover")} of {Volume(best.Back.VolumeM3)} {(best.Back.Boards == 1 ? "comes" : "come")} back: {string.Join("; ", Leftovers(best, unit))}.");
        terminal.Out.WriteLine($"The boards are worth {Price.Of(best.WorthConsumed, answer.Currency)}, the leftovers {Price.Of(best.WorthReturned, answer.Currency)}.");
        if (best.ItemCost > 0)
        {
            terminal.Out.WriteLine($"To buy ready made: {Price.Of(best.ItemCost, answer.Currency)}.");
        }

        terminal.Out.WriteLine();
        var boards = new Table("BOARD", ">COUNT", ">SAWN FOR PARTS");
        foreach (var board in best.Boards)
        {
            boards.Add(board.Id, Text(board.Count), Volume(board.PartsM3));
        }

        boards.Write(terminal);

        string Volume(decimal cubicMetres) => VolumeText.OfCubicMetres(cubicMetres, unit);
    }

    /// <summary>How far a search is.</summary>
    /// <param name="far">How far.</param>
    /// <param name="designs">The designs in their order; none where they are named by tags.</param>
    public static string Text(MixProgressRecord far, IReadOnlyList<string> designs)
    {
        var best = far.Copies is null ? "" : $", best so far {string.Join(" + ", designs.Count > 0 ? far.Copies.Zip(designs).Where(each => each.First > 0).Select(each => $"{Text(each.First)} {each.Second}") : far.Copies.Select(Text))}";
        return $"Trying mixes: {Text(far.Tried)} looked at{best}";
    }

    private static string Verdict(MixRecord answer) => (answer.Best, answer.Sure) switch
    {
        ({ }, true) => $"The free boards yield {Mix(answer)}. Proved: no other mix puts wood worth more into builds.",
        ({ } best, false) => $"The free boards yield {Mix(answer)}. A better mix is not ruled out"
            + (answer.BuildsWorthAtMost is { } most ? $": wood for {Price.Of(best.BuildsWorth, answer.Currency)} goes into the builds, {Price.Of(most, answer.Currency)} is the most it could be" : "")
            + "; a longer --budget may tell.",
        (null, true) => "Proved: the free boards yield no such mix.",
        (null, false) => "It is not known whether the free boards yield such a mix; a longer --budget may tell.",
    };

    private static string Mix(MixRecord answer)
    {
        List<string> made = [.. answer.Designs.Where(design => design.Copies > 0).Select(design => $"{Text(design.Copies!.Value)} {SafeText.Of(design.Reference ?? design.Name)}")];
        return made.Count == 1 ? made[0] : $"{string.Join(", ", made.SkipLast(1))} and {made[^1]}";
    }

    /// <summary>The leftovers, those alike together.</summary>
    private static IEnumerable<string> Leftovers(MixUseRecord best, DisplayUnit unit)
    {
        var alike = best.Leftovers.GroupBy(leftover => (leftover.Species, leftover.Size)).ToList();
        foreach (var leftover in alike.Take(MostLeftovers))
        {
            var (species, size) = leftover.Key;
            var text = $"{DimensionsText(size, unit)} {SafeText.Of(species)}";
            yield return leftover.Count() == 1 ? text : $"{Text(leftover.Count())} of {text}";
        }

        if (alike.Count > MostLeftovers)
        {
            yield return $"{Text(alike.Skip(MostLeftovers).Sum(leftover => leftover.Count()))} smaller ones";
        }
    }

    private static string DimensionsText(SizeRecord size, DisplayUnit unit) => SizeText.Format(
        new Dimensions(Length.FromMillimetres(size.ThicknessMm), Length.FromMillimetres(size.WidthMm), Length.FromMillimetres(size.LengthMm)), unit);

    private static string Counted(int count, string noun) => $"{Text(count)} {noun}{(count == 1 ? "" : "s")}";

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
