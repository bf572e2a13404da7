using Quarterlight.Acoustics;
using Quarterlight.Placement.Levels;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests.Levels;

public class LevelPlannerTests
{
    private static readonly LevelTask s_task = LevelSamples.Worn;

    [Fact]
    public void Plan_AtTheScenesEffort_HasTheFiguresOfThePlan()
    {
        foreach (InputLevels input in LevelPlanner.Plan(s_task).Inputs)
        {
            PlacementFigures figures = s_task.Plan.Best.Placements.Single(p => p.RecorderInput == input.RecorderInput).Figures;
            EffortLevel normal = input.Efforts.Single(e => e.Effort == VocalEffort.Normal);
            Assert.Equal(figures.PeakLevelDb.Value, normal.PeakLevelDb, 1e-9);
            Assert.Equal(AudioVoltage.OutputDbu(15, figures.SpeechDba) + input.GainDb - 20, normal.SpeechDbfs, 1e-9);
            Assert.Equal(normal.SpeechDbfs, input.SpeechDbfs, 1e-9);
            Assert.Equal(VocalEfforts.QuietestFirst, input.Efforts.Select(e => e.Effort));
            Assert.Equal(input.PeakLevelDb.Value, input.Efforts.Single(e => e.Effort == VocalEffort.Raised).PeakLevelDb, 1e-9); // One step in hand.
        }
    }

    // Another route: plan the shouted scene itself. The same place on the clothing, so the same levels.
    [Theory]
    [InlineData(VocalEffort.Whisper)]
    [InlineData(VocalEffort.Shout)]
    public void Plan_OtherEfforts_AreWhatAPlanAtThatEffortSays(VocalEffort effort)
    {
        LevelTask other = LevelSamples.Make(effort);
        Assert.Equal(s_task.Plan.Best.Placements.Select(p => p.Site.Id), other.Plan.Best.Placements.Select(p => p.Site.Id));
        foreach ((InputLevels input, TalkerPlacement placement) in LevelPlanner.Plan(s_task).Inputs.Zip(other.Plan.Best.Placements))
        {
            EffortLevel level = input.Efforts.Single(e => e.Effort == effort);
            Assert.Equal(placement.Figures.PeakLevelDb.Value, level.PeakLevelDb, 1e-6);
            Assert.Equal(placement.Figures.SpeechDba - s_task.Plan.Best.Placements.Single(p => p.TalkerId == placement.TalkerId).Figures.SpeechDba, level.SpeechDbfs - input.SpeechDbfs, 1e-6);
        }
    }

    [Fact]
    public void Plan_WithinTheRange_PutsThePeakAtTheHeadroomRoundedDown()
    {
        foreach (double headroom in new[] { 0, 6, 12.5 })
        {
            foreach (double step in new[] { 0.1, 1, 3 })
            {
                foreach (InputLevels input in LevelPlanner.Plan(s_task with { HeadroomDb = headroom, Recorder = LevelSamples.Recorder with { GainStepDb = step } }).Inputs)
                {
                    Assert.InRange(input.PeakDbfs, -headroom - step, -headroom + 1e-9);
                    Assert.Equal(0, Math.IEEERemainder(input.GainDb - 6, step), 1e-6);
                    Assert.Equal(input.OutputPeakDbu + input.GainDb - 20, input.PeakDbfs, 1e-9);
                    Assert.Equal(AudioVoltage.OutputDbu(15, input.PeakLevelDb.Value) - 3.0103, input.OutputPeakDbu, 1e-4);
                    Assert.Equal(ChainVerdict.Fits, input.Verdict);
                }
            }
        }
    }

