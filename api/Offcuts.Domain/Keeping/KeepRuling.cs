namespace Offcuts.Domain;

/// <summary>What the rule says of a piece, and why.</summary>
/// <param name="IsKept">Whether it is kept.</param>
/// <param name="Number">Number of the entry that decides, from 1; 0 where none does and the shop's keep size holds.</param>
/// <param name="Entry">That entry; null where none decides.</param>
/// <param name="Size">The size that it reaches, comes closest to, or is under; null where no size matters.</param>
/// <param name="Missed">What of it the piece does not reach.</param>
public sealed record KeepRuling(bool IsKept, int Number, KeepEntry? Entry, KeepSize? Size, IReadOnlyList<KeepSide> Missed)
{
    /// <summary>The same ruling by the words in which the rule was written, where its classes still are classes.</summary>
    /// <param name="written">The rule as it was written, entry by entry the one that was asked.</param>
    public KeepRuling AsWritten(KeepRule written) => Number == 0 ? this : this with { Entry = written.Entries[Number - 1] };

    /// <summary>The ruling about a piece.</summary>
    /// <param name="rule">The rule, with concrete species.</param>
    /// <param name="otherwise">What is kept where it does not decide.</param>
    /// <param name="species">Species id of the piece.</param>
    /// <param name="piece">Its size.</param>
    public static KeepRuling Of(KeepRule rule, Dimensions otherwise, string species, Dimensions piece)
    {
        foreach (var (index, entry) in rule.Entries.Index().Where(each => each.Item.IsAbout(species)))
        {
            if (Decide(index + 1, entry, piece) is { } ruling)
            {
                return ruling;
            }
        }

        var size = new KeepSize(otherwise.Length, otherwise.Width, otherwise.Thickness);
        List<KeepSide> missed = [.. size.Missed(piece)];
        return new(missed.Count == 0, 0, null, size, missed);
    }

    private static KeepRuling? Decide(int number, KeepEntry entry, Dimensions piece)
    {
        var sizes = entry.Sizes.Select(size => (Size: size, Missed: size.Missed(piece).ToList())).ToList();
        if (entry.Word == KeepWord.Never)
        {
            var under = sizes.Find(each => each.Missed.Count > 0);
            return sizes.Count == 0 ? new(false, number, entry, null, [])
                : under.Missed is { } missed ? new(false, number, entry, under.Size, missed)
                : null;
        }

        // A side that is not named must be no shaving.
        var (least, lacks) = sizes.DefaultIfEmpty((Size: default, Missed: new List<KeepSide>())).Select(each => (each.Size, Missed: Shavings(each.Size, piece).Concat(each.Missed).ToList()))
            .MinBy(each => each.Missed.Count);
        return lacks.Count == 0 ? new(true, number, entry, least, [])
            : entry.Word == KeepWord.Keep ? new(false, number, entry, least, lacks)
            : null;
    }

    private static IEnumerable<KeepSide> Shavings(KeepSize named, Dimensions piece)
    {
        var smallest = KeepRule.Smallest;
        return new KeepSize(
            named.Length is null ? smallest.Length : null, named.Width is null ? smallest.Width : null, named.Thickness is null ? smallest.Thickness : null).Missed(piece);
    }
}
