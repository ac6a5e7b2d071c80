namespace Offcuts.Cli;

/// <summary>A fault to be told to the user in one line: what, where, how to mend it.</summary>
/// <param name="code">Code word, which decides the exit code.</param>
/// <param name="message">What is wrong and how to mend it.</param>
internal sealed class CliException(string code, string message) : Exception(message)
{
    /// <summary>Code word, for instance <c>invalid</c>.</summary>
    public string Code { get; } = code;

    /// <summary>Input that cannot be right.</summary>
    public static CliException Invalid(string message) => new("invalid", message);

    /// <summary>A command line that does not say enough.</summary>
    public static CliException Usage(string message) => new("usage", message);
}
