using System.Globalization;

namespace Offcuts.Storage;

/// <summary>Times as they stand in the database: UTC in ISO 8601, so that they sort as text.</summary>
internal static class Stamp
{
    public static string Of(DateTimeOffset time) => time.UtcDateTime.ToString("O", CultureInfo.InvariantCulture);

    public static DateTimeOffset Read(string stamp) =>
        DateTimeOffset.Parse(stamp, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
