namespace Offcuts.Cli.Commands;

/// <summary>Files that a user names, with faults that name the path, what is wrong and how to mend it.</summary>
internal static class Files
{
    /// <summary>Writes a text.</summary>
    /// <exception cref="CliException">It cannot be written there.</exception>
    public static async Task WriteAsync(string path, string text, CancellationToken cancellationToken)
    {
        try
        {
            await File.WriteAllTextAsync(path, text, cancellationToken);
        }
        catch (Exception fault) when (IsOfFile(fault))
        {
            throw new CliException("failed", $"'{path}' cannot be written: {WhyNotWritten(path, fault)}");
        }
    }

    /// <summary>Writes a text to a file and says where; to standard output if the path is null or <c>-</c>.</summary>
    public static async Task WriteOrPrintAsync(Run run, string? path, string text)
    {
        if (path is null or "-")
        {
            await run.Terminal.Out.WriteAsync(text);
            return;
        }

        await WriteAsync(path, text, run.Cancellation);
        run.Say($"Written to {Path.GetFullPath(path)}");
    }

    /// <summary>Reads a text.</summary>
    /// <exception cref="CliException">It is not there or cannot be read.</exception>
    public static async Task<string> ReadAsync(string path, CancellationToken cancellationToken)
    {
        if (!File.Exists(path))
        {
            throw CliException.Invalid(Directory.Exists(path)
                ? $"'{path}' is a folder. Give the path of a file in it, or - for standard input."
                : $"There is no file '{path}'. Give a path, or - for standard input.");
        }

        try
        {
            return await File.ReadAllTextAsync(path, cancellationToken);
        }
        catch (Exception fault) when (IsOfFile(fault))
        {
            throw new CliException("failed", $"'{path}' cannot be read: {(fault is UnauthorizedAccessException ? "you may not. Mend its permissions." : fault.Message)}");
        }
    }

    /// <summary>The fault of a store whose file cannot be made.</summary>
    public static CliException NoStore(string databasePath, Exception fault)
    {
        var folder = Path.GetDirectoryName(databasePath)!;
        return new("failed", File.Exists(folder)
            ? $"'{folder}' is a file, but a store is a folder. Give a folder with --data or OFFCUTS_DATA; it is made if need be."
            : $"The store '{folder}' cannot be used: {(fault is UnauthorizedAccessException ? "you may not write there. Mend its permissions" : fault.Message.TrimEnd('.'))}, or give another folder with --data or OFFCUTS_DATA.");
    }

    private static bool IsOfFile(Exception fault) => fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    private static string WhyNotWritten(string path, Exception fault)
    {
        if (string.IsNullOrWhiteSpace(path))
        {
            return "the path is empty. Give one, or leave the option out.";
        }

        if (Directory.Exists(path))
        {
            return "it is a folder. Give the path of a file in it.";
        }

        return fault switch
        {
            DirectoryNotFoundException => $"there is no folder '{Path.GetDirectoryName(Path.GetFullPath(path))}'. Make it, or give another path.",
            UnauthorizedAccessException => "you may not write there. Mend the permissions, or give another path.",
            _ => fault.Message,
        };
    }
}
