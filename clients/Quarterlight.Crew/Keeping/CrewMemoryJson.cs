using System.Text.Json;
using System.Text.Json.Serialization;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>What of a remembered clip is not its report.</summary>
/// <param name="ComparedScene">Scene it was held against; null when it was compared with nothing.</param>
/// <param name="Current">True while the conversation is about it.</param>
internal sealed record KeptClipFacts(string? ComparedScene, bool Current);

/// <summary>How the parts of a memory that are no messages of the contract are written as JSON.</summary>
[JsonSourceGenerationOptions(
    UseStringEnumConverter = true,
    IgnoreReadOnlyProperties = true,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    Converters = [typeof(HeardStationConverter)])]
[JsonSerializable(typeof(RadioMemory))]
[JsonSerializable(typeof(ForecastMemory))]
[JsonSerializable(typeof(KeptClipFacts))]
internal sealed partial class CrewMemoryJson : JsonSerializerContext;

/// <summary>A station heard, as the bytes of its message: a field added to it is kept without a change here.</summary>
internal sealed class HeardStationConverter : JsonConverter<HeardStation>
{
    public override HeardStation Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => HeardStation.Parser.ParseFrom(reader.GetBytesFromBase64());

    public override void Write(Utf8JsonWriter writer, HeardStation value, JsonSerializerOptions options) => writer.WriteBase64StringValue(Google.Protobuf.MessageExtensions.ToByteArray(value));
}
