using Offcuts.Domain;
using Offcuts.Host.Http;

namespace Offcuts.Host.Keeping;

/// <summary>What was asked of the cull.</summary>
/// <param name="Top">The most rows of boards.</param>
/// <param name="FreeCubicMetres">How much space is to become free; null for no limit.</param>
/// <param name="OldDays">From how many days on a board has lain for long.</param>
internal sealed record CullRequest(int Top, decimal? FreeCubicMetres, int OldDays)
{
    private const decimal MostSpace = 10_000;

    /// <summary>Reads the query.</summary>
    /// <exception cref="OffcutsException">Something in it cannot be right.</exception>
    public static CullRequest Read(IQueryCollection query)
    {
        var reader = new FieldReader(query, ["top", "freeM3", "olderThanDays"]);
        var asked = new CullRequest(
            reader.Whole("top", 1, Limits.MaxEntries) ?? Limits.MaxEntries,
            reader.Number("freeM3", space => space is > 0 and <= MostSpace, $"cubic metres, more than 0 and at most {MostSpace}, for instance 0.2"),
            reader.Whole("olderThanDays", 1, AgeReading.MostDays) ?? Cull.OldDays);
        reader.Faults.ThrowIfAny();
        return asked;
    }
}
