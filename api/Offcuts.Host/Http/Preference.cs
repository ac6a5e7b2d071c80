using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Host.Http;

/// <summary>The <c>Prefer</c> header (RFC 7240).</summary>
internal static class Preference
{
    private const int LongestWait = 300;

    /// <summary>How long the client would wait for the result; null if it does not say.</summary>
    public static TimeSpan? WaitOf(HttpRequest request)
    {
        foreach (var preference in request.Headers.GetCommaSeparatedValues("Prefer"))
        {
            // Others are ignored, as the RFC asks.
            if (preference.Split('=', 2, StringSplitOptions.TrimEntries) is ["wait", var seconds])
            {
                return int.TryParse(seconds, NumberStyles.None, CultureInfo.InvariantCulture, out var wait)
                    ? TimeSpan.FromSeconds(Math.Min(wait, LongestWait))
                    : throw new OffcutsException(ErrorCode.Invalid, $"Prefer: wait={seconds} is no whole number of seconds.", new InputFault("#", "Mend the Prefer header, for instance wait=10."));
            }
        }

        return null;
    }
}
