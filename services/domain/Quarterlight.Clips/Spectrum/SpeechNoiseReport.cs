namespace Quarterlight.Clips.Spectrum;

/// <summary>Noise floor and speech of a clip. Levels in dBFS (AES17) plus the calibration, if one was given.</summary>
/// <param name="NoiseAWeightedDb">A-weighted noise floor.</param>
/// <param name="NoiseUncertaintyDb">Its standard uncertainty, dB.</param>
/// <param name="NoiseOctaves">Noise floor of the octaves 31.5 Hz to 16 kHz; the lowest two are coarse.</param>
/// <param name="SpeechAWeightedDb">A-weighted level of the speech in active frames, the noise taken off; nothing without speech.</param>
/// <param name="SpeechOctaves">The same by octave; an octave where speech is not above the noise is left out.</param>
/// <param name="SpeechToNoiseDb">A-weighted speech over the A-weighted noise at that time, dB; nothing without speech.</param>
/// <param name="SpeechToNoiseUncertaintyDb">Its standard uncertainty, dB.</param>
/// <param name="ActiveSeconds">Time with speech, s.</param>
/// <param name="ActiveShare">Part of the clip with speech, 0 to 1.</param>
public sealed record SpeechNoiseReport(
    double NoiseAWeightedDb,
    double NoiseUncertaintyDb,
    IReadOnlyList<BandLevel> NoiseOctaves,
    double? SpeechAWeightedDb,
    IReadOnlyList<BandLevel> SpeechOctaves,
    double? SpeechToNoiseDb,
    double? SpeechToNoiseUncertaintyDb,
    double ActiveSeconds,
    double ActiveShare);
