using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Places the side glass, as rectangles upright at mid-height of the leaning side.</summary>
internal static class WindowLayout
{
    private const double BelowRoofM = 0.07;
    private const double LeastLengthM = 0.15;

    public static IReadOnlyList<WindowPane> Windows(CabinLayout cabin)
    {
        BodyTraits traits = cabin.Traits;
        var panes = new List<WindowPane>();
        double belt = PillarLine.Behind(cabin)[0].BottomX;
        double frontRear = traits.Rows == 1 ? Math.Max(belt + 0.05, cabin.BeltX + 0.05) : belt + 0.05;
        Add("front", cabin.FrontPaneFrontX, frontRear, true);
        if (traits.Rows > 1)
        {
            Add("rear", belt - 0.05, cabin.SecondPaneRearX, traits.RearDoors);
        }

        if (traits.Rows == 3)
        {
            Add("third", cabin.SecondPaneRearX - 0.08, cabin.RearX + 0.08, false);
        }
        else if (traits.LoadSpace)
        {
            Add("load", cabin.SecondPaneRearX - 0.08, cabin.RearX + 0.08, false);
        }

        return panes;

        void Add(string row, double front, double rear, bool moves)
        {
            if (front - rear < LeastLengthM)
            {
                return;
            }

            double low = cabin.M.SillHeightM, high = Math.Min(cabin.RoofZ(front), cabin.RoofZ(rear)) - BelowRoofM;
            foreach ((_, int side) in Sides.Both)
            {
                double y = side * cabin.SideY((low + high) / 2);
                panes.Add(new WindowPane(
                    $"{row}-{Sides.LeftOrRight(side)}",
                    side > 0 ? CabinFace.Left : CabinFace.Right,
                    new Box3D(new(rear, y, low), new(front, y, high)),
                    moves));
            }
        }
    }
}
