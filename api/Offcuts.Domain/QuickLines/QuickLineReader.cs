using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>
/// Boards as a maker says them, one line each: <c>3 @ 3/4 x 5 1/2 x 36 ash</c>, or <c>4/4 rough x 7 x 62 walnut, split 3in end, rack 2</c>.
/// What is said may stand in any order. Thickness comes before width before length where nothing says otherwise (4/4 is a thickness wherever it
/// stands, and so is what is called thick, wide or long). Species, place and batch carry on to the next line. <c>~30</c> is an estimate.
/// A line that begins with # is a remark.
/// </summary>
/// <param name="words">The names that lines may use.</param>
/// <param name="bareUnit">The unit of numbers where none is written.</param>
public sealed partial class QuickLineReader(QuickWords words, DisplayUnit bareUnit)
{
    /// <summary>Longest line, in signs.</summary>
    public const int LongestLine = 400;

    private static readonly string[] Vocabulary =
        ["rough", "skip-planed", "surfaced", "clear", "knotty", "paint", "split", "check", "knot", "sound", "checked", "batch", "place", "rack", "shelf", "note", "from", "thick", "wide", "long"];

    /// <summary>Reads a line; never throws. Nothing of a line with a fault is a board.</summary>
    /// <param name="text">The line, without its line break.</param>
    /// <param name="carry">What the lines before carry on.</param>
    public QuickReading Read(string text, QuickCarry carry)
    {
        if (text.Length > LongestLine)
        {
            return new() { Carry = carry, Faults = [new(LongestLine + 1, $"The line is too long: give at most {LongestLine} signs.")] };
        }

        if (string.IsNullOrWhiteSpace(text) || text.TrimStart().StartsWith('#'))
        {
            return new() { Carry = carry };
        }

        var line = new LineScanner(text);
        var draft = new LineDraft(line);
        var times = default(Times);
        while (!line.IsAtEnd)
        {
            if (line.Take(Filler()) is null && !TryTake(line, draft, ref times))
            {
                NotUnderstood(line, draft);
            }
        }

        if (times.IsPending)
        {
            draft.Fault(times.At, "The number behind this x is missing: a size is thickness x width x length.");
        }

        return new DraftBoard(words.Catalogue, bareUnit).Finish(line, draft, carry);
    }

    // Defects and warp come before sizes, because they begin with numbers, too; species last, because their beginnings may be any word's.
    private bool TryTake(LineScanner line, LineDraft draft, ref Times times) =>
        ConditionPhrases.TryTake(line, draft)
        || DefectPhrases.TryTake(line, draft)
        || NumberPhrases.TryTake(line, draft, ref times)
        || NamePhrases.TryTake(line, draft, words)
        || words.TryTakeSpecies(line, draft)
        || NamePhrases.TryTakeOwnPlace(line, draft);

    private void NotUnderstood(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        var word = line.Take(Anything())?.Value.Trim() ?? "";
        var near = Spelling.Nearest(word.ToLowerInvariant(), Vocabulary) ?? words.Catalogue.Suggest(word);
        draft.Fault(at, $"{LengthText.Quote(word)} is not understood.{(near is null ? "" : $" Did you mean {near}?")}");
    }

    [GeneratedRegex(@"\G(?:[,;:]+|-+(?= )|\.+(?![0-9])|(?:and|with|of|the|a|an|is|it|has|some|boards?|pieces?|pcs|planks?|sticks?|sheets?)(?![\p{L}\p{N}'-]))", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Filler();

    [GeneratedRegex(@"\G(?:[\p{L}\p{N}][\p{L}\p{N}'/.-]*|.)", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Anything();
}
