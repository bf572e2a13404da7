using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>A site with its capsule position, cabin's or body-worn.</summary>
/// <param name="Site">The site.</param>
/// <param name="Capsule">Where the capsule is, metres.</param>
/// <param name="Wearer">Number of the talker who wears it, or -1.</param>
internal sealed record MountSpot(MountSite Site, Vector3D Capsule, int Wearer)
{
    /// <summary>All spots of a scene: the cabin's sites, then one on each talker's clothing.</summary>
    public static List<MountSpot> All(PlacementTask task, PlacementOptions options)
    {
        Box3D inside = task.Cabin.Interior.Grown(-0.01);
        var spots = new List<MountSpot>(task.Cabin.Sites.Count + task.Scene.Talkers.Count);
        foreach (MountSite site in task.Cabin.Sites)
        {
            spots.Add(new MountSpot(site, inside.Clamp(site.Position + (options.StandoffM * site.Normal)), -1));
        }

        for (int t = 0; t < task.Scene.Talkers.Count; t++)
        {
            Talker talker = task.Scene.Talkers[t];
            if (task.Cabin.FindSeat(talker.SeatId) is { } seat)
            {
                MountSite site = BodyWorn.SiteFor(talker, seat);
                spots.Add(new MountSpot(site, inside.Clamp(site.Position + (0.01 * site.Normal)), t));
            }
        }

        return spots;
    }
}
