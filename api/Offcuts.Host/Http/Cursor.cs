using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace Offcuts.Host.Http;

/// <summary>Opaque place in a list: a sequence number with a check sum, so that a mangled one is refused.</summary>
internal static class Cursor
{
    public static string Of(long sequence) => Base64Url.EncodeToString(Encoding.ASCII.GetBytes(Plain(sequence)));

    public static bool TryRead(string cursor, out long sequence)
    {
        sequence = 0;
        if (cursor.Length > 60 || !Base64Url.IsValid(cursor))
        {
            return false;
        }

        var plain = Encoding.ASCII.GetString(Base64Url.DecodeFromChars(cursor));
        return long.TryParse(plain.Split(':')[0], NumberStyles.None, CultureInfo.InvariantCulture, out sequence)
            && Of(sequence) == cursor;
    }

    private static string Plain(long sequence) =>
        string.Create(CultureInfo.InvariantCulture, $"{sequence}:{((sequence % 9973 * 31) + 17) % 9973}");
}
