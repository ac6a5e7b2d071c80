using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace Offcuts.Host.Http;

/// <summary>Opaque place in a list: a sequence number, in sorted lists with what they are sorted by, and a check sum, so that a mangled one is refused.</summary>
internal static class Cursor
{
    // A place of 200 characters, which may be three bytes each.
    private const int Longest = 1000;

    public static string Of(long sequence, string? key = null) => Base64Url.EncodeToString(Encoding.UTF8.GetBytes(Plain(sequence, key)));

    public static bool TryRead(string cursor, out long sequence, out string? key)
    {
        (sequence, key) = (0, null);
        if (cursor.Length > Longest || !Base64Url.IsValid(cursor))
        {
            return false;
        }

        var plain = Encoding.UTF8.GetString(Base64Url.DecodeFromChars(cursor)).Split(':', 3);
        key = plain.Length == 3 ? plain[2] : null;
        return long.TryParse(plain[0], NumberStyles.None, CultureInfo.InvariantCulture, out sequence) && Of(sequence, key) == cursor;
    }

    private static string Plain(long sequence, string? key)
    {
        var sum = (key ?? "").Aggregate((sequence % 9973 * 31) + 17, (total, sign) => ((total * 31) + sign) % 9973) % 9973;
        return string.Create(CultureInfo.InvariantCulture, $"{sequence}:{sum}{(key is null ? "" : $":{key}")}");
    }
}
