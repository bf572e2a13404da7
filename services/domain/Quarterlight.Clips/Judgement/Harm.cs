namespace Quarterlight.Clips.Judgement;

/// <summary>Order of harm among reasons of one outcome, ten apart or nearer; up to 4 are added by how bad it is. Judgement: docs/models/clip-verdict.md.</summary>
internal static class Harm
{
    public const double Silent = 100;
    public const double Dropouts = 90;
    public const double Clipping = 85;
    public const double SpeechToNoise = 80;
    public const double AirConditioning = 70;
    public const double Wind = 65;
    public const double CabinPressure = 60;
    public const double NoSpeech = 55;
    public const double HighPeak = 50;
    public const double HighLevel = 48;
    public const double Polarity = 44;
    public const double IdenticalChannels = 42;
    public const double LowLevel = 40;
    public const double Hum = 35;
    public const double Engine = 30;
    public const double DcOffset = 20;
    public const double Clean = 15;
    public const double Unsure = 12;
    public const double UnusedChannel = 8;
    public const double LowRate = 6;
    public const double ShortClip = 4;

    /// <summary>A base with how bad it is: 0 at the limit, 4 at <paramref name="worst"/> and beyond.</summary>
    public static double Of(double @base, double excess, double worst) => @base + (4 * Math.Clamp(excess / worst, 0, 1));
}
