using Quarterlight.Cabin;
using Quarterlight.Placement;

namespace Quarterlight.Drawing;

/// <summary>Draws a mount plan: the cabin from above and from the side, to scale, with a legend and the same in words.</summary>
public static class PlanDrawing
{
    /// <summary>Draws one option of a plan.</summary>
    /// <param name="cabin">The car.</param>
    /// <param name="kit">The kit the plan was made for.</param>
    /// <param name="scene">The scene the plan was made for, valid for the cabin.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="option">Its best choice or one of its runners-up.</param>
    /// <returns>A picture 1200 pixels wide; its height depends on the car and on the number of talkers.</returns>
    /// <exception cref="ArgumentException">The option is not the plan's, or the scene names a seat the cabin does not have.</exception>
    public static DrawnPicture Draw(CabinGeometry cabin, Kit kit, Scene scene, MountPlan plan, PlanOption option)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(option);
        if (!ReferenceEquals(option, plan.Best) && !plan.RunnersUp.Contains(option))
        {
            throw new ArgumentException("The option is neither the plan's best nor one of its runners-up.", nameof(option));
        }

        return DrawWithLabels(cabin, kit, scene, option).Picture;
    }

    /// <summary>The same, with every label as drawn.</summary>
    internal static (DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels) DrawWithLabels(CabinGeometry cabin, Kit kit, Scene scene, PlanOption option)
    {
        ArgumentNullException.ThrowIfNull(cabin);
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(scene);
        SheetLayout layout = SheetLayout.For(cabin, scene);
        var legend = new Legend(kit, scene, option);
        int height = (int)Math.Ceiling(layout.LegendTop + legend.HeightPx);
        using var sheet = new PictureSheet(SheetLayout.WidthPx, height);
        new ViewPainter(sheet, layout.Plan, cabin, kit, scene, option).Draw("From above");
        new ViewPainter(sheet, layout.Side, cabin, kit, scene, option).Draw("From the right");
        legend.Draw(sheet, layout.LegendTop, layout.Plan.PxPerMeter);
        var picture = new DrawnPicture(sheet.ToPng(), PlanText.Of(cabin, kit, scene, option), SheetLayout.WidthPx, height);
        return (picture, sheet.Labels);
    }
}
