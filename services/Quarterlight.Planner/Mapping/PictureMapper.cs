using Google.Protobuf;
using Quarterlight.Drawing;

namespace Quarterlight.Planner.Mapping;

/// <summary>Pictures, to the contract.</summary>
internal static class PictureMapper
{
    // The drawing room gives the bytes away for good, so they need no copy.
    public static V1.Picture ToContract(DrawnPicture drawn) => new()
    {
        Png = UnsafeByteOperations.UnsafeWrap(drawn.Png),
        TextAlternative = drawn.TextAlternative,
        WidthPx = drawn.WidthPx,
        HeightPx = drawn.HeightPx,
    };
}
