using System.Globalization;
using CsCheck;
using Xunit;

namespace Offcuts.Domain.Tests;

// What is said of a board in any order, with or without marks, as fraction or decimal, is what is understood; and whatever is typed never throws.
public class QuickLineProperties
{
    private static readonly string[] Scraps =
        ["3 @ ", "3/4", " x ", "x", "5 1/2", "36", "~30", "4/4", " ash", " walnut", ", ", "split ", "3in", " end", "rack 2", "batch ", "note ", "knot 10..12", "\"", "'", "ft",
            "mm", ".", ",", "½", "\t", "\u0000", "\uD800", "\uFEFF", "@", "(", ")", "-", "..", "9999999999999999999999", "by ", "bow 1/4", "left ", "ends checked", "from ", "İ", "  ", "long",
            "T", "=", "#", "mc ", "8%", "%", "moisture ", "oak", "ply", "x x", "1/0", "1e9", "no place", "*"];

    private static readonly (string Said, string Id)[] Species =
        [("ash", "white-ash"), ("Walnut", "black-walnut"), ("wh oak", "white-oak"), ("WO", "white-oak"), ("hard maple", "hard-maple"), ("pop", "yellow-poplar"), ("black-cherry", "black-cherry")];

    private static readonly Gen<Length> Sixteenths = Gen.Int[64, 40 * 16].Select(count => Length.FromInches(0, count * 4, 64));

    [Fact]
    public void A_board_is_understood_whatever_the_order_the_marks_and_the_kind_of_numbers() =>
        Gen.Select(Gen.Int[1, 9], Sixteenths, Sixteenths, Gen.Int[0, Species.Length - 1], Gen.Int[0, 6], Gen.Int[0, 2], Gen.Int[0, 5], Gen.Shuffle<int>(new[] { 0, 1, 2, 3, 4 }))
            .Sample((count, width, length, species, marks, numbers, sizes, order) =>
            {
                var thickness = Length.FromInches(0, 3, 4);
                string Number(Length side) => Written(side, numbers) + (marks % 3) switch { 1 => "\"", 2 => " in", _ => "" };
                var times = marks % 2 == 0 ? " x " : "x";
                string[] phrases =
                [
                    $"{count} @",
                    sizes switch
                    {
                        0 => $"{Number(length)} long, {Number(width)} wide, {Number(thickness)} thick",
                        1 => $"W={Number(width)} T={Number(thickness)} L={Number(length)}",
                        _ => $"{Number(thickness)}{times}{Number(width)}{times}{Number(length)}",
                    },
                    Species[species].Said, "split 1/2in end", "rack 7",
                ];
                var line = string.Join(", ", order.Select(index => phrases[index]));

                var board = Lines.Read(line).Board;

                return board is not null && board.Quantity == count && board.Size == new Dimensions(thickness, width, length) && board.Species == Species[species].Id
                    && board.Place == "rack 7" && board.Defects is [{ Kind: "split" } split] && split.Area.Right == Length.FromInches(0, 1, 2);
            }, iter: 1_000);

    [Fact]
    public void A_tilde_before_a_number_changes_nothing_but_that_it_is_an_estimate() =>
        Gen.Select(Sixteenths, Sixteenths, Gen.Int[0, 7]).Sample((width, length, which) =>
        {
            string Mark(int side) => (which & (1 << side)) == 0 ? "" : "~";
            var line = $"{Mark(0)}3/4 x {Mark(1)}{Written(width, 0)} x {Mark(2)}{Written(length, 1)} ash";
            var board = Lines.Read(line).Board!;
            return board.Size == Lines.Read(line.Replace("~", "", StringComparison.Ordinal)).Board!.Size
                && board.Estimates == new Estimates((which & 1) != 0, (which & 2) != 0, (which & 4) != 0);
        }, iter: 500);

    [Fact]
    public void What_is_said_back_is_understood_the_same() =>
        Gen.Select(Gen.Int[1, 20], Sixteenths, Sixteenths, Gen.Int[0, Species.Length - 1]).Sample((count, width, length, species) =>
        {
            var board = Lines.Read($"{count} @ 3/4 x {Written(width, 0)} x {Written(length, 0)} {Species[species].Said}").Board!;
            var again = Lines.Read(BoardSentence.Of(board, SpeciesCatalogue.Default.NameOf(board.Species), null, DisplayUnit.Inch)).Board!;
            return (again.Size, again.Quantity, again.Species, again.Surface) == (board.Size, board.Quantity, board.Species, board.Surface);
        }, iter: 500);

    [Fact]
    public void Scraps_of_lines_never_throw_and_are_either_understood_or_pointed_at() =>
        Gen.Int[0, Scraps.Length - 1].Array[0, 25].Select(scraps => string.Concat(scraps.Select(scrap => Scraps[scrap]))).Sample(IsReadOrPointedAt, iter: 4_000);

    [Fact]
    public void Noise_never_throws() => Gen.String.Sample(IsReadOrPointedAt, iter: 2_000);

    [Fact]
    public void A_broken_line_never_throws() => Gen.Select(Gen.Int[0, Whole.Length - 1], Gen.Int[0, 60], Gen.Int[0, 20], Gen.Int[0, Scraps.Length - 1])
        .Sample((line, at, cut, scrap) =>
        {
            var text = Whole[line];
            at = Math.Min(at, text.Length);
            return IsReadOrPointedAt(text[..at] + Scraps[scrap] + text[Math.Min(text.Length, at + cut)..]);
        }, iter: 2_000);

    [Theory]
    [InlineData(" ")]
    [InlineData("x ")]
    [InlineData("1 ")]
    [InlineData("ash ")]
    [InlineData("1/")]
    [InlineData("split 1 ")]
    public void The_longest_line_of_one_thing_is_read_at_once(string thing)
    {
        var line = string.Concat(Enumerable.Repeat(thing, QuickLineReader.LongestLine))[..QuickLineReader.LongestLine];
        var clock = System.Diagnostics.Stopwatch.StartNew();
        Assert.True(IsReadOrPointedAt(line));
        // A thousand times what it takes, so that only a pattern that runs wild fails.
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(5), clock.Elapsed.ToString());
    }

    private static readonly string[] Whole = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "QuickLines", "understood.txt")).Select(line => line.Split(" => ")[0])];

    private static bool IsReadOrPointedAt(string line)
    {
        var before = new QuickCarry("white-oak", "rack 1", "log 9");
        var reading = new QuickLineReader(Lines.Words(), DisplayUnit.Inch).Read(line, before);
        return reading.Faults.Count > 0
            ? reading is { Board: null, Understood: null } && reading.Carry == before && reading.Faults.All(fault => fault.Column >= 1 && fault.Column <= line.Length + 1 && fault.Detail.Length > 0)
            : reading.Board is not { } board || (reading.Understood is not null && BoardRules.Check(board).Count == 0);
    }

    private static string Written(Length side, int kind) => kind switch
    {
        0 => LengthText.Format(side, DisplayUnit.Inch).TrimEnd('"'),
        1 => LengthText.Format(side, DisplayUnit.Inch).TrimEnd('"').Replace(' ', '-'),
        _ => side.Inches.ToString("0.######", CultureInfo.InvariantCulture),
    };
}
