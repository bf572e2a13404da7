using Quarterlight.Acoustics;
using Quarterlight.Placement.Levels;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests.Levels;

public class LevelRulesTests
{
    private static readonly LevelTask s_task = LevelSamples.Worn with { Transmitters = [LevelSamples.Bodypack, LevelSamples.Send] };

    public static TheoryData<string, double, Func<double, LevelTask>> Ends
    {
        get
        {
            var data = new TheoryData<string, double, Func<double, LevelTask>>();
            void Range(string path, ValidRange range, Func<double, LevelTask> make)
            {
                data.Add(path, range.Min - 0.01, make);
                data.Add(path, range.Max + 0.01, make);
                data.Add(path, double.NaN, make);
                data.Add("", range.Min, make);
                data.Add("", range.Max, make);
            }

            Range("kit.recorder_gain.full_scale_dbu", LevelRules.FullScale, v => Recorder(r => r with { FullScaleDbu = v }));
            Range("kit.recorder_gain.gain_min_db", LevelRules.GainMin, v => Recorder(r => r with { GainMinDb = v }));
            Range("kit.recorder_gain.gain_max_db", LevelRules.GainMax, v => Recorder(r => r with { GainMaxDb = v, GainMinDb = -30 }));
            Range("kit.recorder_gain.gain_step_db", LevelRules.GainStep, v => Recorder(r => r with { GainStepDb = v }));
            Range("kit.recorder_gain.max_input_dbu", LevelRules.MaxInput, v => Recorder(r => r with { MaxInputDbu = v }));
            Range("kit.recorder_gain.input_noise_dbu", LevelRules.InputNoise, v => Recorder(r => r with { InputNoiseDbu = v }));
            Range("kit.recorder_gain.dynamic_range_db", LevelRules.DynamicRange, v => Recorder(r => r with { DynamicRangeDb = v }));
            Range("kit.recorder_gain.pad_db", LevelRules.Pad, v => Recorder(r => r with { PadDb = v }));
            Range("kit.transmitter_audio[1].full_modulation_dbu", LevelRules.FullModulation, v => Transmitter(t => t with { FullModulationDbu = v }));
            Range("kit.transmitter_audio[1].gain_min_db", LevelRules.TransmitterGainMin, v => Transmitter(t => t with { GainMinDb = v, GainMaxDb = 80 }));
            Range("kit.transmitter_audio[1].gain_max_db", LevelRules.TransmitterGainMax, v => Transmitter(t => t with { GainMaxDb = v, GainMinDb = -60 }));
            Range("kit.transmitter_audio[1].gain_step_db", LevelRules.GainStep, v => Transmitter(t => t with { GainStepDb = v }));
            Range("kit.transmitter_audio[1].dynamic_range_db", LevelRules.TransmitterDynamicRange, v => Transmitter(t => t with { DynamicRangeDb = v }));
            Range("kit.transmitter_audio[1].receiver_output_dbu", LevelRules.ReceiverOutput, v => Transmitter(t => t with { ReceiverOutputDbu = v }));
            Range("headroom_db", LevelRules.Headroom, v => s_task with { HeadroomDb = v });
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public void Validate_AtAndBeyondEachEnd_RefusesOnlyBeyond(string path, double value, Func<double, LevelTask> make)
    {
        LevelTask task = make(value);
        Assert.Equal(path.Length == 0 ? [] : [path], LevelRules.Validate(task).Select(v => v.Field));
        if (path.Length == 0)
        {
            LevelReport report = LevelPlanner.Plan(task); // Every end can be answered, with finite figures.
            Assert.All(report.Inputs, i => Assert.True(double.IsFinite(i.PeakDbfs + i.SpeechDbfs + i.CabinNoiseDbfs + i.SelfNoiseDbfs + i.ChainNoiseDbfs)));
        }
    }

    [Fact]
    public void Validate_MostGainAgainstLeast_RecorderMustBeAboveAndTransmitterNotBelow()
    {
        Assert.Equal("kit.recorder_gain.gain_max_db", Assert.Single(LevelRules.Validate(Recorder(r => r with { GainMinDb = 20, GainMaxDb = 20 }))).Field);
        Assert.Empty(LevelRules.Validate(Transmitter(t => t with { GainMinDb = 20, GainMaxDb = 20 })));
        Assert.Equal("kit.transmitter_audio[1].gain_max_db", Assert.Single(LevelRules.Validate(Transmitter(t => t with { GainMinDb = 20, GainMaxDb = 19.9 }))).Field);
    }

    [Fact]
    public void Validate_UnknownNames_AreNamedWithTheOnesThereAre()
    {
        LevelTask task = s_task with { LoudestByTalker = new Dictionary<string, VocalEffort> { ["nobody"] = VocalEffort.Shout, ["driver"] = VocalEffort.Shout }, MicrophoneTransmitterId = "send" };
        Violation[] violations = [.. LevelRules.Validate(task)];
        Assert.Equal(["efforts", "microphone_transmitter_id"], violations.Select(v => v.Field));
        Assert.Contains("driver, front", violations[0].Remedy, StringComparison.Ordinal);
        Assert.Contains("fed by the recorder", violations[1].Problem, StringComparison.Ordinal);
        Assert.Contains("no transmitter \"other\"", Assert.Single(LevelRules.Validate(s_task with { MicrophoneTransmitterId = "other" })).Problem, StringComparison.Ordinal);
        Assert.Empty(LevelRules.Validate(s_task with { MicrophoneTransmitterId = "pack" }));
    }

    [Fact]
    public void ValidateAll_TwiceTheSameOrTooMany_IsRefused()
    {
        Assert.Equal("list[1].id", Assert.Single(LevelRules.ValidateAll([LevelSamples.Send, LevelSamples.Send], "list")).Field);
        TransmitterAudio[] many = [.. Enumerable.Range(0, 21).Select(i => LevelSamples.Send with { Id = $"t{i}" })];
        Assert.Equal("list", Assert.Single(LevelRules.ValidateAll(many, "list")).Field);
        Assert.Empty(LevelRules.ValidateAll([.. many.Take(20)], "list"));
    }

    private static LevelTask Recorder(Func<RecorderGain, RecorderGain> change) => s_task with { Recorder = change(LevelSamples.Recorder) };

    private static LevelTask Transmitter(Func<TransmitterAudio, TransmitterAudio> change) => s_task with { Transmitters = [LevelSamples.Bodypack, change(LevelSamples.Send)] };
}
