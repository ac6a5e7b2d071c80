using System.CommandLine;
using Offcuts.Cli.Connections;

namespace Offcuts.Cli.Commands;

/// <summary>Documents that people write, from a path or standard input.</summary>
internal static class Documents
{
    /// <summary>A document as the API takes it: JSON if its name ends in <c>.json</c>, else YAML, of which JSON is a part.</summary>
    /// <param name="run">The run.</param>
    /// <param name="path">A path, or <c>-</c> for standard input.</param>
    /// <exception cref="CliException">There is no such file.</exception>
    public static async Task<StringContent> ReadAsync(Run run, string path) => Of(await TextAsync(run, path), path);

    /// <summary>What a document says.</summary>
    /// <param name="run">The run.</param>
    /// <param name="path">A path, or <c>-</c> for standard input.</param>
    /// <exception cref="CliException">There is no such file.</exception>
    public static async Task<string> TextAsync(Run run, string path) => path == "-"
        ? await run.Terminal.In.ReadToEndAsync(run.Cancellation)
        : await Files.ReadAsync(path, run.Cancellation);

    /// <summary>A document with this text.</summary>
    /// <param name="text">What it says.</param>
    /// <param name="name">A file name, which tells JSON from YAML.</param>
    public static StringContent Of(string text, string name) => new DocumentContent(text, name);

    /// <summary>A table with this text, whatever its file is called.</summary>
    public static StringContent Table(string text, string name) => new DocumentContent(text, name, "text/csv");

    /// <summary>The argument for a document.</summary>
    public static Argument<string> Argument(string what) => new("FILE") { Description = $"{what}, YAML or JSON; - for standard input" };
}
