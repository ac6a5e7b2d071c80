using System.Text.Json.Serialization;

namespace Offcuts.Cli;

/// <summary>JSON of what this program says itself.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(Fault))]
internal sealed partial class FaultJson : JsonSerializerContext;
