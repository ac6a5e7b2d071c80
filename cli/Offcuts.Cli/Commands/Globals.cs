using System.CommandLine;

namespace Offcuts.Cli.Commands;

/// <summary>Options that every command takes.</summary>
internal static class Globals
{
    public static readonly Option<bool> Help = new("--help", "-h") { Description = "Show help for a command", Recursive = true };
    public static readonly Option<bool> Version = new("--version") { Description = "Show the version" };
    public static readonly Option<bool> Json = new("--json") { Description = "Write JSON instead of a table", Recursive = true };
    public static readonly Option<bool> NoColor = new("--no-color") { Description = "Write no escape sequences", Recursive = true };
    public static readonly Option<bool> NoInput = new("--no-input") { Description = "Never ask; fail instead", Recursive = true };
    public static readonly Option<bool> Quiet = new("--quiet", "-q") { Description = "Leave out messages that are no errors", Recursive = true };
    public static readonly Option<string> Server = new("--server") { Description = "Address of the server to use", HelpName = "URL", Recursive = true };
    public static readonly Option<string> Data = new("--data") { Description = "Folder of the store to use, hosted by this command", HelpName = "FOLDER", Recursive = true };

    /// <summary>In the order in which help lists them.</summary>
    public static readonly Option[] All = [Help, Version, Json, NoColor, NoInput, Quiet, Server, Data];
}