    [Fact]
    public void Plan_TenDecibelsLouder_GivesTenDecibelsLessGainUntilTheLeast()
    {
        double before = LevelPlanner.Plan(s_task).Inputs[0].GainDb;
        for (int i = 1; i <= 4; i++)
        {
            double gain = LevelPlanner.Plan(s_task.WithFigures(f => f with { CapsuleLevelsDb = f.CapsuleLevelsDb.Shifted(10 * i) }).WithMicrophone(m => m with { MaxLevelDb = 160 })).Inputs[0].GainDb;
            Assert.Equal(Math.Max(6, before - (10 * i)), gain, 1e-9);
        }
    }

    [Fact]
    public void Plan_SensitivityHalved_RaisesTheGainBySixAndLeavesThePeak()
    {
        LevelTask fine = s_task with { Recorder = LevelSamples.Recorder with { GainStepDb = 0.1 } };
        InputLevels full = LevelPlanner.Plan(fine).Inputs[0], half = LevelPlanner.Plan(fine.WithMicrophone(m => m with { SensitivityMvPerPa = m.SensitivityMvPerPa / 2 })).Inputs[0];
        Assert.Equal(6.02, half.GainDb - full.GainDb, 0.1);
        Assert.Equal(full.PeakDbfs, half.PeakDbfs, 0.1);
        Assert.Equal(full.PeakLevelDb, half.PeakLevelDb);
        Assert.Equal(full.CapsuleMarginDb, half.CapsuleMarginDb);
        Assert.True(half.ChainNoiseDbfs >= full.ChainNoiseDbfs);
    }

    [Fact]
    public void Plan_Noises_AreEnergySums()
    {
        InputLevels input = LevelPlanner.Plan(s_task).Inputs[0];
        PlacementFigures figures = s_task.Plan.Best.Placements[0].Figures;

        // Cabin and microphone together are the plan's noise.
        Assert.Equal(AudioVoltage.OutputDbu(15, figures.NoiseDba.Value) + input.GainDb - 20, AudioVoltage.NoiseSum(input.CabinNoiseDbfs, input.SelfNoiseDbfs), 1e-6);
        Assert.Equal(AudioVoltage.OutputDbu(15, 26) + input.GainDb - 20, input.SelfNoiseDbfs, 1e-9);
        Assert.Equal(10 * Math.Log10(Math.Pow(10, (-128 + input.GainDb - 20) / 10) + Math.Pow(10, -115 / 10.0)), input.ChainNoiseDbfs, 1e-9);
        Assert.Equal(figures.SnrDba.Value, input.SpeechDbfs - AudioVoltage.NoiseSum(input.CabinNoiseDbfs, input.SelfNoiseDbfs), 1e-6);
    }

