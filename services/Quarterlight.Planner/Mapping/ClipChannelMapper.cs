using Quarterlight.Clips;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Planner.Mapping;

/// <summary>What was measured on one channel, to the contract.</summary>
internal static class ClipChannelMapper
{
    public static V1.ClipChannel ToContract(ChannelMeasures measures, int sampleRateHz)
    {
        ClipSpectrumReport spectrum = measures.Spectrum;
        var contract = new V1.ClipChannel
        {
            Number = measures.Index + 1,
            Loudness = ClipReportMapper.ToContract(measures.Loudness),
            ActivityFraction = Math.Min(1, measures.SpeechLevel.ActivityShare),
            Clipping = ToContract(measures.Samples.Clipping, sampleRateHz),
            DigitalSilence = ToContract(measures.Samples.DigitalSilence, sampleRateHz),
            Dropouts = ToContract(measures.Samples.Dropouts, sampleRateHz),
            DcOffsetFraction = measures.Samples.DcOffset,
            SpeechAndNoise = spectrum.SpeechNoise is { } speech ? ToContract(speech, measures) : null,
            Engine = spectrum.Engine is { } engine ? ToContract(engine) : null,
            LowEnd = spectrum.Wind is { } wind ? ToContract(wind) : null,
            Tags = measures.Tags is { } tags ? TagMapper.ToContract(tags) : null,
        };
        ClipReportMapper.SetIf(measures.Samples.PeakDbfs, v => contract.SamplePeakDbfs = v);
        ClipReportMapper.SetIf(measures.TruePeak.PeakDbtp, v => contract.TruePeakDbtp = v);
        ClipReportMapper.SetIf(measures.TruePeak.Seconds, v => contract.TruePeakAtS = v);
        ClipReportMapper.SetIf(measures.Samples.RmsDbov, v => contract.RmsDbov = v);
        ClipReportMapper.SetIf(measures.SpeechLevel.ActiveDbov, v => contract.ActiveSpeechLevelDbov = v);
        if (spectrum.Bands is { } bands)
        {
            contract.LevelDbfsA = bands.AWeightedDb;
            contract.Octaves.AddRange(bands.OctaveLevels().Select(ToContract));
            contract.ThirdOctaves.AddRange(bands.ThirdOctaveLevels().Select(ToContract));
        }

        contract.Hum.AddRange(new[] { spectrum.Hum50, spectrum.Hum60 }.OfType<HumReport>().Where(h => h.IsPresent)
            .Select(h => new V1.HumReading { MainsHz = h.MainsHz, LevelDbfs = h.LevelDb, Confidence = h.Confidence }));
        return contract;
    }

    private static V1.ClipStretches ToContract(Stretches stretches, int sampleRateHz)
    {
        var contract = new V1.ClipStretches { Count = stretches.Count, TotalS = (double)stretches.Samples / sampleRateHz };
        contract.First.AddRange(stretches.First.Select(s => new V1.ClipStretch { StartS = s.StartSeconds, EndS = s.StartSeconds + ((double)s.Samples / sampleRateHz) }));
        return contract;
    }

    private static V1.SpeechAndNoise ToContract(SpeechNoiseReport report, ChannelMeasures measures)
    {
        var contract = new V1.SpeechAndNoise
        {
            NoiseDbfsA = new V1.Estimate { Value = report.NoiseAWeightedDb, PlusMinus = report.NoiseUncertaintyDb },
            SpeechS = report.ActiveSeconds,
        };
        ClipReportMapper.SetIf(report.SpeechAWeightedDb, v => contract.SpeechDbfsA = v);
        ClipReportMapper.SetIf(
            report.SpeechToNoiseDb,
            v => contract.SpeechToNoiseDb = new V1.Estimate { Value = v, PlusMinus = report.SpeechToNoiseUncertaintyDb ?? 0 });
        contract.NoiseOctaves.AddRange(report.NoiseOctaves.Select(ToContract));
        contract.SpeechOctaves.AddRange(report.SpeechOctaves.Select(ToContract));
        contract.Speech.AddRange(measures.Speech.Select(ClipReportMapper.ToContract));
        return contract;
    }

    private static V1.BandLevel ToContract(BandLevel band) => new() { CentreHz = band.NominalHz, LevelDbfs = band.LevelDb, IsCut = !band.IsWhole };

    private static V1.EngineReading ToContract(EngineReport report)
    {
        var contract = new V1.EngineReading { Cylinders = report.Cylinders, Confidence = report.Confidence };
        ClipReportMapper.SetIf(report.Rpm, v => contract.Rpm = v);
        ClipReportMapper.SetIf(report.FiringHz, v => contract.FiringHz = v);
        return contract;
    }

    private static V1.LowEndReading ToContract(WindReport report) => new()
    {
        Wind = report.Wind,
        Pressure = report.Pressure,
        LowOverMidDb = report.LowOverMidDb,
        InfraOverLowDb = report.InfraOverLowDb,
    };
}
