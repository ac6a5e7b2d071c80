using System.Text.Json;
using System.Text.Json.Serialization;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>JSON of states in the journal. What a later version adds to a row is missing in older lines and takes its default.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, Converters = [typeof(TicksConverter), typeof(SquareTicksConverter)])]
[JsonSerializable(typeof(BoardState))]
[JsonSerializable(typeof(Build))]
internal sealed partial class StateJson : JsonSerializerContext;

/// <summary>A length as its ticks.</summary>
internal sealed class TicksConverter : JsonConverter<Length>
{
    /// <inheritdoc/>
    public override Length Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Length.FromTicks(reader.GetInt64());

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Length value, JsonSerializerOptions options) => writer.WriteNumberValue(value.Ticks);
}

/// <summary>An area as its square ticks.</summary>
internal sealed class SquareTicksConverter : JsonConverter<Area>
{
    /// <inheritdoc/>
    public override Area Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Area.FromSquareTicks(reader.GetInt64());

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Area value, JsonSerializerOptions options) => writer.WriteNumberValue(value.SquareTicks);
}
