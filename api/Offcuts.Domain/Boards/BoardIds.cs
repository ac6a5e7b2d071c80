using System.Diagnostics.CodeAnalysis;

namespace Offcuts.Domain;

/// <summary>Short ids of boards, to write on the end grain and to say aloud: <c>K7M</c>.</summary>
public static class BoardIds
{
    /// <summary>
    /// The signs of an id, one of each pair that looks alike in pencil on end grain: no 0 or O, 1, I or L, 2 or Z, 5 or S, 8 or B,
    /// U or V, M or N, G (6, C). Say them by letter and digit.
    /// </summary>
    public const string Signs = "34679ACDEFHJKPQRTWXY";

    private const int GroupLength = 3;

    private const long Round = 8000; // Signs.Length to the power of GroupLength: 20^3 = 2^6 * 5^3.

    // Coprime to Round, so that none comes twice; far from 0 and from Round / 2, so that neighbours on the rack get unlike ids.
    private const long Stride = 3671;

    // More groups than a 64-bit number can need.
    private const int LongestId = 6 * GroupLength;

    /// <summary>The id of the board with this number, from 1: three signs for the first 8000 boards, then three more for each further round.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public static string FromNumber(long number)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        var (round, place) = Math.DivRem(number - 1, Round);
        var mixed = (int)(place * Stride % Round);
        var count = Signs.Length;
        var group = $"{Signs[mixed / (count * count)]}{Signs[mixed / count % count]}{Signs[mixed % count]}";
        return round == 0 ? group : group + FromNumber(round);
    }

    /// <summary>
    /// The id that was meant by what a person wrote: in any case, with spaces or hyphens between the signs, G read as 6.
    /// </summary>
    /// <param name="written">What was written.</param>
    /// <param name="id">The id as it is stored; null if it can be none.</param>
    /// <returns>Whether it can be an id; not whether there is such a board.</returns>
    public static bool TryNormalise(string? written, [NotNullWhen(true)] out string? id)
    {
        var signs = string.Concat((written ?? "").Trim().ToUpperInvariant().Where(sign => sign is not (' ' or '-'))).Replace('G', '6');
        id = signs.Length is > 0 and <= LongestId && signs.Length % GroupLength == 0 && signs.All(Signs.Contains) ? signs : null;
        return id is not null;
    }
}
