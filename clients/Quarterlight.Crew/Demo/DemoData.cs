using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Crew.Demo;

/// <summary>
/// Scenes, cars and kits to try things on. All of it is invented and says so in its names; sizes and figures of the
/// microphones, of the link gear, of the wireless transmitters, of the stations heard, of recorders, batteries and cards, and the
/// weather, days and routes are judgement, typical of their kinds.
/// </summary>
/// <remarks>
/// Written as .json beside this file, kept here as packed messages: reading JSON would load the description of every message, some MB, into each bot that is
/// asked for the demo. After a change: dotnet run -c Release --project services/Quarterlight.Training -- demo-pack.
/// </remarks>
public static class DemoData
{
    /// <summary>Scene with three talkers in a moving car, the one <c>crewbot demo</c> asks about.</summary>
    public const string MainScene = "scenes/demo-school-run";

    /// <summary>Cars.</summary>
    public static IReadOnlyList<Cabin> Cabins { get; } = Read(ListCabinsResponse.Parser, "cabins.binpb").Cabins;

    /// <summary>Kits.</summary>
    public static IReadOnlyList<Kit> Kits { get; } = Read(ListKitsResponse.Parser, "kits.binpb").Kits;

    /// <summary>Scenes, the main one last, so that it is the one last written.</summary>
    public static IReadOnlyList<Scene> Scenes { get; } = Read(ListScenesResponse.Parser, "scenes.binpb").Scenes;

    /// <summary>Writes what is not there yet; what is there stays as the team left it.</summary>
    /// <returns>How many were written.</returns>
    /// <exception cref="RpcException">The planner refused or could not be reached.</exception>
    internal static async Task<int> LoadAsync(PlannerClients planner, CancellationToken cancellation)
    {
        int written = 0;
        foreach (Cabin cabin in Cabins)
        {
            written += await IfNew(planner.Cabins.CreateCabinAsync(new() { CabinId = ResourceName.IdOf(cabin.Name), Cabin = cabin }, planner.Options(cancellation)).ResponseAsync).ConfigureAwait(false);
        }

        foreach (Kit kit in Kits)
        {
            written += await IfNew(planner.Kits.CreateKitAsync(new() { KitId = ResourceName.IdOf(kit.Name), Kit = kit }, planner.Options(cancellation)).ResponseAsync).ConfigureAwait(false);
        }

        foreach (Scene scene in Scenes)
        {
            written += await IfNew(planner.Scenes.CreateSceneAsync(new() { SceneId = ResourceName.IdOf(scene.Name), Scene = scene }, planner.Options(cancellation)).ResponseAsync).ConfigureAwait(false);
        }

        return written;
    }

    private static async Task<int> IfNew<T>(Task<T> creation)
    {
        try
        {
            await creation.ConfigureAwait(false);
            return 1;
        }
        catch (RpcException e) when (e.StatusCode == StatusCode.AlreadyExists)
        {
            return 0;
        }
    }

    private static T Read<T>(MessageParser<T> parser, string file)
        where T : IMessage<T>
    {
        using Stream stream = EmbeddedFile.Open($"Demo.{file}");
        return parser.ParseFrom(stream);
    }
}
