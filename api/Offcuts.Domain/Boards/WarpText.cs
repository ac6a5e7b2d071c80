using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Warp as makers write it: <c>bow 1/4in, cup 1/8in</c>; <c>flat</c> for none.</summary>
public static partial class WarpText
{
    private const string Flat = "flat";
    private const string HowToWrite = "Write what was measured over the whole board, for instance bow 1/4in, cup 1/8in; or flat.";

    /// <summary>Reads a warp; never throws. Whether it suits the board is for <see cref="WarpRules"/> to check.</summary>
    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">The unit of a number that names none.</param>
    /// <param name="warp">The warp; flat if there is an error.</param>
    /// <param name="error">What is wrong and how to mend it; null if nothing is.</param>
    public static bool TryParse(string? text, DisplayUnit bareUnit, out Warp warp, [NotNullWhen(false)] out string? error)
    {
        (warp, error) = (default, null);
        var written = (text ?? "").Trim();
        if (written.Equals(Flat, StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        var named = new Dictionary<string, Length>(StringComparer.Ordinal);
        foreach (var part in written.Split(','))
        {
            if (Measured().Match(LengthSigns.Plain(part.Trim())) is not { Success: true } match)
            {
                error = $"{LengthText.Quote(written)} is not a warp. {HowToWrite}";
                return false;
            }

            if (!LengthText.TryParse(match.Groups["size"].Value, bareUnit, zeroAllowed: true, out var size, out error))
            {
                return false;
            }

            var kind = match.Groups["kind"].Value.ToLowerInvariant();
            if (!named.TryAdd(kind, size))
            {
                error = $"{LengthText.Quote(written)} names {kind} twice: give it once.";
                return false;
            }
        }

        warp = new Warp(Of("bow"), Of("crook"), Of("cup"), Of("twist"));
        return true;

        Length Of(string kind) => named.GetValueOrDefault(kind);
    }

    /// <summary>Prints a warp: <c>bow 1/4", cup 1/8"</c>; <c>flat</c> for none.</summary>
    public static string Format(Warp warp, DisplayUnit unit) => Format(warp, size => LengthText.Format(size, unit));

    /// <summary>Prints a warp without loss; what it prints can be read again.</summary>
    public static string FormatExact(Warp warp) => Format(warp, LengthText.FormatExact);

    private static string Format(Warp warp, Func<Length, string> format)
    {
        (string Kind, Length Size)[] all = [("bow", warp.Bow), ("crook", warp.Crook), ("cup", warp.Cup), ("twist", warp.Twist)];
        var measured = all.Where(each => each.Size > Length.Zero).Select(each => $"{each.Kind} {format(each.Size)}").ToList();
        return measured.Count == 0 ? Flat : string.Join(", ", measured);
    }

    [GeneratedRegex("^(?<kind>bow|crook|cup|twist) +(?<size>.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Measured();
}
