namespace Offcuts.Domain.Tests;

/// <summary>A small shop whose lines are read.</summary>
internal static class Lines
{
    private static readonly string[] Owned = ["black-walnut", "white-oak", "white-ash", "black-cherry", "yellow-poplar", "birch-plywood", "eastern-white-pine"];

    private static readonly string[] Places = ["rack A", "behind the door", "offcut bin"];

    public static QuickWords Words(string[]? owned = null) => new(SpeciesCatalogue.Default, owned ?? Owned, Places);

    public static QuickReading Read(string line, string[]? owned = null) => new QuickLineReader(Words(owned), DisplayUnit.Inch).Read(line, new());

    public static IReadOnlyList<QuickReading> Log(params string[] lines) => Log(lines, null);

    public static IReadOnlyList<QuickReading> Log(string[] lines, string[]? owned) => QuickLog.Read(lines, Words(owned), DisplayUnit.Inch, new());
}
