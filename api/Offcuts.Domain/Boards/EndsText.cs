using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>The state of a board's ends as makers write it: <c>sound</c> for both, or <c>left checked, right sound</c>.</summary>
public static partial class EndsText
{
    /// <summary>Reads the state of both ends; an end that is not named is unknown. Never throws.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="ends">The ends; unknown if there is an error.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(string? text, out Ends ends, [NotNullWhen(false)] out string? error)
    {
        var written = (text ?? "").Trim();
        error = null;
        ends = default;
        var match = Written().Match(written);
        if (!match.Success)
        {
            error = $"{LengthText.Quote(written)} does not say how the ends are. "
                + "Write sound, checked or unknown for both, or each by itself: left checked, right sound.";
            return false;
        }

        ends = match.Groups["both"] is { Success: true } both
            ? new Ends(State(both.Value), State(both.Value))
            : new Ends(State(match.Groups["left"].Value), State(match.Groups["right"].Value));
        return true;
    }

    /// <summary>Prints the ends: <c>sound</c>, or <c>left checked, right sound</c>.</summary>
    public static string Format(Ends ends) => ends.Left == ends.Right ? Word(ends.Left) : $"left {Word(ends.Left)}, right {Word(ends.Right)}";

    private static string Word(EndState state) => state switch
    {
        EndState.Unknown => "unknown",
        EndState.Checked => "checked",
        EndState.Sound => "sound",
    };

    private static EndState State(string word) => word.ToLowerInvariant() switch
    {
        "checked" => EndState.Checked,
        "sound" => EndState.Sound,
        _ => EndState.Unknown,
    };

    [GeneratedRegex(
        "^(?:(?:both +)?(?<both>unknown|checked|sound)|left +(?<left>unknown|checked|sound)(?: *, *right +(?<right>unknown|checked|sound))?|right +(?<right>unknown|checked|sound))$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Written();
}
