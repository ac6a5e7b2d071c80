namespace Offcuts.Cli;

/// <summary>A fault as it is told: on one line for a person, as one JSON object for a script.</summary>
/// <param name="Type">Path of the page that documents this kind of problem, or <c>about:blank</c>.</param>
/// <param name="Code">Code word.</param>
/// <param name="Message">What is wrong, where, and how to mend it.</param>
/// <param name="ExitCode">The exit code.</param>
internal sealed record Fault(string Type, string Code, string Message, int ExitCode)
{
    public Fault(string code, string message)
        : this("about:blank", code, message, Cli.ExitCode.Of(code))
    {
    }
}
