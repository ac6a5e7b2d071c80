namespace Offcuts.Domain;

/// <summary>
/// What the words for a defect mean. A part tolerates a kind if the kind begins with the words that the part names, in any case and
/// number: <c>knot</c> tolerates "Knots" and "knot, loose". What holds metal is tolerated by no part, whatever it names: a blade meets it.
/// </summary>
public static class DefectKinds
{
    private static readonly HashSet<string> Metal = new(StringComparer.Ordinal)
    {
        "metal", "nail", "screw", "staple", "bolt", "wire", "spike", "tack", "brad", "bullet", "shot", "iron", "steel", "hardware", "fastener", "hinge",
    };

    // What metal leaves behind when it is gone. A "nail hole" is a hole; a "nail" is a nail.
    private static readonly HashSet<string> Traces = new(StringComparer.Ordinal) { "hole", "mark", "stain" };

    // Common practice, from memory: what makers and graders call what they cut around.
    private static readonly HashSet<string> Usual = new(StringComparer.Ordinal)
    {
        "knot", "branch", "crotch", "burl", "pith", "bark", "wane", "sapwood", "sap", "heartwood", "split", "check", "crack", "shake", "honeycomb", "worm",
        "wormhole", "insect", "beetle", "peck", "hole", "pitch", "gum", "resin", "pocket", "streak", "mineral", "stain", "blue", "spalt", "spalting", "rot",
        "decay", "mould", "mold", "fungus", "tear", "tearout", "snipe", "gouge", "dent", "chip", "scratch", "mark", "burn", "glue", "paint", "finish", "void",
        "delamination", "veneer", "corner", "groove", "dado", "rabbet", "mortise", "notch", "slot", "dowel", "damage", "grain", "wood", "defect",
    };

    /// <summary>
    /// What to mind about the words for a kind that are none of the usual ones: what was probably meant, or what such a kind does; null where
    /// there is nothing to mind.
    /// </summary>
    public static string? Advice(string kind)
    {
        var words = Words(kind);
        if (words.Count == 0 || words.Exists(word => Usual.Contains(word) || Metal.Contains(word)))
        {
            return null;
        }

        var meant = words.Select(word => Spelling.Nearest(word, Usual.Concat(Metal).Order(StringComparer.Ordinal))).OfType<string>().FirstOrDefault();
        return meant is null
            ? $"{LengthText.Quote(kind)} is no usual word for a defect: only parts that tolerate just that may contain it."
            : $"{LengthText.Quote(kind)} is no usual word for a defect: did you mean '{meant}'? As it is, only parts that tolerate just that may contain it.";
    }

    /// <summary>Whether the words name metal in the wood, and not only the hole, mark or stain that it left.</summary>
    public static bool HoldMetal(string kind)
    {
        var words = Words(kind);
        return words.Index().Any(word => Metal.Contains(word.Item) && (word.Index + 1 == words.Count || !Traces.Contains(words[word.Index + 1])));
    }

    /// <summary>Whether a part that tolerates these kinds may contain a defect of the kind.</summary>
    public static bool Tolerates(IReadOnlyList<string> tolerated, string kind)
    {
        if (tolerated.Count == 0 || HoldMetal(kind))
        {
            return false;
        }

        var words = Words(kind);
        return tolerated.Any(name => Words(name) is { Count: > 0 } named && named.Count <= words.Count && words.Take(named.Count).SequenceEqual(named, StringComparer.Ordinal));
    }

    /// <summary>Lower case, and without the s of more than one.</summary>
    private static List<string> Words(string kind) =>
    [
        .. kind.ToLowerInvariant().Split([.. kind.Where(sign => !char.IsLetterOrDigit(sign)).Distinct()], StringSplitOptions.RemoveEmptyEntries)
            .Select(word => word.Length > 3 && word[^1] == 's' && word[^2] != 's' ? word[..^1] : word),
    ];
}
