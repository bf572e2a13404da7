using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Levels;

/// <summary>Everything one question about levels is about.</summary>
public sealed record LevelTask
{
    /// <summary>The scene, car and kit as planned.</summary>
    public required PlacementTask Placement { get; init; }

    /// <summary>The plan.</summary>
    public required MountPlan Plan { get; init; }

    /// <summary>Microphone inputs of the recorder.</summary>
    public required RecorderGain Recorder { get; init; }

    /// <summary>Transmitters of the kit, ids distinct.</summary>
    public IReadOnlyList<TransmitterAudio> Transmitters { get; init; } = [];

    /// <summary>Loudest effort to be ready for by talker id; those not listed keep one step of effort in hand.</summary>
    public IReadOnlyDictionary<string, VocalEffort> LoudestByTalker { get; init; } = new Dictionary<string, VocalEffort>();

    /// <summary>Headroom wanted above the highest peak, dB, 0 to 30. Default 6 (judgement).</summary>
    public double HeadroomDb { get; init; } = 6;

    /// <summary>Transmitter fed by a microphone that all body-worn microphones go through; null is a cable.</summary>
    public string? MicrophoneTransmitterId { get; init; }
}

/// <summary>Whether a chain can be used as it is.</summary>
public enum ChainVerdict
{
    /// <summary>Everything fits.</summary>
    Fits,

    /// <summary>It fits with the pad in.</summary>
    Pad,

    /// <summary>It works, but noise or headroom is thinner than wanted.</summary>
    Tight,

    /// <summary>The input clips whatever its gain.</summary>
    InputOverload,

    /// <summary>The capsule itself clips: no gain can mend it.</summary>
    CapsuleOverload,
}

/// <summary>What one effort does to a chain.</summary>
/// <param name="Effort">Effort.</param>
/// <param name="PeakLevelDb">Peak at the capsule, dB re 20 µPa.</param>
/// <param name="PeakDbfs">Peak at the gain chosen, dBFS.</param>
/// <param name="SpeechDbfs">Speech as a long mean, A-weighted, dBFS.</param>
/// <param name="Clips">True when something clips.</param>
public sealed record EffortLevel(VocalEffort Effort, double PeakLevelDb, double PeakDbfs, double SpeechDbfs, bool Clips);

/// <summary>Gain of a transmitter in the chain.</summary>
/// <param name="TransmitterId">Transmitter of the kit.</param>
/// <param name="GainDb">Its gain, dB.</param>
/// <param name="HeadroomDb">Peak under full modulation, dB; negative is over it.</param>
/// <param name="NoiseDb">Noise of the way, A-weighted, dB relative to full modulation.</param>
/// <param name="ReceiverPeakDbu">Level of the peak at the receiver's output, dBu.</param>
/// <param name="Verdict">Whether it can be used.</param>
/// <param name="Words">What to do, in one sentence.</param>
public sealed record TransmitterLevel(string TransmitterId, double GainDb, double HeadroomDb, double NoiseDb, double ReceiverPeakDbu, ChainVerdict Verdict, string Words);

/// <summary>Gain of one recorder input. All dBFS are relative to a full-scale sine: peaks to its peak, long means to its rms. See <see cref="AudioVoltage"/>.</summary>
public sealed record InputLevels
{
    /// <summary>Recorder input, 1 = first.</summary>
    public required int RecorderInput { get; init; }

    /// <summary>Microphone of the kit.</summary>
    public required string MicrophoneId { get; init; }

    /// <summary>Talkers it serves.</summary>
    public required IReadOnlyList<string> TalkerIds { get; init; }

    /// <summary>Highest level to expect at the capsule at the loudest effort, dB re 20 µPa.</summary>
    public required Estimate PeakLevelDb { get; init; }

    /// <summary>The capsule's highest level less that peak, dB; negative is an overload.</summary>
    public required double CapsuleMarginDb { get; init; }

    /// <summary>Peak at the microphone's output, as the level of the sine with that peak, dBu.</summary>
    public required double OutputPeakDbu { get; init; }

    /// <summary>Gain of the input, dB.</summary>
    public required double GainDb { get; init; }

    /// <summary>Pad, dB, 0 when it stays out.</summary>
    public required double PadDb { get; init; }

    /// <summary>Peak, dBFS.</summary>
    public required double PeakDbfs { get; init; }

    /// <summary>Speech of the scene's effort as a long mean, A-weighted, dBFS.</summary>
    public required double SpeechDbfs { get; init; }

    /// <summary>Headroom that was asked for above the peak, dB.</summary>
    public required double HeadroomDb { get; init; }

    /// <summary>Noise of the cabin, A-weighted, dBFS.</summary>
    public required double CabinNoiseDbfs { get; init; }

    /// <summary>Noise of the microphone itself, A-weighted, dBFS.</summary>
    public required double SelfNoiseDbfs { get; init; }

    /// <summary>Noise of input and converter, A-weighted, dBFS.</summary>
    public required double ChainNoiseDbfs { get; init; }

    /// <summary>Gain of the safety track, dB; null when there is no input or need for one.</summary>
    public double? SafetyGainDb { get; init; }

    /// <summary>Peak of the safety track, dBFS; null with it.</summary>
    public double? SafetyPeakDbfs { get; init; }

    /// <summary>What to do with the limiter, in one sentence.</summary>
    public required string LimiterWords { get; init; }

    /// <summary>Whether it can be used.</summary>
    public required ChainVerdict Verdict { get; init; }

    /// <summary>What to do, in one sentence.</summary>
    public required string Words { get; init; }

    /// <summary>Every effort from whisper to shout.</summary>
    public required IReadOnlyList<EffortLevel> Efforts { get; init; }

    /// <summary>A transmitter between the microphone and the recorder; null without.</summary>
    public TransmitterLevel? Transmitter { get; init; }
}

/// <summary>The gain sheet of a plan.</summary>
/// <param name="Inputs">Inputs in order.</param>
/// <param name="Sends">Transmitters fed by the recorder.</param>
/// <param name="Advisories">What to be careful about, most important first.</param>
public sealed record LevelReport(IReadOnlyList<InputLevels> Inputs, IReadOnlyList<TransmitterLevel> Sends, IReadOnlyList<Advisory> Advisories);
