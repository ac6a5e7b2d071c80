using System.Reflection;

namespace Offcuts.Domain;

/// <summary>The tables of <c>db/reference</c>, which are part of this assembly: plain comma-separated values with no quoting.</summary>
internal static class ReferenceTable
{
    /// <summary>The rows of a table, each by its column names; lines that begin with # and the heading are left out.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string file)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"reference/{file}")
            ?? throw new OffcutsException(ErrorCode.DataIntegrity, $"The reference table {file} is not part of this program.");
        using var reader = new StreamReader(stream);
        var lines = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Where(line => !line.StartsWith('#')).ToList();
        var heading = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => Row(file, heading, line))];
    }

    private static Dictionary<string, string> Row(string file, string[] heading, string line)
    {
        var values = line.Split(',');
        return values.Length == heading.Length
            ? heading.Zip(values).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal)
            : throw new OffcutsException(
                ErrorCode.DataIntegrity, $"{file}: '{line}' has {values.Length} values under {heading.Length} headings.");
    }
}
