using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace Offcuts.Host.Plans;

/// <summary>Tells processes that share a database apart: number and start of the process, because numbers come again.</summary>
internal static class ProcessMark
{
    // The start is computed from the machine's boot time, which different processes may round differently.
    private const long StartToleranceSeconds = 2;

    public static string Mine { get; } = Of(Process.GetCurrentProcess());

    /// <summary>Whether the process with this mark still runs.</summary>
    public static bool IsAlive(string mark)
    {
        var parts = mark.Split(' ');
        if (parts.Length != 2
            || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            || !long.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var started))
        {
            return false;
        }

        try
        {
            using var process = Process.GetProcessById(number);
            return !process.HasExited && Math.Abs(Start(process) - started) <= StartToleranceSeconds;
        }
        catch (ArgumentException)
        {
            // There is no such process.
            return false;
        }
        catch (InvalidOperationException)
        {
            // It ended between the two questions.
            return false;
        }
        catch (Win32Exception)
        {
            // It belongs to another user, who could not have written the mark into this database.
            return false;
        }
    }

    private static string Of(Process process) => string.Create(CultureInfo.InvariantCulture, $"{process.Id} {Start(process)}");

    private static long Start(Process process) => new DateTimeOffset(process.StartTime).ToUnixTimeSeconds();
}