    [Fact]
    public void Plan_PadIn_WeakensTheSoundAndNotTheInputsNoise()
    {
        LevelTask hot = s_task.WithMicrophone(m => m with { SensitivityMvPerPa = 60 }) with { Recorder = LevelSamples.Recorder with { FullScaleDbu = -20, GainMinDb = 0, PadDb = 20 } };
        InputLevels padded = LevelPlanner.Plan(hot).Inputs[0], bare = LevelPlanner.Plan(hot with { Recorder = hot.Recorder with { PadDb = 0 } }).Inputs[0];
        Assert.Equal((20, ChainVerdict.Pad), (padded.PadDb, padded.Verdict));
        Assert.Equal((0.0, 0.0), (bare.PadDb, bare.GainDb));
        Assert.Contains(bare.Verdict, new[] { ChainVerdict.Tight, ChainVerdict.InputOverload });
        Assert.InRange(padded.PeakDbfs, -7, -6 + 1e-9);
        Assert.Equal(AudioVoltage.NoiseSum(-128 + padded.GainDb + 20, -115), padded.ChainNoiseDbfs, 1e-9);
        Assert.True(padded.SpeechDbfs - padded.ChainNoiseDbfs < bare.SpeechDbfs - bare.ChainNoiseDbfs);
        Assert.Contains("with the 20 dB pad in", padded.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_MaxInputBelowThePeak_NeedsThePadOrOverloads()
    {
        double peak = LevelPlanner.Plan(s_task).Inputs[0].OutputPeakDbu;
        LevelTask weak = s_task with { Recorder = LevelSamples.Recorder with { MaxInputDbu = -20 } };
        weak = weak.WithMicrophone(m => m with { SensitivityMvPerPa = m.SensitivityMvPerPa * Math.Pow(10, (-19 - peak) / 20) });
        Assert.Equal(ChainVerdict.InputOverload, LevelPlanner.Plan(weak).Inputs[0].Verdict);
        LevelReport withPad = LevelPlanner.Plan(weak with { Recorder = weak.Recorder with { PadDb = 20 } });
        Assert.Equal(ChainVerdict.Pad, withPad.Inputs[0].Verdict);
        Assert.Contains(LevelPlanner.Plan(weak).Advisories, a => a.Code == "input-overload");
        Assert.DoesNotContain(withPad.Advisories, a => a.Code == "input-overload");
    }

    [Fact]
    public void Plan_CapsuleTooWeak_IsRefusedWithTheWayOut()
    {
        double peak = LevelPlanner.Plan(s_task).Inputs[0].PeakLevelDb.Value;
        InputLevels over = LevelPlanner.Plan(s_task.WithMicrophone(m => m with { MaxLevelDb = peak - 0.1 })).Inputs[0];
        Assert.Equal(ChainVerdict.CapsuleOverload, over.Verdict);
        Assert.Equal(-0.1, over.CapsuleMarginDb, 1e-9);
        Assert.Contains("move it away, or have the line played down", over.Words, StringComparison.Ordinal);
        Assert.Null(over.SafetyGainDb);
        Assert.Equal(over.Efforts.Select(e => e.PeakLevelDb > peak - 0.1), over.Efforts.Select(e => e.Clips));

        // Within the doubt of the forecast it is tight, beyond it it fits.
        Assert.Equal(ChainVerdict.Tight, LevelPlanner.Plan(s_task.WithMicrophone(m => m with { MaxLevelDb = peak + 3.9 })).Inputs[0].Verdict);
        Assert.Equal(ChainVerdict.Fits, LevelPlanner.Plan(s_task.WithMicrophone(m => m with { MaxLevelDb = peak + 4.1 })).Inputs[0].Verdict);
    }

    [Fact]
    public void Plan_NoisyInput_IsTightAndSaysWhoseNoiseRules()
    {
        InputLevels noisy = LevelPlanner.Plan(s_task.WithFigures(f => f with { NoiseLevelsDb = f.NoiseLevelsDb.Shifted(-25) }) with { Recorder = LevelSamples.Recorder with { InputNoiseDbu = -80 } }).Inputs[0];
        Assert.Equal(ChainVerdict.Tight, noisy.Verdict);
        Assert.Contains("the noise of the input is heard", noisy.Words, StringComparison.Ordinal);
        Assert.Contains("Most of the noise is of the cabin", LevelPlanner.Plan(s_task).Inputs[0].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_FloatRecording_ClipsOnlyAtTheInput()
    {
        LevelTask floats = s_task with { Recorder = LevelSamples.Recorder with { FloatRecording = true, MaxInputDbu = 20, FullScaleDbu = 0, GainMinDb = 30 } };
        InputLevels input = LevelPlanner.Plan(floats).Inputs[0];
        Assert.True(input.PeakDbfs > 0);
        Assert.Equal(ChainVerdict.Fits, input.Verdict);
        Assert.All(input.Efforts, e => Assert.False(e.Clips));
        Assert.Null(input.SafetyGainDb);
        Assert.Contains("floats do not clip", input.LimiterWords, StringComparison.Ordinal);
        Assert.Contains(LevelPlanner.Plan(floats with { Recorder = floats.Recorder with { FloatRecording = false } }).Inputs[0].Efforts, e => e.Clips);
    }

    [Fact]
    public void Plan_SafetyTrack_FitsAnEffortMoreWhereTheMainTrackDoesNot()
    {
        LevelTask task = s_task with { LoudestByTalker = new Dictionary<string, VocalEffort> { ["driver"] = VocalEffort.Raised, ["front"] = VocalEffort.Raised } };
        foreach (InputLevels input in LevelPlanner.Plan(task).Inputs)
        {
            Assert.Equal(input.GainDb - 12, input.SafetyGainDb!.Value, 1e-9);
            Assert.Equal(input.PeakDbfs - 12, input.SafetyPeakDbfs!.Value, 1e-9);
            double louder = input.Efforts.Single(e => e.Effort == VocalEffort.Loud).PeakDbfs;
            Assert.True(louder + 4 > 0 && louder + 4 - 12 <= 0); // 4 dB is the doubt of the forecast.
        }

        // A shout is the loudest there is, and 6 dB is more than the doubt of 4.
        Assert.All(LevelPlanner.Plan(task with { LoudestByTalker = new Dictionary<string, VocalEffort> { ["driver"] = VocalEffort.Shout, ["front"] = VocalEffort.Shout } }).Inputs, i => Assert.Null(i.SafetyGainDb));
    }

    [Fact]
    public void Plan_OneFreeInput_GivesTheSafetyTrackToTheNeediestAndSaysSo()
    {
        LevelReport report = LevelPlanner.Plan(s_task.WithInputs(3) with { LoudestByTalker = new Dictionary<string, VocalEffort> { ["front"] = VocalEffort.Loud } });
        Assert.Single(report.Inputs, i => i.SafetyGainDb is not null);
        Assert.Contains(report.Advisories, a => a.Code == "safety-inputs-short");
        Assert.All(LevelPlanner.Plan(s_task.WithInputs(2)).Inputs, i => Assert.Null(i.SafetyGainDb));
        Assert.DoesNotContain(LevelPlanner.Plan(s_task.WithInputs(4)).Advisories, a => a.Code == "safety-inputs-short");
    }

    [Fact]
    public void Plan_SharedMicrophone_TakesTheLoudestTalker()
    {
        LevelTask shared = s_task.WithPlacements(p => p with { RecorderInput = 1 }) with { LoudestByTalker = new Dictionary<string, VocalEffort> { ["driver"] = VocalEffort.Normal, ["front"] = VocalEffort.Shout } };
        InputLevels input = Assert.Single(LevelPlanner.Plan(shared).Inputs);
        Assert.Equal(["driver", "front"], input.TalkerIds);
        Assert.Equal(LevelPlanner.Plan(s_task with { LoudestByTalker = shared.LoudestByTalker }).Inputs.Max(i => i.PeakLevelDb.Value), input.PeakLevelDb.Value, 1e-9);
    }

    [Fact]
    public void Plan_QuieterThanTheScene_KeepsTheScenesEffortAndSaysSo()
    {
        LevelReport report = LevelPlanner.Plan(s_task with { LoudestByTalker = new Dictionary<string, VocalEffort> { ["driver"] = VocalEffort.Whisper } });
        Assert.Equal(s_task.Plan.Best.Placements[0].Figures.PeakLevelDb.Value, report.Inputs[0].PeakLevelDb.Value, 1e-9);
        Assert.Contains(report.Advisories, a => a.Code == "quieter-than-scene");
    }

    [Fact]
    public void Plan_LimiterWords_DifferByKind()
    {
        string[] words = [.. Enum.GetValues<LimiterKind>().Select(k => LevelPlanner.Plan(s_task with { Recorder = LevelSamples.Recorder with { Limiter = k } }).Inputs[0].LimiterWords)];
        Assert.Equal(3, words.Distinct().Count());
    }

    [Fact]
    public void Plan_Invalid_Throws() => Assert.Throws<InvalidInputException>(() => LevelPlanner.Plan(s_task with { HeadroomDb = 31 }));
}
