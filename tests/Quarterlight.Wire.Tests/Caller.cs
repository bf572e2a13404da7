using System.Security.Cryptography;
using System.Text;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Clients that send a key and name a team with every call.</summary>
public sealed class Caller(RunningPlanner planner, string? key, string? team)
{
    private readonly CallInvoker _invoker = planner.Channel.Intercept(metadata =>
    {
        AddTo(key, team, (name, value) => metadata.Add(name, value));
        return metadata;
    });

    public CabinService.CabinServiceClient Cabins => new(_invoker);

    public KitService.KitServiceClient Kits => new(_invoker);

    public SceneService.SceneServiceClient Scenes => new(_invoker);

    public PlanService.PlanServiceClient Plans => new(_invoker);

    public PlacementService.PlacementServiceClient Placement => new(_invoker);

    public ClipService.ClipServiceClient Clips => new(_invoker);

    public TeamService.TeamServiceClient Teams => new(_invoker);

    /// <summary>The hash of a key as the configuration has it.</summary>
    public static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    /// <summary>The same call over JSON.</summary>
    public async Task<HttpResponseMessage> HttpAsync(HttpMethod method, string path, HttpContent? content = null)
    {
        using var request = new HttpRequestMessage(method, path) { Content = content };
        AddTo(key, team, request.Headers.Add);
        return await planner.Http.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private static void AddTo(string? key, string? team, Action<string, string> add)
    {
        if (key is not null)
        {
            add("x-quarterlight-key", key);
        }

        if (team is not null)
        {
            add("x-quarterlight-team", team);
        }
    }
}
