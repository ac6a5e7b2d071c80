using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>How a board is: how far milled, how it looks, its ends, its warp.</summary>
internal static partial class ConditionPhrases
{
    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    /// <summary>Takes such a phrase; false if none stands here.</summary>
    public static bool TryTake(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        if (line.Take(Milled()) is { } milled)
        {
            if (draft.Once("surface", at))
            {
                draft.Surface = milled.Groups["rough"].Success ? Surface.Rough : milled.Groups["skip"].Success ? Surface.SkipPlaned : Surface.Surfaced;
            }

            return true;
        }

        if (line.Take(Estimate()) is not null)
        {
            draft.IsEstimate = true;
            return true;
        }

        return TryTakeWarp(line, draft) || TryTakeEnds(line, draft) || TryTakeMoisture(line, draft) || TryTakeAppearance(line, draft);
    }

    private static bool TryTakeMoisture(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        if (line.Take(Moist()) is not { } moist)
        {
            return false;
        }

        if (draft.Once("moisture", at))
        {
            if (MoistureText.TryParse(moist.Groups["percent"].Value, out var reading, out var error))
            {
                draft.Moisture = reading;
            }
            else
            {
                draft.Fault(at, error);
            }
        }

        return true;
    }

    private static bool TryTakeAppearance(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        if (line.Take(Looks()) is not { } looks)
        {
            return false;
        }

        if (draft.Once("appearance", at))
        {
            draft.Appearance = looks.Groups["clear"].Success ? Appearance.Clear : looks.Groups["knots"].Success ? Appearance.SoundKnots : Appearance.Paint;
        }

        return true;
    }

    private static bool TryTakeWarp(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        if (line.Take(Warped) is not { } warp)
        {
            return false;
        }

        var kind = warp.Groups["kind"].Value.ToLowerInvariant();
        kind = kind.StartsWith("cup", StringComparison.Ordinal) ? "cup" : kind.Replace("ed", "", StringComparison.Ordinal);
        if (draft.Once(kind, at))
        {
            draft.Warp.Add(kind, warp.Groups["number"].Value.Trim());
        }

        return true;
    }

    private static bool TryTakeEnds(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        if (line.Take(OfEnds()) is not { } said)
        {
            return false;
        }

        var state = said.Groups["state"].Value.ToLowerInvariant() switch
        {
            "sound" or "good" or "clean" or "square" => EndState.Sound,
            "unknown" => EndState.Unknown,
            _ => EndState.Checked,
        };
        var (left, right) = said.Groups["which"].Value.ToLowerInvariant() switch
        {
            // A board may be turned, so the end that is spoken of is the one it is measured from.
            "left" or "one" => (true, false),
            "right" or "other" or "far" => (false, true),
            _ => (true, true),
        };
        if ((!left || draft.Once("state of the left end", at)) && (!right || draft.Once("state of the right end", at)))
        {
            draft.Ends = (left ? state : draft.Ends.Left, right ? state : draft.Ends.Right);
        }

        return true;
    }

    [GeneratedRegex(
        @"\G(?:(?<rough>rough(?:[ -]?sawn)?|rgh|sawn)|(?<skip>skip(?:[ -]?(?:planed|dressed))?|hit[ -](?:or|and)[ -]miss)|surfaced|planed|dressed|s[234]s)(?![\p{L}\p{N}])", Options)]
    private static partial Regex Milled();

    // A per cent sign is enough: nothing else of a board is given in per cent.
    [GeneratedRegex(
        @"\G(?:(?:mc|moisture(?: +content)?) *[:=]? *(?:is +|of +|at +)?(?<percent>[0-9]{1,9}(?:\.[0-9]{1,9})?)(?![0-9.]*[/0-9]) *%?|(?<percent>[0-9]{1,9}(?:\.[0-9]{1,9})?) *(?:% *(?:mc|moisture(?: +content)?)?|mc|moisture(?: +content)?))(?![\p{L}\p{N}])", Options)]
    private static partial Regex Moist();

    [GeneratedRegex(@"\G(?:estimated?|guess(?:ed)?|unmeasured|not measured|by eye)(?![\p{L}\p{N}])", Options)]
    private static partial Regex Estimate();

    [GeneratedRegex(@"\G(?:(?<clear>clear)|(?<knots>sound[ -]knots?|knotty)|paint(?:[ -]?grade)?)(?![\p{L}\p{N}])", Options)]
    private static partial Regex Looks();

    // Not written out while compiling: with its two numbers it would be longer than all else here.
    private static readonly Regex Warped = new($@"\G(?:(?<kind>bow|crook|cup|twist)(?:p?ed)? +(?:of +|by +)?(?<number>{NumberPhrases.Number})|(?<number>{NumberPhrases.Number}) *(?:of +)?(?<kind>bow|crook|cup|twist)(?![\p{{L}}\p{{N}}]))", Options);

    [GeneratedRegex(
        @"\G(?:(?:(?<which>both|left|right|one|other|far) +)?ends? +(?:is +|are +)?(?<state>checked|sound|unknown|good|clean|square)"
        + @"|(?<which>left|right) +(?<state>checked|sound|unknown)(?: +end)?|(?<state>checked|sound) +ends)(?![\p{L}\p{N}])", Options)]
    private static partial Regex OfEnds();
}
