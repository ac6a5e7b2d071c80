using System.CommandLine;
using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Plans;

/// <summary>What a yard turned out not to have, as a maker says it: an offer or supplier, a length, or one behind the other.</summary>
internal static class Without
{
    /// <summary>The option that names it; may stand several times.</summary>
    public static Option<string[]> Option() => new("--without")
    {
        Description = "What is not to be had: a length (8ft), an offer or supplier by id or name, or both (\"Ash 4/4 8ft\"); may stand several times",
        HelpName = "WHAT",
    };

    /// <summary>What the option gives; null where it is not there.</summary>
    public static async Task<IReadOnlyList<UnavailableRecord>?> ReadAsync(Run run, IOffcutsApi api)
    {
        if (run.Get(SearchOptions.Without) is not { Length: > 0 } given)
        {
            return null;
        }

        var unit = await run.UnitAsync();
        var offers = await Paging.AllAsync<OfferRecord>(async cursor =>
        {
            var page = await api.ListOffersAsync(new OfferQuery { Limit = Paging.Largest, Cursor = cursor }, run.Cancellation);
            return (page.Items, page.Next);
        });
        return [.. given.Select(text => Read(text.Trim(), unit, offers))];
    }

    private static UnavailableRecord Read(string text, DisplayUnit unit, IReadOnlyList<OfferRecord> offers)
    {
        if (offers.Any(offer => Means(text, offer)))
        {
            return new UnavailableRecord(text);
        }

        // A length may be of several words, so the longest end that is one counts.
        for (var at = 0; at < text.Length; at++)
        {
            var (what, size) = (text[..at].TrimEnd(' ', ':', ','), text[at..]);
            if ((at == 0 || text[at - 1] == ' ') && LengthText.TryParse(size, unit, out var length, out _) && (what.Length == 0 || offers.Any(offer => Means(what, offer))))
            {
                return new UnavailableRecord(what.Length == 0 ? null : what, length.Millimetres);
            }
        }

        throw CliException.Invalid(
            $"--without: '{text}' is no length and names no offer and no supplier. Write for instance 8ft, an offer's id, or both; 'offcuts offers list' shows the offers.");
    }

    private static bool Means(string what, OfferRecord offer) => offer.Id.Equals(what, StringComparison.OrdinalIgnoreCase)
        || string.Equals(offer.Name, what, StringComparison.OrdinalIgnoreCase) || offer.Supplier == Slug.Of(what);
}
