using Quarterlight.Acoustics;
using Quarterlight.Placement.Noise;

namespace Quarterlight.Placement.Tests.Noise;

public class TakeVerdictTests
{
    [Theory]
    [InlineData(5.999, SceneVerdict.Unusable)]
    [InlineData(6, SceneVerdict.WithCare)]
    [InlineData(11.999, SceneVerdict.WithCare)]
    [InlineData(12, SceneVerdict.Works)]
    public void Of_WindowsShutFanOff_GoesByThePlansThresholds(double snr, SceneVerdict verdict) =>
        Assert.Equal(verdict, TakeVerdict.Of(snr, Questions.Drive(60)));

    // Common practice, no source: the fan is off in every take.
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void Of_FanOn_IsUnusableHoweverQuiet(int step) => Assert.Equal(SceneVerdict.Unusable, TakeVerdict.Of(40, Questions.Drive(0) with { FanStep = step }));

    // Common practice, no source: windows down at 40 mph is unusable. The edges at 30 km/h and at one whole window are judgement.
    [Theory]
    [InlineData(29.9, 1, SceneVerdict.Works)]
    [InlineData(30, 0.1, SceneVerdict.WithCare)]
    [InlineData(63.9, 1, SceneVerdict.WithCare)]
    [InlineData(64, 0.9, SceneVerdict.WithCare)]
    [InlineData(64, 1, SceneVerdict.Unusable)]
    [InlineData(64, 0, SceneVerdict.Works)]
    public void Of_WindowOpen_KnowsThatWindMovesTheCapsule(double speed, double open, SceneVerdict verdict) =>
        Assert.Equal(verdict, TakeVerdict.Of(40, Questions.Drive(speed) with { OpenWindows = [new WindowOpening("front-left", open)] }));

    [Fact]
    public void Of_WindowsShared_CountTogether() => Assert.Equal(
        SceneVerdict.Unusable, TakeVerdict.Of(40, Questions.Drive(64) with { OpenWindows = [new WindowOpening("front-left", 0.5), new WindowOpening("rear-left", 0.5)] }));
}
