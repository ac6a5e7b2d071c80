using System.CommandLine;
using System.Net.Http.Headers;
using System.Text;

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
        : File.Exists(path)
            ? await File.ReadAllTextAsync(path, run.Cancellation)
            : throw CliException.Invalid($"There is no file '{path}'. Give a path, or - for standard input.");

    /// <summary>A document with this text.</summary>
    /// <param name="text">What it says.</param>
    /// <param name="name">A file name, which tells JSON from YAML.</param>
    public static StringContent Of(string text, string name) => new(
        text, Encoding.UTF8,
        new MediaTypeHeaderValue(name.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? "application/json" : "application/yaml"));

    /// <summary>The argument for a document.</summary>
    public static Argument<string> Argument(string what) => new("FILE") { Description = $"{what}, YAML or JSON; - for standard input" };
}
