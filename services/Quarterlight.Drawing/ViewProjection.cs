using Quarterlight.Cabin;
using Quarterlight.Quantities;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Turns metres of the car's frame into pixels of one view, at one scale. The front of the car is to the right.</summary>
/// <param name="View">From above (x right, y up the page) or from the right-hand side (x right, z up the page).</param>
/// <param name="OriginPx">Where the frame's origin falls, pixels.</param>
/// <param name="PxPerMeter">Scale, pixels a metre.</param>
/// <param name="Frame">The part of the sheet the view may use, pixels.</param>
public sealed record ViewProjection(OutlineView View, SKPoint OriginPx, double PxPerMeter, SKRect Frame)
{
    /// <summary>A point of the car in pixels.</summary>
    public SKPoint Point(Vector3D p) =>
        new(OriginPx.X + (float)(PxPerMeter * p.X), OriginPx.Y - (float)(PxPerMeter * Upward(p)));

    /// <summary>
    /// A direction as seen in the view: right and up the page. As long as what is seen of a unit vector: 1 when it lies in
    /// the view's plane, 0 when it points at the onlooker or away.
    /// </summary>
    public (double Right, double Up) Direction(Vector3D d) => (d.X, Upward(d));

    /// <summary>Pixels of a length in metres.</summary>
    public float Length(double meters) => (float)(PxPerMeter * meters);

    /// <summary>The rectangle a box covers in the view.</summary>
    public SKRect Rectangle(Box3D box)
    {
        SKPoint a = Point(box.Min), b = Point(box.Max);
        return new(a.X, b.Y, b.X, a.Y);
    }

    private double Upward(Vector3D p) => View == OutlineView.Plan ? p.Y : p.Z;
}
