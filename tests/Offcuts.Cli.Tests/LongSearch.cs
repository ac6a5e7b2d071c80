using System.Globalization;
using System.Text;

namespace Offcuts.Cli.Tests;

/// <summary>A design that keeps a search busy for longer than any test: many parts that must be bought, and a proof out of reach.</summary>
internal static class LongSearch
{
    public const string File = "long-search.yaml";

    /// <summary>What it is stored as.</summary>
    public const string Slug = "long-search";

    /// <summary>What its plan is headed with.</summary>
    public const string Name = "Long search";

    private const int Parts = 30;

    /// <summary>Writes the design into a folder.</summary>
    public static void Write(string folder)
    {
        var text = new StringBuilder($"name: {Name}\nunit: in\nparts:\n");
        for (var number = 0; number < Parts; number++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"  - name: Part {number + 1}\n    quantity: {4 + (number % 5)}\n    size: 3/4 x {8 + (number * 7 % 33)}/8 x {7 + (number * 11 % 37)}\n    species: [white ash, cherry]\n");
        }

        System.IO.File.WriteAllText(Path.Combine(folder, File), text.ToString());
    }
}
