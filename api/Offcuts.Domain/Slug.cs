using System.Text.RegularExpressions;

namespace Offcuts.Domain;

/// <summary>Names as they stand in paths and ids: <c>Hall bench</c> is <c>hall-bench</c>.</summary>
public static partial class Slug
{
    private const int Longest = 60;

    /// <summary>Lower-case letters a to z and digits, everything else a single hyphen, none at the ends; empty if nothing is left.</summary>
    public static string Of(string name)
    {
        var slug = NotPlain().Replace(name.ToLowerInvariant(), "-").Trim('-');
        return slug.Length <= Longest ? slug : slug[..Longest].TrimEnd('-');
    }

    [GeneratedRegex("[^a-z0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex NotPlain();
}
