using System.Security.Cryptography;
using Google.Protobuf;
using Quarterlight.Placement;

namespace Quarterlight.Planner.Services;

/// <summary>
/// The last few plans: a crew that has a plan asks next why not this site and what it looks like, and the same question
/// always has the same answer.
/// </summary>
internal sealed class RecentPlans
{
    private const int Most = 16;

    private readonly Lock _gate = new();
    private readonly LinkedList<(string Key, MountPlan Plan)> _plans = new();

    /// <summary>The plan of an input, remembered or made.</summary>
    public MountPlan Of(PlanningInput input)
    {
        string key = KeyOf(input);
        lock (_gate)
        {
            for (LinkedListNode<(string Key, MountPlan Plan)>? node = _plans.First; node is not null; node = node.Next)
            {
                if (node.Value.Key == key)
                {
                    _plans.Remove(node);
                    _plans.AddFirst(node);
                    return node.Value.Plan;
                }
            }
        }

        MountPlan plan = PlacementPlanner.Plan(input.Task);
        lock (_gate)
        {
            _plans.AddFirst((key, plan));
            if (_plans.Count > Most)
            {
                _plans.RemoveLast();
            }
        }

        return plan;
    }

    private static string KeyOf(PlanningInput input)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (IMessage part in new IMessage[] { input.Scene, input.Cabin, input.Kit, new V1.SceneChanges { RemovedSiteIds = { input.Task.Scene.RemovedSiteIds } } })
        {
            byte[] bytes = part.ToByteArray();
            hash.AppendData(BitConverter.GetBytes(bytes.Length));
            hash.AppendData(bytes);
        }

        return Convert.ToHexString(hash.GetHashAndReset());
    }
}
