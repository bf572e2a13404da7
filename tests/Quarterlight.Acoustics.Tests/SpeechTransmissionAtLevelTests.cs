using CsCheck;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class SpeechTransmissionAtLevelTests
{
    private static readonly double[] s_cabinTimesS = [0.12, 0.09, 0.07, 0.06, 0.055, 0.05, 0.045];
    private static readonly BandLevels s_speech = VoiceSpectrum.AtOneMetre(VocalEffort.Normal);
    private static readonly BandLevels s_noise = new(55, 48, 45, 40, 36, 30, 24);

    // A separate program in another language (the one that reproduces Annex M of IEC 60268-16:2011) gives these for the same input.
    [Theory]
    [InlineData(0, 0.902128)]
    [InlineData(25, 0.847627)]
    public void StatisticalAtLevel_QuietAndLoud_AgreesWithASeparateProgram(double shiftDb, double expected) =>
        Assert.Equal(expected, SpeechTransmission.StatisticalAtLevel(s_speech.Shifted(shiftDb), s_noise.Shifted(shiftDb), s_cabinTimesS), 1e-6);

    // Same program, no masking and no threshold.
    [Fact]
    public void Statistical_TimesByBand_AgreesWithASeparateProgram()
    {
        Assert.Equal(0.905199, SpeechTransmission.Statistical(s_speech - s_noise, s_cabinTimesS), 1e-6);
        Assert.Equal(0.991131, SpeechTransmission.Statistical(BandLevels.Flat(double.PositiveInfinity), s_cabinTimesS), 1e-6);
    }

    // IEC 60268-16: masking and threshold only take away; at one signal-to-noise ratio an ear never does better than without them.
    [Fact]
    public void StatisticalAtLevel_AnyLevel_IsNeverAboveTheLevelFreeIndex() => Gen.Double[20, 110].Select(Gen.Double[-20, 40]).Sample((level, snr) =>
    {
        var speech = BandLevels.Flat(level);
        double atLevel = SpeechTransmission.StatisticalAtLevel(speech, speech.Shifted(-snr), s_cabinTimesS);
        Assert.True(atLevel <= SpeechTransmission.Statistical(BandLevels.Flat(snr), s_cabinTimesS) + 1e-12);
    });

    // Reception threshold: speech far below what anyone hears carries nothing.
    [Fact]
    public void StatisticalAtLevel_BelowHearing_IsZero() =>
        Assert.Equal(0, SpeechTransmission.StatisticalAtLevel(BandLevels.Flat(-40), BandLevels.Flat(double.NegativeInfinity), s_cabinTimesS), 1e-9);

    [Fact]
    public void Inputs_WrongNumberOfBands_Throw()
    {
        Assert.Throws<ArgumentException>(() => SpeechTransmission.FromMti([1, 1]));
        Assert.Throws<ArgumentException>(() => SpeechTransmission.FromModulation([[1.0]]));
        Assert.Throws<ArgumentException>(() => SpeechTransmission.Statistical(s_speech, [0.1]));
        Assert.Throws<ArgumentException>(() => SpeechTransmission.StatisticalAtLevel(s_speech, s_noise, [0.1]));
    }
}
