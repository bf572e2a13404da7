using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>A pane of glass as sun sees it: flat, whatever its curve.</summary>
/// <param name="Id">windscreen, rear, roof, or the side window's id such as front-left.</param>
/// <param name="OutwardNormal">Unit vector out of the car.</param>
/// <param name="AreaM2">Area of the pane itself, not of its projection, square metres, above 0.</param>
public sealed record GlazingPane(string Id, Vector3D OutwardNormal, double AreaM2);
