using System.Text.Json;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>What an exported file holds: one kind of thing, and for a scene perhaps its car and kit.</summary>
/// <param name="Kind">scene, car or kit.</param>
/// <param name="Scene">The scene of a scene's file.</param>
/// <param name="Car">The car.</param>
/// <param name="Kit">The kit.</param>
internal sealed record KeptFile(string Kind, Scene? Scene, Cabin? Car, Kit? Kit)
{
    /// <summary>Version of the layout; grows when an older reader would get a newer file wrong.</summary>
    public const int Format = 1;

    /// <summary>Largest file that is read, bytes: 256 KiB.</summary>
    public const int LargestBytes = 256 * 1024;

    /// <summary>Name of the header in the file.</summary>
    public const string Header = "quarterlight";

    /// <summary>Members a file can have beside its header, with their messages.</summary>
    public static IReadOnlyDictionary<string, MessageDescriptor> Members { get; } = new Dictionary<string, MessageDescriptor>
    {
        ["scene"] = Scene.Descriptor,
        ["car"] = Cabin.Descriptor,
        ["kit"] = Kit.Descriptor,
    };

    /// <summary>The file as an answer carries it. Names stay, as a scene refers to its car and kit by them; revisions and times are the planner's and are left out.</summary>
    public CrewFile Write()
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteStartObject(Header);
            json.WriteString("kind", Kind);
            json.WriteNumber("format", Format);
            json.WriteEndObject();
            Add(json, "scene", Scene, s => (s.Revision, s.UpdateTime) = (0, null));
            Add(json, "car", Car, c => (c.Revision, c.UpdateTime) = (0, null));
            Add(json, "kit", Kit, k => (k.Revision, k.UpdateTime) = (0, null));
            json.WriteEndObject();
        }

        buffer.WriteByte((byte)'\n');
        string name = Scene?.Name ?? Car?.Name ?? Kit?.Name ?? "";
        return new CrewFile($"{Kind}-{ResourceName.IdOf(name)}.json", "application/json", buffer.ToArray());
    }

    private static void Add<T>(Utf8JsonWriter json, string member, T? thing, Action<T> bare)
        where T : class, IMessage<T>, IDeepCloneable<T>
    {
        if (thing is null)
        {
            return;
        }

        T copy = thing.Clone();
        bare(copy);
        json.WritePropertyName(member);
        using JsonDocument document = JsonDocument.Parse(JsonFormatter.Default.Format(copy), new JsonDocumentOptions { MaxDepth = 64 });
        document.RootElement.WriteTo(json);
    }
}
