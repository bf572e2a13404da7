namespace Quarterlight.Placement.Levels;

/// <summary>Sets the gain of a transmitter for the highest peak at its input.</summary>
internal static class TransmitterStage
{
    /// <summary>Analogue with a compander is kept this much further from full modulation, dB (judgement): overload distorts, and the compander pumps.</summary>
    public const double CompanderReserveDb = 3;

    /// <summary>Gain and what comes of it.</summary>
    /// <param name="transmitter">The transmitter.</param>
    /// <param name="peakDbu">Highest peak at its input, as the sine with that peak, dBu.</param>
    /// <param name="headroomDb">Headroom asked for, dB.</param>
    public static TransmitterLevel Set(TransmitterAudio transmitter, double peakDbu, double headroomDb)
    {
        double wanted = headroomDb + (transmitter.Modulation == TransmitterModulation.AnalogueCompanded ? CompanderReserveDb : 0);
        var steps = new GainSteps(transmitter.GainMinDb, transmitter.GainMaxDb, transmitter.GainStepDb);
        double gain = steps.AtMost(transmitter.FullModulationDbu - wanted - peakDbu);
        double headroom = transmitter.FullModulationDbu - (peakDbu + gain);
        ChainVerdict verdict = headroom < 0 ? ChainVerdict.InputOverload : headroom < wanted - 1e-9 ? ChainVerdict.Tight : ChainVerdict.Fits;
        return new TransmitterLevel(
            transmitter.Id,
            gain,
            headroom,
            -transmitter.DynamicRangeDb,
            transmitter.ReceiverOutputDbu - headroom,
            verdict,
            LevelWords.Transmitter(transmitter, gain, headroom, wanted, verdict));
    }
}
