using Quarterlight.Placement.Levels;

namespace Quarterlight.Planner.Mapping;

/// <summary>Gain sheets, to the contract.</summary>
internal static class LevelReportMapper
{
    public static V1.LevelReport ToContract(LevelReport report) => new()
    {
        Inputs = { report.Inputs.Select(ToContract) },
        Sends = { report.Sends.Select(ToContract) },
        Advisories = { report.Advisories.Select(GeometryMapper.ToContract) },
    };

    private static V1.InputLevels ToContract(InputLevels input)
    {
        var contract = new V1.InputLevels
        {
            RecorderInput = input.RecorderInput,
            MicrophoneId = input.MicrophoneId,
            TalkerIds = { input.TalkerIds },
            PeakLevelDb = GeometryMapper.ToContract(input.PeakLevelDb),
            CapsuleMarginDb = input.CapsuleMarginDb,
            OutputPeakDbu = input.OutputPeakDbu,
            GainDb = input.GainDb,
            PadDb = input.PadDb,
            PeakDbfs = input.PeakDbfs,
            SpeechDbfs = input.SpeechDbfs,
            HeadroomDb = input.HeadroomDb,
            CabinNoiseDbfs = input.CabinNoiseDbfs,
            SelfNoiseDbfs = input.SelfNoiseDbfs,
            ChainNoiseDbfs = input.ChainNoiseDbfs,
            LimiterWords = input.LimiterWords,
            Verdict = input.Verdict.ToContract<V1.ChainVerdict>(),
            Words = input.Words,
            Efforts = { input.Efforts.Select(ToContract) },
            Transmitter = input.Transmitter is { } transmitter ? ToContract(transmitter) : null,
        };
        if (input.SafetyGainDb is { } gain)
        {
            contract.SafetyGainDb = gain;
        }

        if (input.SafetyPeakDbfs is { } peak)
        {
            contract.SafetyPeakDbfs = peak;
        }

        return contract;
    }

    private static V1.EffortLevel ToContract(EffortLevel effort) => new()
    {
        Effort = effort.Effort.ToContract<V1.VocalEffort>(),
        PeakLevelDb = effort.PeakLevelDb,
        PeakDbfs = effort.PeakDbfs,
        SpeechDbfs = effort.SpeechDbfs,
        Clips = effort.Clips,
    };

    private static V1.TransmitterLevel ToContract(TransmitterLevel transmitter) => new()
    {
        TransmitterId = transmitter.TransmitterId,
        GainDb = transmitter.GainDb,
        HeadroomDb = transmitter.HeadroomDb,
        NoiseDb = transmitter.NoiseDb,
        ReceiverPeakDbu = transmitter.ReceiverPeakDbu,
        Verdict = transmitter.Verdict.ToContract<V1.ChainVerdict>(),
        Words = transmitter.Words,
    };
}
