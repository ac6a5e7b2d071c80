using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>
/// A profile seen in the order of its cuts, its extents on a grid of cells. With a kerf k, pieces of extents e fit in a row on
/// an extent E if and only if the sum of (e + k) is at most E + k; so every size on the grid includes one kerf.
/// </summary>
internal sealed class OrientedProfile
{
    /// <param name="profile">What can be cut.</param>
    /// <param name="ripFirst">Which way the first cuts go.</param>
    /// <param name="kerf">The kerf in ticks.</param>
    /// <param name="extents">The largest extents of any board, along and across, in ticks.</param>
    /// <param name="mostCells">With more cells than this the grid is coarsened, and sizes are rounded.</param>
    /// <param name="roundDown">Round in favour of a bound instead of so that all fits.</param>
    public OrientedProfile(Profile profile, bool ripFirst, long kerf, (long Along, long Across) extents, int mostCells, bool roundDown)
    {
        Profile = profile;
        RipFirst = ripFirst;
        Kerf = kerf;
        var (mostFirst, mostSecond) = ripFirst ? (extents.Across, extents.Along) : extents;
        Blanks = profile.Blanks;
        First = [.. Blanks.Select(blank => ripFirst ? blank.Across : blank.Along)];
        Second = [.. Blanks.Select(blank => ripFirst ? blank.Along : blank.Across)];
        var stripFirst = ripFirst ? [] : profile.Families.Select(family => family.Along);
        FirstCell = CellSize(First.Concat(stripFirst), kerf, mostFirst, mostCells, out var coarseFirst);
        SecondCell = CellSize(Second, kerf, mostSecond, mostCells, out var coarseSecond);
        IsCoarse = coarseFirst || coarseSecond;
        MostCellsUsed = (int)Math.Max((mostFirst + kerf) / FirstCell, (mostSecond + kerf) / SecondCell);
        FirstCells = [.. First.Select(size => ToCells(size, FirstCell, roundDown))];
        SecondCells = [.. Second.Select(size => ToCells(size, SecondCell, roundDown))];
        FamilyFirstCells = [.. profile.Families.Select(family => ripFirst ? 0 : ToCells(family.Along, FirstCell, roundDown))];
    }

    public Profile Profile { get; }

    public bool RipFirst { get; }

    public long Kerf { get; }

    public BlankOption[] Blanks { get; }

    /// <summary>Extents of the blanks in ticks.</summary>
    public long[] First { get; }

    public long[] Second { get; }

    /// <summary>Ticks of a cell.</summary>
    public long FirstCell { get; }

    public long SecondCell { get; }

    /// <summary>Extents of the blanks with one kerf, in cells.</summary>
    public int[] FirstCells { get; }

    public int[] SecondCells { get; }

    /// <summary>Length of each family's strips with one kerf in cells, where sections run along the board.</summary>
    public int[] FamilyFirstCells { get; }

    /// <summary>Cells of the larger extent.</summary>
    public int MostCellsUsed { get; }

    /// <summary>What pricing it takes, roughly: cells times blanks.</summary>
    public long Work => (long)MostCellsUsed * (Blanks.Length + Profile.Families.Length);

    /// <summary>Whether sizes had to be rounded.</summary>
    public bool IsCoarse { get; }

    public int FirstCapacity(long first) => (int)((first + Kerf) / FirstCell);

    public int SecondCapacity(long second) => (int)((second + Kerf) / SecondCell);

    public long FirstOf(BoardType board) => RipFirst ? board.Across : board.Along;

    public long SecondOf(BoardType board) => RipFirst ? board.Along : board.Across;

    private int ToCells(long size, long cell, bool roundDown) =>
        (int)(roundDown ? (size + Kerf) / cell : (size + Kerf + cell - 1) / cell);

    private static long CellSize(IEnumerable<long> sizes, long kerf, long most, int mostCells, out bool coarse)
    {
        var divisor = 0L;
        foreach (var size in sizes)
        {
            divisor = Gcd(divisor, size + kerf);
        }

        divisor = divisor == 0 ? most + kerf : divisor;
        coarse = (most + kerf) / divisor > mostCells;
        return coarse ? (most + kerf + mostCells - 1) / mostCells : divisor;
    }

    private static long Gcd(long a, long b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }
}
