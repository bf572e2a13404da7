using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

/// <summary>What must hold in every cabin, template or measured.</summary>
internal static class CabinChecks
{
    public static void HeadsAreClear(CabinGeometry cabin)
    {
        foreach (Seat seat in cabin.Seats)
        {
            SeatedHead head = SeatedHead.In(seat, new HeadPose());
            Assert.True(head.Center.Z + SeatedHead.RadiusM < cabin.Interior.Max.Z, $"{seat.Id} is under the roof of the box");
            Assert.True(cabin.Interior.Contains(head.Center));
            foreach (BoxOccluder box in cabin.Occluders.OfType<BoxOccluder>())
            {
                Assert.True(Cabins.Distance(box.Box, head.Center) >= SeatedHead.RadiusM - 1e-9, $"the head of {seat.Id} is clear of the {box.Name}");
            }

            foreach (Seat other in cabin.Seats.Where(o => o != seat))
            {
                Assert.True(SeatedHead.In(other, new HeadPose()).Center.DistanceTo(head.Center) > 2 * SeatedHead.RadiusM, $"{seat.Id} and {other.Id} do not touch");
            }
        }
    }

    public static void SitesAreSound(CabinGeometry cabin)
    {
        Box3D inside = cabin.Interior.Grown(1e-9);
        foreach (MountSite site in cabin.Sites)
        {
            Assert.True(inside.Contains(site.Position), $"{site.Id} is in the cabin");
            Assert.Equal(1, site.Normal.Length, 9);
            Assert.True(inside.Contains(site.Position + (0.02 * site.Normal)), $"{site.Id} looks into the cabin");
            Assert.InRange(site.FreeDepthM, 0.02, 1.0);
        }

        Assert.Equal(cabin.Sites.Count, cabin.Sites.Select(s => s.Id).Distinct().Count());
        Assert.Equal(cabin.Sites.Count, cabin.Sites.Select(s => s.Words).Distinct().Count());
    }
}
