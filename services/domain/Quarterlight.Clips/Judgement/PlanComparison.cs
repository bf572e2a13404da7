using Quarterlight.Quantities;

namespace Quarterlight.Clips.Judgement;

/// <summary>What a plan forecast for one talker's microphone. Levels in dB re 20 µPa at the microphone's output.</summary>
/// <param name="TalkerId">Talker of the plan.</param>
/// <param name="MicrophoneId">Microphone of the plan.</param>
/// <param name="Speech">Speech by octave.</param>
/// <param name="Noise">Noise by octave, self-noise included.</param>
/// <param name="SelfNoise">Self-noise of the microphone by octave.</param>
/// <param name="PlusMinusDb">Half width of the spread to expect of the forecast speech over noise, dB.</param>
public sealed record ClipPrediction(string TalkerId, string MicrophoneId, BandLevels Speech, BandLevels Noise, BandLevels SelfNoise, double PlusMinusDb);

/// <summary>Predicted beside measured, dB.</summary>
/// <param name="PredictedDb">As forecast.</param>
/// <param name="MeasuredDb">As measured; null where it could not be.</param>
public readonly record struct ComparedLevel(double PredictedDb, double? MeasuredDb)
{
    /// <summary>Measured less predicted, dB.</summary>
    public double? DifferenceDb => MeasuredDb - PredictedDb;
}

/// <summary>One octave, predicted beside measured.</summary>
/// <param name="CentreHz">Nominal centre, 125 to 8000 Hz.</param>
/// <param name="Speech">Speech, dB re 20 µPa.</param>
/// <param name="Noise">Noise, dB re 20 µPa.</param>
/// <param name="SpeechToNoise">Speech over noise, dB.</param>
public sealed record ComparedBand(double CentreHz, ComparedLevel Speech, ComparedLevel Noise, ComparedLevel SpeechToNoise);

/// <summary>What a plan forecast beside what a channel of a clip says.</summary>
public sealed record PlanComparison
{
    /// <summary>Channel from 0.</summary>
    public required int Channel { get; init; }

    /// <summary>The forecast.</summary>
    public required ClipPrediction Prediction { get; init; }

    /// <summary>True when the levels were tied to the forecast speech level: then only speech over noise is measured.</summary>
    public required bool TiedToSpeech { get; init; }

    /// <summary>Sound pressure level in dB of a sine that reads 0 dBFS, as said or as tied.</summary>
    public required double FullScaleSplDb { get; init; }

    /// <summary>Speech, dB(A).</summary>
    public required ComparedLevel SpeechDba { get; init; }

    /// <summary>Noise, dB(A).</summary>
    public required ComparedLevel NoiseDba { get; init; }

    /// <summary>Speech over noise, A-weighted, dB.</summary>
    public required ComparedLevel SpeechToNoiseDb { get; init; }

    /// <summary>By octave, 125 Hz to 8 kHz.</summary>
    public required IReadOnlyList<ComparedBand> Bands { get; init; }

    /// <summary>Spread to expect of the differences, forecast and measurement together, dB.</summary>
    public required double PlusMinusDb { get; init; }

    /// <summary>What happened, in one sentence.</summary>
    public required string Words { get; init; }

    /// <summary>
    /// Added to the forecast of every noise in the cabin makes it agree with this clip, dB by octave; null when the noise could not be told. Self-noise is taken off
    /// first; octaves without a measurement take the mean of the others.
    /// </summary>
    public BandLevels? NoiseCorrection { get; init; }
}
