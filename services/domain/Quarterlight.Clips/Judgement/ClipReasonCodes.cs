namespace Quarterlight.Clips.Judgement;

/// <summary>Stable words of <see cref="ClipReason.Code"/>.</summary>
public static class ClipReasonCodes
{
    /// <summary>Runs at full scale or cut flat.</summary>
    public const string Clipping = "clipping";

    /// <summary>True peak too near full scale.</summary>
    public const string HighPeak = "high-peak";

    /// <summary>Gaps within sound.</summary>
    public const string Dropouts = "dropouts";

    /// <summary>Nothing but zeros on every channel.</summary>
    public const string Silent = "silent";

    /// <summary>A channel with nothing but zeros beside channels that carry sound.</summary>
    public const string UnusedChannel = "unused-channel";

    /// <summary>No or too little speech, so only the noise was judged.</summary>
    public const string NoSpeech = "no-speech";

    /// <summary>Too little speech over noise.</summary>
    public const string SpeechToNoise = "speech-to-noise";

    /// <summary>Speech recorded too low.</summary>
    public const string LowLevel = "low-level";

    /// <summary>Speech recorded too high.</summary>
    public const string HighLevel = "high-level";

    /// <summary>An engine is heard.</summary>
    public const string Engine = "engine";

    /// <summary>Wind is heard.</summary>
    public const string Wind = "wind";

    /// <summary>A fan or cooling is heard.</summary>
    public const string AirConditioning = "air-conditioning";

    /// <summary>Cabin pressure or rumble below 20 Hz moves the capsule.</summary>
    public const string CabinPressure = "cabin-pressure";

    /// <summary>Mains hum.</summary>
    public const string Hum = "hum";

    /// <summary>Mean of the samples is off zero.</summary>
    public const string DcOffset = "dc-offset";

    /// <summary>Two channels are the same.</summary>
    public const string IdenticalChannels = "identical-channels";

    /// <summary>Two related channels stand opposite in polarity.</summary>
    public const string Polarity = "polarity";

    /// <summary>The tagger cannot tell; listen.</summary>
    public const string Unsure = "unsure";

    /// <summary>A clip too short to judge well.</summary>
    public const string ShortClip = "short-clip";

    /// <summary>A sample rate that cuts the top of the sound.</summary>
    public const string LowRate = "low-rate";

    /// <summary>Nothing found that would hurt.</summary>
    public const string Clean = "clean";
}
