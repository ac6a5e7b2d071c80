using System.Net.Http.Headers;
using System.Text;

namespace Offcuts.Cli.Connections;

/// <summary>A document on its way to the API; faults that come back are told with its name.</summary>
/// <param name="text">What it says.</param>
/// <param name="name">Its file name, which tells JSON from YAML; <c>-</c> for standard input.</param>
/// <param name="type">Its media type; null to go by the name.</param>
internal sealed class DocumentContent(string text, string name, string? type = null)
    : StringContent(text, Encoding.UTF8, type is null ? TypeOf(name) : new MediaTypeHeaderValue(type))
{
    /// <summary>Its file name.</summary>
    public string Name { get; } = name;

    private static MediaTypeHeaderValue TypeOf(string name) =>
        new(name.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? "application/json" : "application/yaml");
}
