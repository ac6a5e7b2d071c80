namespace Offcuts.Domain;

/// <summary>
/// What the shop keeps, as its maker wrote it: entries in order, of which the first that decides about a piece holds. What none decides about is kept
/// from the shop's keep size on (<see cref="Shop.Keep"/>).
/// </summary>
/// <param name="Entries">The entries in order; none for the keep size alone.</param>
/// <remarks>
/// However it is written, what is larger than a kept piece of its species is kept too: every entry either keeps from sizes on or lets go below sizes.
/// Plans, their bounds and their audits count on that.
/// </remarks>
public sealed record KeepRule(IReadOnlyList<KeepEntry> Entries)
{
    /// <summary>Most entries.</summary>
    public const int MostEntries = 100;

    /// <summary>Most sizes of one entry.</summary>
    public const int MostSizes = 20;

    /// <summary>No entries.</summary>
    public static KeepRule None { get; } = new([]);

    /// <summary>
    /// What a side that an entry does not name must have at least: 1/8 x 1/2 x 2 in. What is smaller is a shaving (this project's judgement).
    /// </summary>
    public static Dimensions Smallest { get; } = new(Length.FromInches(0, 1, 8), Length.FromInches(0, 1, 2), Length.FromInches(2));

    /// <summary>The same with concrete species only: a class stands for all species in it.</summary>
    public KeepRule Resolved(SpeciesCatalogue catalogue) => new([.. Entries.Select(entry => entry.Species is null ? entry : entry with
    {
        Species = [.. entry.Species.SelectMany(word => catalogue.Find(word) is null && catalogue.IsClass(word)
            ? catalogue.All.Where(species => species.Classes.Contains(word)).Select(species => species.Id)
            : [word]).Distinct(StringComparer.Ordinal)],
    })]);
}

/// <summary>One entry of the rule.</summary>
/// <param name="Word">What it does.</param>
/// <param name="Species">The species ids or classes that it is about; null for any.</param>
/// <param name="Sizes">
/// Of <see cref="KeepWord.Never"/>, what is under any side of any of them goes, and everything if there are none. Of the others, what reaches every
/// side of one of them is kept; for <see cref="KeepWord.Always"/> none means any size.
/// </param>
public sealed record KeepEntry(KeepWord Word, IReadOnlyList<string>? Species, IReadOnlyList<KeepSize> Sizes)
{
    /// <summary>Whether it is about a species.</summary>
    public bool IsAbout(string species) => Species is null || Species.Contains(species);
}

/// <summary>What an entry does.</summary>
public enum KeepWord
{
    /// <summary>What it is about goes; what it is not about is left to the entries behind it.</summary>
    Never,

    /// <summary>What reaches its sizes is kept; what does not is left to the entries behind it.</summary>
    Always,

    /// <summary>What reaches its sizes is kept, and of its species nothing else.</summary>
    Keep,
}

/// <summary>Sizes that an entry names; null for a side that does not matter.</summary>
/// <param name="Length">Along the grain.</param>
/// <param name="Width">Across the grain.</param>
/// <param name="Thickness">Thickness.</param>
/// <param name="Section">Thickness times width.</param>
public readonly record struct KeepSize(Length? Length = null, Length? Width = null, Length? Thickness = null, Area? Section = null)
{
    /// <summary>The sides that a piece does not reach, in the order in which they are told.</summary>
    public IEnumerable<KeepSide> Missed(Dimensions piece)
    {
        if (piece.Length < Length)
        {
            yield return KeepSide.Length;
        }

        if (piece.Width < Width)
        {
            yield return KeepSide.Width;
        }

        if (piece.Thickness < Thickness)
        {
            yield return KeepSide.Thickness;
        }

        if (piece.Thickness * piece.Width < Section)
        {
            yield return KeepSide.Section;
        }
    }
}

/// <summary>What of a piece is measured.</summary>
public enum KeepSide
{
    /// <summary>Its length.</summary>
    Length,

    /// <summary>Its width.</summary>
    Width,

    /// <summary>Its thickness.</summary>
    Thickness,

    /// <summary>Its thickness times its width.</summary>
    Section,
}
