using System.Text.RegularExpressions;

namespace Offcuts.Cli.Commands.Prices;

/// <summary>The supplier that a price list names, so that nobody has to say it twice.</summary>
internal static partial class SupplierName
{
    /// <summary>
    /// The supplier as paths name it, lower-case words with hyphens; null if the text has no line for it. It is only an address:
    /// the API reads the whole document and refuses one that names another supplier.
    /// </summary>
    public static string? In(string document) =>
        Line().Match(document) is { Success: true } line && Words().Replace(line.Groups["name"].Value.ToLowerInvariant(), "-").Trim('-') is { Length: > 0 } name
            ? name
            : null;

    [GeneratedRegex("""^[ {]*"?supplier"?[ ]*:[ ]*["']?(?<name>[^"'#,\r\n]+)""", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex Line();

    [GeneratedRegex(@"[^\p{L}\p{Nd}]+", RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}
