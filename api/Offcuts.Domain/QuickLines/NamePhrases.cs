using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Where boards lie, what batch they are of, where they came from, and notes.</summary>
internal static partial class NamePhrases
{
    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    // Where a workshop keeps wood (from memory); the places that the shop has named itself are known besides.
    private const string Noun = "rack|shelf|bin|wall|corner|cart|drawer|attic|loft|shed|garage|stack|pile|bay|box|barrel|bucket|rafters|floor|slot|tier|row|locker|cabinet|bench|store|basement|cellar|barn";
    private const string Number = """(?: +#?(?:[0-9]{1,3}[a-z]?|[a-z](?:[0-9]{1,2})?)(?![\p{L}\p{N}.'"~]| *[/@*]| *x(?!\p{L})))?""";
    private const string Text = @"(?<text>[^,;\s][^,;]*?)(?= *(?:[,;]|$)| +(?:batch|lot|log|flitch|from|source|note|place)(?![\p{L}\p{N}]))";

    /// <summary>Takes a name behind its keyword, a note, or a kind of place; false if none stands here.</summary>
    public static bool TryTake(LineScanner line, LineDraft draft, QuickWords words)
    {
        var at = line.At;
        if (line.Take(None()) is { } none)
        {
            Set(draft, none.Groups["what"].Value.ToLowerInvariant(), at, "");
            return true;
        }

        if (words.TakeKnownPlace(line) is { } known)
        {
            Set(draft, "place", at, known);
            return true;
        }

        if (line.Take(Named()) is not { } named)
        {
            return TryTakePlace(line, draft);
        }

        var what = named.Groups["what"].Value.ToLowerInvariant() switch
        {
            "from" or "source" => "source",
            "note" or "notes" => "note",
            "batch" or "lot" or "log" or "flitch" or "tree" => "batch",
            _ => "place",
        };
        // A batch is called by its own name; a lot or a log by what it is, too: log 3. So is a place behind or under something.
        var text = named.Groups["whole"] is { Success: true } whole ? whole.Value : named.Groups["text"].Value;
        Set(draft, what, at, text.Trim());
        return true;
    }

    /// <summary>Takes a kind of place with a word of the maker's own before it, <c>offcut bin</c>; false if none stands here.</summary>
    public static bool TryTakeOwnPlace(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        if (line.Take(OwnPlace()) is not { } place)
        {
            return false;
        }

        Set(draft, "place", at, place.Value.Trim());
        return true;
    }

    private static bool TryTakePlace(LineScanner line, LineDraft draft)
    {
        var at = line.At;
        if (line.Take(Place()) is not { } place)
        {
            return false;
        }

        Set(draft, "place", at, place.Groups["place"].Value.Trim());
        return true;
    }

    private static void Set(LineDraft draft, string what, int at, string text)
    {
        if (!draft.Once(what, at))
        {
            return;
        }

        switch (what)
        {
            case "source":
                draft.Source = text;
                break;
            case "note":
                draft.Note = text;
                break;
            case "batch":
                draft.Batch = text;
                break;
            default:
                draft.Place = text;
                break;
        }
    }

    [GeneratedRegex(@"\G(?:no +(?<what>place|batch)|(?<what>place|batch) *[:=]? *none)(?![\p{L}\p{N}])", Options)]
    private static partial Regex None();

    [GeneratedRegex(
        $@"\G(?:(?<what>notes?) *[:=]? +(?<text>.+)|(?<what>batch|place|source|from) *[:=]? *(?<=[ :=]){Text}"
        + $@"|(?<whole>(?<what>lot|log|flitch|tree) +#?[\p{{L}}\p{{N}}-]+)|(?<whole>(?<what>behind|under|beneath|beside|above|near|next to|outside) +{Text}))", Options)]
    private static partial Regex Named();

    [GeneratedRegex($@"\G(?:(?:at|in|on|by) +(?:the +)?)?(?<place>(?:{Noun})(?:s(?![\p{{L}}\p{{N}}]))?(?![\p{{L}}\p{{N}}]){Number})", Options)]
    private static partial Regex Place();

    [GeneratedRegex($@"\G[\p{{L}}\p{{N}}'-]+ (?:{Noun})(?![\p{{L}}\p{{N}}]){Number}", Options)]
    private static partial Regex OwnPlace();
}
