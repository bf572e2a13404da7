using Quarterlight.Acoustics;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Levels;

/// <summary>Sets one recorder input: from the peak at the capsule to full scale.</summary>
internal sealed class InputChain
{
    /// <summary>The chain's noise must lie this far under cabin and microphone, dB: then it adds no more than 1 dB (judgement).</summary>
    public const double NoiseReserveDb = 6;

    /// <summary>How far the safety track lies below, dB (judgement: one effort more, 5 to 7 dB, and 4 dB of doubt).</summary>
    public const double SafetyDropDb = 12;

    private const double LowestNoiseDb = -60; // Of the cabin in dB(A): a forecast without any noise has no logarithm.

    private readonly LevelTask _task;
    private readonly RecorderGain _recorder;
    private readonly Microphone _microphone;
    private readonly TalkerLevels[] _talkers;
    private readonly TalkerLevels _loudest;
    private readonly TransmitterAudio? _transmitter;
    private readonly TransmitterLevel? _way;
    private readonly double _gainDb;
    private readonly double _padDb;
    private readonly double _inputPeakDbu;

    public InputChain(LevelTask task, IEnumerable<TalkerLevels> talkers)
    {
        _task = task;
        _recorder = task.Recorder;
        _talkers = [.. talkers];
        _loudest = _talkers.MaxBy(t => t.PeakDb(t.Loudest))!;
        TalkerPlacement placement = _loudest.Placement;
        _microphone = task.Placement.Kit.Microphones.First(m => m.Id == placement.MicrophoneId);
        if (task.MicrophoneTransmitterId is { } id && placement.Site.Family == Cabin.MountFamily.BodyWorn)
        {
            _transmitter = task.Transmitters.First(t => t.Id == id);
            _way = TransmitterStage.Set(_transmitter, OutputPeakDbu, task.HeadroomDb);
        }

        _inputPeakDbu = AtInput(OutputPeakDbu);
        double limit = LimitDbu;
        _padDb = _recorder.PadDb > 0 && _inputPeakDbu > limit - task.HeadroomDb ? _recorder.PadDb : 0;
        _gainDb = Steps.AtMost(_recorder.FullScaleDbu - task.HeadroomDb - (_inputPeakDbu - _padDb));
    }

    /// <summary>How far the next louder effort, and the doubt, would pass full scale, dB; 0 or less needs no safety track.</summary>
    public double SafetyNeedDb =>
        _recorder.FloatRecording || Verdict is ChainVerdict.CapsuleOverload or ChainVerdict.InputOverload || SafetyGainDb >= _gainDb
            ? 0
            : PeakDbfs(_loudest.PeakDb(VocalEfforts.Louder(_loudest.Loudest))) + _loudest.Placement.Figures.PeakLevelDb.PlusMinus;

    private GainSteps Steps => new(_recorder.GainMinDb, _recorder.GainMaxDb, _recorder.GainStepDb);

    private double OutputPeakDbu => AudioVoltage.OutputPeakDbu(_microphone.SensitivityMvPerPa, PeakLevelDb);

    private double PeakLevelDb => _loudest.PeakDb(_loudest.Loudest);

    // A full-scale sine at the least gain, or what the input stands if that is less. Floats do not clip at full scale.
    private double LimitDbu
    {
        get
        {
            double atLeastGain = _recorder.FullScaleDbu - _recorder.GainMinDb, most = _recorder.MaxInputDbu ?? atLeastGain;
            return _recorder.FloatRecording ? most : Math.Min(most, atLeastGain);
        }
    }

    private double CapsuleMarginDb => _microphone.MaxLevelDb - PeakLevelDb;

    private double SafetyGainDb => Steps.AtMost(_gainDb - SafetyDropDb);

    private double ShiftDbfs => _gainDb - _padDb - _recorder.FullScaleDbu;

    private double SelfNoiseDbfs => AtInput(AudioVoltage.OutputDbu(_microphone.SensitivityMvPerPa, _microphone.SelfNoiseDba)) + ShiftDbfs;

    private double CabinNoiseDbfs => AtInput(AudioVoltage.OutputDbu(_microphone.SensitivityMvPerPa, CabinNoiseDba())) + ShiftDbfs;

    // The pad weakens the sound and not the input's own noise.
    private double ChainNoiseDbfs => _transmitter is null
        ? AudioVoltage.NoiseSum(_recorder.InputNoiseDbu + _gainDb - _recorder.FullScaleDbu, -_recorder.DynamicRangeDb)
        : AudioVoltage.NoiseSum(_recorder.InputNoiseDbu + _gainDb - _recorder.FullScaleDbu, -_recorder.DynamicRangeDb, _transmitter.ReceiverOutputDbu - _transmitter.DynamicRangeDb + ShiftDbfs);

