using Quarterlight.Acoustics;

namespace Quarterlight.Drawing;

/// <summary>
/// What a first-order pattern looks like in a view: its cut through the view's plane. With the aim's length in the view p
/// (1 when it lies flat, 0 when it points at the onlooker) sound from the view's plane, at an angle t from the aim as
/// seen, comes at acos(p cos t) off the axis, so a plain capsule picks it up as |A + B p cos t|. With p = 1 that is the plain
/// polar diagram. A tube is drawn at 1 kHz; its nulls are its capsule's.
/// </summary>
internal static class PatternShape
{
    /// <summary>Below this length in the view the aim counts as pointing at the onlooker or away.</summary>
    public const double LeastAimLength = 0.15;

    /// <summary>Patterns whose null cone is narrower than this about the rear are drawn with one null, behind (radians).</summary>
    private const double RearConeRad = 0.8;

    public static double Response(PolarPattern pattern, double aimLength, double angleRad) =>
        Math.Abs(pattern.ResponseAt(Math.Acos(Math.Clamp(aimLength * Math.Cos(angleRad), -1, 1))));

    /// <summary>The outline as radii (1 = on axis, aim flat) at evenly spaced angles from the aim as seen, radians.</summary>
    public static IEnumerable<(double AngleRad, double Radius)> Outline(PolarPattern pattern, double aimLength)
    {
        const int Steps = 180;
        for (int i = 0; i < Steps; i++)
        {
            double angle = 2 * Math.PI * i / Steps;
            yield return (angle, Response(pattern, aimLength, angle));
        }
    }

    /// <summary>Angles of nulls from the aim as seen, radians, -pi to pi: none, one behind, or one on each side.</summary>
    public static IReadOnlyList<double> Nulls(PolarPattern pattern, double aimLength)
    {
        if (pattern.B <= 0 || pattern.A > pattern.B || aimLength < LeastAimLength)
        {
            return [];
        }

        double ratio = pattern.A / (pattern.B * aimLength);
        if (ratio < 1 - 1e-9)
        {
            double angle = Math.Acos(-ratio);
            return [angle, -angle];
        }

        return Math.Acos(pattern.A / pattern.B) < RearConeRad ? [Math.PI] : [];
    }
}
