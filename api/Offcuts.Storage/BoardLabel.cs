namespace Offcuts.Storage;

/// <summary>Short ids to write on the end grain.</summary>
internal static class BoardLabel
{
    // No 0/O, 1/I/L, 2/Z, 5/S, 8/B, U/V, M/N: signs that look alike in pencil on end grain.
    private const string Signs = "34679ACDEFGHJKPQRTWXY";

    // Coprime to Signs.Length^3 = 9261 = 3^3 * 7^3, so neighbours on the rack get unlike ids and none comes twice.
    private const long Stride = 3671;

    /// <summary>The id of the board with this number, from 1: three signs for the first 9261 boards, then a group more for each further round.</summary>
    public static string Of(long number)
    {
        const long Round = 9261;
        var (round, place) = Math.DivRem(number - 1, Round);
        var mixed = place * Stride % Round;
        var label = $"{Signs[(int)(mixed / 441)]}{Signs[(int)(mixed / 21 % 21)]}{Signs[(int)(mixed % 21)]}";
        return round == 0 ? label : label + Of(round);
    }
}
