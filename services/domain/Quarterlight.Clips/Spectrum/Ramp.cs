namespace Quarterlight.Clips.Spectrum;

/// <summary>How far a value has come from one limit to the other, 0 to 1.</summary>
internal static class Ramp
{
    public static double Up(double value, double from, double to) => Math.Clamp((value - from) / (to - from), 0, 1);
}