    private ChainVerdict Verdict
    {
        get
        {
            double input = _inputPeakDbu - _padDb, limit = LimitDbu;
            return CapsuleMarginDb < 0 ? ChainVerdict.CapsuleOverload
                : input > limit || _way?.Verdict == ChainVerdict.InputOverload ? ChainVerdict.InputOverload
                : HeadroomIsThin || NoiseIsThin || CapsuleIsThin || _way?.Verdict == ChainVerdict.Tight ? ChainVerdict.Tight
                : _padDb > 0 ? ChainVerdict.Pad
                : ChainVerdict.Fits;
        }
    }

    private bool HeadroomIsThin => _inputPeakDbu - _padDb > LimitDbu - _task.HeadroomDb + 1e-9;

    private bool NoiseIsThin => ChainNoiseDbfs > AudioVoltage.NoiseSum(CabinNoiseDbfs, SelfNoiseDbfs) - NoiseReserveDb;

    private bool CapsuleIsThin => CapsuleMarginDb < _loudest.Placement.Figures.PeakLevelDb.PlusMinus;

    /// <summary>The input's line of the gain sheet.</summary>
    /// <param name="withSafety">True when an input is free for a safety track.</param>
    public InputLevels Write(bool withSafety)
    {
        double peak = PeakDbfs(PeakLevelDb);
        ChainVerdict verdict = Verdict;
        var words = new LevelWords.Situation(
            _microphone, _recorder, _gainDb, _padDb, verdict, CapsuleMarginDb, HeadroomIsThin, NoiseIsThin, CapsuleIsThin, _loudest.Loudest, SpeechDbfs(_loudest.SceneEffort), CabinNoiseDbfs, SelfNoiseDbfs, ChainNoiseDbfs, _way, Steps.AtMost(double.PositiveInfinity));
        return new InputLevels
        {
            RecorderInput = _loudest.Placement.RecorderInput,
            MicrophoneId = _microphone.Id,
            TalkerIds = [.. _talkers.Select(t => t.Placement.TalkerId)],
            PeakLevelDb = new Estimate(PeakLevelDb, _loudest.Placement.Figures.PeakLevelDb.PlusMinus),
            CapsuleMarginDb = CapsuleMarginDb,
            OutputPeakDbu = OutputPeakDbu,
            GainDb = _gainDb,
            PadDb = _padDb,
            PeakDbfs = peak,
            SpeechDbfs = SpeechDbfs(_loudest.SceneEffort),
            HeadroomDb = _task.HeadroomDb,
            CabinNoiseDbfs = CabinNoiseDbfs,
            SelfNoiseDbfs = SelfNoiseDbfs,
            ChainNoiseDbfs = ChainNoiseDbfs,
            SafetyGainDb = withSafety ? SafetyGainDb : null,
            SafetyPeakDbfs = withSafety ? peak + SafetyGainDb - _gainDb : null,
            LimiterWords = LevelWords.Limiter(_recorder),
            Verdict = verdict,
            Words = LevelWords.Input(words),
            Efforts = [.. VocalEfforts.QuietestFirst.Select(Effort)],
            Transmitter = _way,
        };
    }

    private EffortLevel Effort(VocalEffort effort)
    {
        double level = _loudest.PeakDb(effort), dbfs = PeakDbfs(level);
        double output = AudioVoltage.OutputPeakDbu(_microphone.SensitivityMvPerPa, level), input = AtInput(output) - _padDb;
        bool atInput = _recorder.FloatRecording ? input > LimitDbu : dbfs > 0 || input > LimitDbu;
        bool inTransmitter = _transmitter is not null && output + _way!.GainDb > _transmitter.FullModulationDbu;
        return new EffortLevel(effort, level, dbfs, SpeechDbfs(effort), level > _microphone.MaxLevelDb || atInput || inTransmitter);
    }

    private double PeakDbfs(double peakLevelDb)
    {
        double input = AtInput(AudioVoltage.OutputPeakDbu(_microphone.SensitivityMvPerPa, peakLevelDb));

        // A transmitter lets no more through than full modulation.
        return (_transmitter is null ? input : Math.Min(input, _transmitter.ReceiverOutputDbu)) + ShiftDbfs;
    }

    private double SpeechDbfs(VocalEffort effort) => AtInput(AudioVoltage.OutputDbu(_microphone.SensitivityMvPerPa, _loudest.SpeechDba(effort))) + ShiftDbfs;

    // From the microphone's output to the recorder's input: a cable, or transmitter and receiver.
    private double AtInput(double outputDbu) =>
        _transmitter is null ? outputDbu : outputDbu + _way!.GainDb - _transmitter.FullModulationDbu + _transmitter.ReceiverOutputDbu;

    private double CabinNoiseDba()
    {
        PlacementFigures figures = _loudest.Placement.Figures;
        double energy = 0;
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            double cabin = Math.Pow(10, figures.NoiseLevelsDb[b] / 10) - Math.Pow(10, figures.SelfNoiseLevelsDb[b] / 10);
            energy += Math.Max(0, cabin) * Math.Pow(10, OctaveBands.AWeightingDb[b] / 10);
        }

        return Math.Max(LowestNoiseDb, 10 * Math.Log10(energy));
    }
}
