using System.Globalization;
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
    private const int MostDays = 36_500;
    private static readonly string[] Names = ["top", "freeM3", "olderThanDays"];

    /// <summary>Reads the query.</summary>
    /// <exception cref="OffcutsException">Something in it cannot be right.</exception>
    public static CullRequest Read(IQueryCollection query)
    {
        var faults = new Faults();
        QueryReader.CheckNames(query, Names, faults);
        var asked = new CullRequest(Whole("top", Limits.MaxEntries) ?? Limits.MaxEntries, Space(), Whole("olderThanDays", MostDays) ?? Cull.OldDays);
        faults.ThrowIfAny();
        return asked;

        int? Whole(string name, int most)
        {
            if (!query.TryGetValue(name, out var values))
            {
                return null;
            }

            if (!int.TryParse(values[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < 1 || number > most)
            {
                faults.Add($"?{name}", FormattableString.Invariant($"'{values[0]}': give 1 to {most}."));
            }

            return number;
        }

        decimal? Space()
        {
            if (!query.TryGetValue("freeM3", out var values))
            {
                return null;
            }

            if (!decimal.TryParse(values[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var space) || space <= 0 || space > MostSpace)
            {
                faults.Add("?freeM3", FormattableString.Invariant($"'{values[0]}': give cubic metres, more than 0 and at most {MostSpace}, for instance 0.2."));
            }

            return space;
        }
    }
}
