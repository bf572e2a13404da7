using Google.Protobuf;
using Quarterlight.V1;

namespace Quarterlight.Crew.Demo;

/// <summary>Packs the demo data as written, in .json files, into the messages that are embedded.</summary>
internal static class DemoPack
{
    /// <summary>Reads a folder of cabin.*.json, kit.*.json and scene.*.json.</summary>
    /// <param name="folder">Folder.</param>
    /// <returns>The embedded files by name.</returns>
    /// <exception cref="FormatException">A file is not what its name says.</exception>
    public static IReadOnlyDictionary<string, byte[]> Pack(string folder) => new Dictionary<string, byte[]>
    {
        ["cabins.binpb"] = new ListCabinsResponse { Cabins = { Read(Cabin.Parser, folder, "cabin.") } }.ToByteArray(),
        ["kits.binpb"] = new ListKitsResponse { Kits = { Read(Kit.Parser, folder, "kit.") } }.ToByteArray(),
        ["scenes.binpb"] = new ListScenesResponse { Scenes = { Read(Scene.Parser, folder, "scene.") } }.ToByteArray(),
    };

    private static IEnumerable<T> Read<T>(MessageParser<T> parser, string folder, string kind)
        where T : IMessage<T>
    {
        foreach (string file in Directory.EnumerateFiles(folder, $"{kind}*.json").Order(StringComparer.Ordinal))
        {
            T read;
            try
            {
                read = parser.ParseJson(File.ReadAllText(file));
            }
            catch (Exception e) when (e is InvalidProtocolBufferException or InvalidJsonException)
            {
                throw new FormatException($"{Path.GetFileName(file)}: {e.Message}", e);
            }

            yield return read;
        }
    }
}
