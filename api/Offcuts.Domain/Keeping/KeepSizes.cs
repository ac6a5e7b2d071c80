namespace Offcuts.Domain;

/// <summary>The sizes of one species that are kept: whatever reaches all sides of one of the least sizes.</summary>
/// <param name="Least">The least sizes, every side named; none if nothing is kept.</param>
public sealed record KeepSizes(IReadOnlyList<KeepSize> Least)
{
    /// <summary>What is kept from one size on.</summary>
    public static KeepSizes From(Dimensions least) => new([new(least.Length, least.Width, least.Thickness)]);

    /// <summary>What a rule keeps of a species.</summary>
    /// <param name="rule">The rule, with concrete species.</param>
    /// <param name="otherwise">What is kept where it does not decide.</param>
    /// <param name="species">Species id.</param>
    public static KeepSizes Of(KeepRule rule, Dimensions otherwise, string species)
    {
        // From the last entry to the first: each adds to what those behind it keep, takes from it, or takes its place.
        IEnumerable<KeepSize> kept = From(otherwise).Least;
        foreach (var entry in rule.Entries.Where(entry => entry.IsAbout(species)).Reverse())
        {
            kept = entry.Word switch
            {
                KeepWord.Keep => entry.Sizes.Select(Whole),
                KeepWord.Always => entry.Sizes.DefaultIfEmpty().Select(Whole).Concat(kept),
                KeepWord.Never => entry.Sizes.Count == 0 ? [] : entry.Sizes.Aggregate(kept, (left, under) => left.Select(size => Both(size, under))),
            };
        }

        return new(Undominated([.. kept]));
    }

    /// <summary>Whether a piece is kept.</summary>
    public bool Include(Dimensions piece)
    {
        foreach (var size in Least)
        {
            if (!size.Missed(piece).Any())
            {
                return true;
            }
        }

        return false;
    }

    private static KeepSize Whole(KeepSize size) => size with
    {
        Length = size.Length ?? KeepRule.Smallest.Length,
        Width = size.Width ?? KeepRule.Smallest.Width,
        Thickness = size.Thickness ?? KeepRule.Smallest.Thickness,
    };

    private static KeepSize Both(KeepSize a, KeepSize b) =>
        new(Larger(a.Length, b.Length), Larger(a.Width, b.Width), Larger(a.Thickness, b.Thickness), b.Section is null || a.Section > b.Section ? a.Section : b.Section);

    private static Length? Larger(Length? a, Length? b) => b is null || a > b ? a : b;

    private static List<KeepSize> Undominated(List<KeepSize> sizes)
    {
        var left = new List<KeepSize>();
        foreach (var size in sizes.Where(size => !left.Contains(size)))
        {
            if (!left.Exists(other => IsReachedBy(other, size)))
            {
                left.RemoveAll(other => IsReachedBy(size, other));
                left.Add(size);
            }
        }

        return left;
    }

    // Whether whatever reaches one size reaches a smaller one, too.
    private static bool IsReachedBy(KeepSize smaller, KeepSize size) =>
        smaller.Length <= size.Length && smaller.Width <= size.Width && smaller.Thickness <= size.Thickness && (smaller.Section is null || smaller.Section <= size.Section);
}
