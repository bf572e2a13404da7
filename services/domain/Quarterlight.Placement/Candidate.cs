using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>One microphone at one spot with one fixing and aim, for one talker or for several who share it.</summary>
internal sealed class Candidate
{
    /// <summary>Talkers served, as bits.</summary>
    public required int Mask { get; init; }

    /// <summary>Number of the spot among the usable ones.</summary>
    public required int Spot { get; init; }

    /// <summary>Number of the microphone in the kit.</summary>
    public required int Microphone { get; init; }

    /// <summary>The fixing.</summary>
    public required Fixings Fixing { get; init; }

    /// <summary>Unit vector.</summary>
    public required Vector3D Aim { get; init; }

    /// <summary>Score in dB of each talker of the scene, penalties of the place taken off; meaningful for those served.</summary>
    public required double[] ScoreDb { get; init; }

    /// <summary>A-weighted speech level in dB of each talker of the scene through this microphone.</summary>
    public required double[] SpeechDba { get; init; }

    /// <summary>Worst score in dB among the talkers served.</summary>
    public double WorstDb { get; init; }

    /// <summary>What no other aim at the same place could exceed for the worst talker served, in dB.</summary>
    public double CeilingDb { get; init; }

    /// <summary>Useful-to-detrimental ratio in dB of each talker served, before any penalty.</summary>
    public required double[] RatioDb { get; init; }

    /// <summary>True when it serves the talker.</summary>
    public bool Serves(int talker) => (Mask & (1 << talker)) != 0;
}
