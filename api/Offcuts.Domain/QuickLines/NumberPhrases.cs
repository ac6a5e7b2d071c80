using System.Globalization;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Counts and sizes: <c>3 @</c>, <c>3/4 x 5 1/2 x 36</c>, <c>~30 long</c>.</summary>
internal static partial class NumberPhrases
{
    /// <summary>A length as a size, a defect or a warp may hold it; named <c>number</c>.</summary>
    public const string Number =
        $"""(?:(?:{LengthReading.Amount}) *(?:'|(?:ft|foot|feet)(?![a-wyz]|x[a-z])\.?)(?: *-? *(?:{LengthReading.Amount})(?: *(?:"|(?:inches|inch|in)(?![a-wyz]|x[a-z])\.?)|(?![0-9./]| *[0-9@'"]| *(?:pcs?|pieces?|boards?|planks?|sheets?|offcuts?|off|ea|each|of)(?![a-z]))))?|(?:{LengthReading.Amount}) *(?:"|(?:inches|inch|in|mm|cm|m)(?![a-wyz]|x[a-z])\.?)?)""";

    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    // Not written out while compiling, because that is long.
    private static readonly Regex Written = new(
        $@"\G(?<about>~ *|(?:about|approximately|approx|roughly|around|circa|ca)\b\.? *)?(?<number>{Number})(?<ish> *-?ish\b| *\?)?", Options);

    /// <summary>Takes a count, a number of a size or the sign between two; false if none stands here.</summary>
    public static bool TryTake(LineScanner line, LineDraft draft, ref Times times)
    {
        var at = line.At;
        if (line.Take(Count()) is { } count)
        {
            TakeCount(draft, at, count.Groups["count"].Value);
            return true;
        }

        if (line.Take(DecimalComma()) is { } comma)
        {
            draft.Fault(at, "A decimal comma: write a decimal point, for instance 5.5.");
            draft.Numbers.Add(new(at, comma.Value, false, true, false, null));
            times = default;
            return true;
        }

        if (line.Take(Sign()) is not null)
        {
            if (draft.Numbers.Count == 0 || times.IsPending)
            {
                draft.Fault(at, "An x stands between two numbers of a size, for instance 3/4 x 5 1/2 x 36.");
            }

            times = new(true, at, at > 0 && !char.IsWhiteSpace(line.Text[at - 1]));
            return true;
        }

        return TryTakeNumber(line, draft, ref times);
    }

    private static bool TryTakeNumber(LineScanner line, LineDraft draft, ref Times times)
    {
        var at = line.At;
        var before = line.Take(SideBefore());
        if (line.Take(Written) is not { } match)
        {
            return false;
        }

        var text = match.Groups["number"].Value.Trim();
        var behind = line.Take(SideBehind());
        var number = new SizeNumber(
            match.Groups["number"].Index, text, match.Groups["about"].Success || match.Groups["ish"].Success, times.IsPending,
            times is { IsPending: true, IsTight: true } && times.At + 1 == match.Index, SideOf(before) ?? SideOf(behind));
        if (draft.Numbers.Count > 0 && !times.IsPending && number.Side is null && draft.Numbers[^1] is { Side: null } last
            && IsSideBySide(line, last, number))
        {
            draft.Fault(at, $"Two numbers stand side by side: write an x between them, for instance {last.Text} x {text}.");
        }

        draft.Numbers.Add(number);
        times = default;
        return true;
    }

    // A thickness in quarters is one by itself, and the length of 1x6 stands apart: 4/4 7 x 62, 1x6 70.
    private static bool IsSideBySide(LineScanner line, SizeNumber last, SizeNumber number) =>
        string.IsNullOrWhiteSpace(line.Text[(last.At + last.Text.Length)..number.At]) && !last.IsTight
        && !LengthReading.IsQuarters(last.Text) && !LengthReading.IsQuarters(number.Text);

    private static void TakeCount(LineDraft draft, int at, string digits)
    {
        if (!draft.Once("count", at))
        {
            return;
        }

        if (int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= Limits.MaxQuantity)
        {
            draft.Quantity = count;
            return;
        }

        draft.Fault(at, string.Create(CultureInfo.InvariantCulture, $"This is no count of boards: give 1 to {Limits.MaxQuantity}."));
    }

    private static Side? SideOf(Match? named) => named?.Groups["side"].Value.ToLowerInvariant() switch
    {
        null => null,
        ['t', ..] => Side.Thickness,
        ['w', ..] => Side.Width,
        _ => Side.Length,
    };

    [GeneratedRegex(
        @"\G(?:(?<count>[0-9]+) *(?:@|(?:pcs?|pieces?|boards?|planks?|sticks?|sheets?|offcuts?|off|ea|each)(?![\p{L}\p{N}])\.?(?: +of\b)?|of\b)|(?:qty|quantity|count|bundle of|pack of)\b\.? *[:=]? *(?<count>[0-9]+)(?![0-9/.]| *[x*])|\( *(?<count>[0-9]+) *\))",
        Options)]
    private static partial Regex Count();

    [GeneratedRegex(@"\G[0-9]+,[0-9]+(?![0-9/])(?=$| |[x*""]|in\b|mm\b|cm\b|m\b)", Options)]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"\G(?:[x*]|by(?= +(?:[~0-9.]|about|approx|roughly|around)))(?!\p{L})", Options)]
    private static partial Regex Sign();

    [GeneratedRegex(@"\G(?:(?<side>thickness|width|length) *[:=]? *|(?<side>[twl]) *[:=] *)(?=~|[0-9.]|about\b|approx|roughly\b|around\b|circa\b|ca\b)", Options)]
    private static partial Regex SideBefore();

    // A letter alone is a side only right behind the number or where nothing else can follow: 7 w oak is white oak.
    [GeneratedRegex(@"\G-?(?:(?<side>thick|thk|wide|long|lg)\b\.?|(?<=[0-9""'])(?<side>[twl])(?![\p{L}\p{N}])|(?<side>[twl])(?= *(?:[x*,;]|$)))", Options)]
    private static partial Regex SideBehind();
}

/// <summary>The sign between two numbers of a size that was read last.</summary>
/// <param name="IsPending">Whether a number has yet to follow it.</param>
/// <param name="At">Where it stands.</param>
/// <param name="IsTight">Whether it follows its number without a space.</param>
internal readonly record struct Times(bool IsPending, int At, bool IsTight);
