namespace Quarterlight.Drawing;

/// <summary>A finished picture and the same in words.</summary>
/// <param name="Png">The picture as a PNG file; the same input gives the same bytes.</param>
/// <param name="TextAlternative">What the picture shows, in complete sentences, at most <see cref="PlanText.MaxLength"/> characters.</param>
/// <param name="WidthPx">Width in pixels.</param>
/// <param name="HeightPx">Height in pixels.</param>
public sealed record DrawnPicture(byte[] Png, string TextAlternative, int WidthPx, int HeightPx);
