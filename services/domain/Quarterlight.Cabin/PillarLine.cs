using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>A pillar behind the front doors, as a line from sill to roof in the side trim.</summary>
/// <param name="Id">b, c or d.</param>
/// <param name="Words">In words.</param>
/// <param name="Family">Family of its mount sites.</param>
/// <param name="BottomX">Where it leaves the sill.</param>
/// <param name="TopX">Where it meets the roof.</param>
internal sealed record PillarLine(string Id, string Words, MountFamily Family, double BottomX, double TopX)
{
    public static IReadOnlyList<PillarLine> Behind(CabinLayout cabin)
    {
        BodyTraits traits = cabin.Traits;
        if (traits.Rows == 1)
        {
            return [new("b", "pillar behind the door", MountFamily.BPillar, cabin.RearX + 0.04, cabin.RearX + 0.04)];
        }

        // A two-door car's door is longer, so its belt pillar stands further back.
        double belt = traits.RearDoors ? cabin.BeltX : cabin.BeltX - 0.12;
        var found = new List<PillarLine> { new("b", "belt pillar", MountFamily.BPillar, belt, belt - 0.03) };
        bool middle = traits.LoadSpace && cabin.SecondPaneRearX - cabin.RearX > 0.25;
        if (middle)
        {
            found.Add(new("c", "rear door pillar", MountFamily.CPillar, cabin.SecondPaneRearX - 0.04, cabin.SecondPaneRearX - 0.04));
        }

        found.Add(new(middle ? "d" : "c", "rear pillar", MountFamily.CPillar, cabin.RearX + 0.02, Math.Max(cabin.RearHeaderX, cabin.RearX + 0.02)));
        return found;
    }

    public double TopZ(CabinLayout cabin) => cabin.RoofZ(TopX);

    public Vector3D At(CabinLayout cabin, double z, int side)
    {
        double top = TopZ(cabin), sill = cabin.M.SillHeightM;
        double share = Math.Clamp((z - sill) / (top - sill), 0, 1);
        return new(BottomX + (share * (TopX - BottomX)), side * cabin.SideY(z), z);
    }
}
