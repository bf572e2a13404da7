using Quarterlight.Placement.Levels;

namespace Quarterlight.Placement.Tests.Levels;

public class TransmitterLevelTests
{
    private static readonly LevelTask s_task = LevelSamples.Worn with { Transmitters = [LevelSamples.Bodypack, LevelSamples.Send], MicrophoneTransmitterId = "pack" };

    [Fact]
    public void Plan_ThroughADigitalTransmitter_PutsThePeakUnderFullModulationAndTheReceiverAtTheInput()
    {
        foreach (InputLevels input in LevelPlanner.Plan(s_task).Inputs)
        {
            TransmitterLevel way = input.Transmitter!;
            Assert.InRange(way.HeadroomDb, 6 - 1e-9, 7);
            Assert.Equal(-10 - (input.OutputPeakDbu + way.GainDb), way.HeadroomDb, 1e-9);
            Assert.Equal(-10 - way.HeadroomDb, way.ReceiverPeakDbu, 1e-9);
            Assert.Equal(-105, way.NoiseDb);
            Assert.Equal(way.ReceiverPeakDbu + input.GainDb - 20, input.PeakDbfs, 1e-9);
            Assert.InRange(input.PeakDbfs, -7, -6 + 1e-9);

            // The way's noise is at the receiver's full output less its range.
            Assert.Equal(AudioVoltage.NoiseSum(-128 + input.GainDb - 20, -115, -10 - 105 + input.GainDb - 20), input.ChainNoiseDbfs, 1e-9);
            Assert.Equal(ChainVerdict.Fits, way.Verdict);
        }
    }

    [Fact]
    public void Plan_ThroughATransmitter_KeepsSpeechOverTheCabinsNoise()
    {
        foreach ((InputLevels cable, InputLevels radio) in LevelPlanner.Plan(s_task with { MicrophoneTransmitterId = null }).Inputs.Zip(LevelPlanner.Plan(s_task).Inputs))
        {
            Assert.Null(cable.Transmitter);
            Assert.Equal(cable.SpeechDbfs - cable.CabinNoiseDbfs, radio.SpeechDbfs - radio.CabinNoiseDbfs, 1e-9);
            Assert.Equal(cable.OutputPeakDbu, radio.OutputPeakDbu, 1e-9);
            Assert.True(radio.SpeechDbfs - radio.ChainNoiseDbfs < cable.SpeechDbfs - cable.ChainNoiseDbfs);
        }
    }

    [Fact]
    public void Plan_DigitalTransmitter_ClipsOnceAnEffortPassesFullModulation()
    {
        InputLevels input = LevelPlanner.Plan(s_task).Inputs[0];
        double limit = input.PeakLevelDb.Value + input.Transmitter!.HeadroomDb;
        Assert.Equal(input.Efforts.Select(e => e.PeakLevelDb > limit), input.Efforts.Select(e => e.Clips));
        Assert.Contains(input.Efforts, e => e.Clips);

        // Nothing louder than full modulation arrives, so the recorder stays under full scale and needs no safety track.
        Assert.All(input.Efforts, e => Assert.True(e.PeakDbfs <= -10 + input.GainDb - 20 + 1e-9));
    }

    [Fact]
    public void Plan_Companded_KeepsMoreInHandThanDigital()
    {
        double Headroom(TransmitterModulation modulation) =>
            LevelPlanner.Plan(s_task with { Transmitters = [LevelSamples.Bodypack with { Modulation = modulation, GainStepDb = 0.1 }] }).Inputs[0].Transmitter!.HeadroomDb;
        Assert.Equal(3, Headroom(TransmitterModulation.AnalogueCompanded) - Headroom(TransmitterModulation.Digital), 0.1);
        Assert.Equal(Headroom(TransmitterModulation.Analogue), Headroom(TransmitterModulation.Digital), 1e-9);
    }

    [Fact]
    public void Plan_TransmitterAtItsLeastGain_IsTightThenOverloads()
    {
        double peak = LevelPlanner.Plan(s_task).Inputs[0].OutputPeakDbu;
        InputLevels Input(double headroom) => LevelPlanner.Plan(s_task with { Transmitters = [LevelSamples.Bodypack with { GainMinDb = 0, FullModulationDbu = peak + headroom }] }).Inputs[0];
        Assert.Equal(ChainVerdict.Tight, Input(2).Transmitter!.Verdict);
        Assert.Equal(ChainVerdict.Tight, Input(2).Verdict);
        Assert.Equal(ChainVerdict.InputOverload, Input(-0.5).Transmitter!.Verdict);
        Assert.Equal(ChainVerdict.InputOverload, Input(-0.5).Verdict);
        Assert.StartsWith("The transmitter is overdriven", Input(-0.5).Words, StringComparison.Ordinal);
    }

    // Derived: line full scale +24 dBu (-20 dBFS at +4 dBu), peaks 6 dB under it at +18; full modulation at +12 dBu and 0 dB of gain.
    [Fact]
    public void Plan_Send_MeetsFullModulationWithTheRecordersFullScale()
    {
        TransmitterLevel send = Assert.Single(LevelPlanner.Plan(s_task).Sends);
        Assert.Equal(("send", -12.0, 6.0, -16.0), (send.TransmitterId, send.GainDb, send.HeadroomDb, send.ReceiverPeakDbu));
        Assert.Contains(LevelPlanner.Plan(s_task).Advisories, a => a.Code == "line-alignment");
        Assert.Empty(LevelPlanner.Plan(s_task with { Transmitters = [LevelSamples.Bodypack] }).Sends);
    }

    [Fact]
    public void Plan_NothingWorn_GoesThroughNoTransmitterAndSaysSo()
    {
        LevelReport report = LevelPlanner.Plan(s_task.WithPlacements(p => p with { Site = p.Site with { Family = Cabin.MountFamily.DashTop } }));
        Assert.All(report.Inputs, i => Assert.Null(i.Transmitter));
        Assert.Contains(report.Advisories, a => a.Code == "no-body-worn");
    }
}
