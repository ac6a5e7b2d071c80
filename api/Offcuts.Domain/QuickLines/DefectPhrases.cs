using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Defects: <c>split 3in end</c>, <c>check 2 both ends</c>, <c>loose knot 10..12 x 1..2</c>.</summary>
internal static partial class DefectPhrases
{
    private const string Kinds = "split|check|crack|shake|knot|hole|wormhole|nail|screw|staple|stain|rot|wane|bark|pith|gouge|dent|mortise|groove|burn|snipe|sapwood|pocket|mark|damage";
    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    private const string Kind = $@"(?:(?:end|the|a) +)?(?<kind>(?:(?:loose|dead|dry|drying|tight|black|small|large|big|old|nail|screw|bolt|worm|bug|blue|surface|pitch|bark) +)?(?:{Kinds})(?:e?s)?)(?![\p{{L}}\p{{N}}])";
    private const string Which = "(?<end>left|right|one|other|far|both|each|either)";

    // Not written out while compiling: with several numbers in each they would be longer than all the rest of the domain.
    private static readonly Regex Within = new(
        $@"\G{Kind} *(?:from +|at +)?(?<along>(?:{NumberPhrases.Number}) *(?:\.\.| to ) *(?:{NumberPhrases.Number}))(?: *x *(?<across>(?:{NumberPhrases.Number}) *(?:\.\.| to ) *(?:{NumberPhrases.Number})))?", Options);

    private static readonly Regex AtEnd = new(
        $@"\G(?:(?:{Which} +ends? +)?{Kind} *(?<number>{NumberPhrases.Number}) *(?:(?:(?:at|from|on|in|off|of) +)?(?:the +)?(?:{Which} +)?ends?|{Which})(?![\p{{L}}\p{{N}}])"
        + $@"|{Kind} +(?:at +|on +|in +)?(?:the +)?(?:{Which} +)?ends? +(?<number>{NumberPhrases.Number})|{Which} +(?:end +)?{Kind} +(?<number>{NumberPhrases.Number}))", Options);

    // What begins at an end by its nature may leave out that it does.
    private static readonly Regex FromEnd = new(
        $@"\G(?:(?:end|the|a) +)?(?<kind>(?:(?:dry|drying|end|surface) +)?(?:split|check|crack|shake)s?) *(?:of +)?(?<number>{NumberPhrases.Number})", Options);

    /// <summary>Takes a defect; false if none stands here.</summary>
    public static bool TryTake(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        if (line.Take(Within) is { } within)
        {
            var across = within.Groups["across"] is { Success: true } given ? $" x {given.Value}" : "";
            draft.Defects.Add(new(at, [$"{KindOf(within)} {within.Groups["along"].Value}{across}"]));
            return true;
        }

        if ((line.Take(AtEnd) ?? line.Take(FromEnd)) is { } atEnd)
        {
            string[] ends = atEnd.Groups["end"].Value.ToLowerInvariant() switch
            {
                "right" or "other" or "far" => ["right"],
                "both" or "each" or "either" => ["left", "right"],
                // A board may be turned, so the end that is spoken of is the one it is measured from.
                _ => ["left"],
            };
            draft.Defects.Add(new(at, [.. ends.Select(end => $"{KindOf(atEnd)} {atEnd.Groups["number"].Value.Trim()} at the {end} end")]));
            return true;
        }

        if (line.Take(Alone()) is not { } alone)
        {
            return false;
        }

        draft.Fault(at, $"Where is the {KindOf(alone)}? Write how far it reaches from an end, for instance split 3in end, or from where to where: knot 10..12 x 1..2.");
        return true;
    }

    private static string KindOf(Match match) => match.Groups["kind"].Value.Trim();

    [GeneratedRegex($@"\G{Kind}", Options)]
    private static partial Regex Alone();
}
