using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Spectrum;
using Quarterlight.Quantities;

namespace Quarterlight.Clips.Tests.Judgement;

public class PlanComparerTests
{
    private const double FullScale = 120;

    private static readonly BandLevels s_speech = new(55, 62, 64, 58, 52, 46, 40), s_cabin = new(58, 52, 46, 42, 37, 30, 24), s_self = new(2, 0, -2, 0, 2, 4, 6);

    private static ClipPrediction Prediction { get; } = new("driver", "super", s_speech, BandLevels.EnergySum(s_cabin, s_self), s_self, 5);

    // What is put in must come out: the clip holds the forecast cabin noise, shifted, and the self-noise as forecast.
    [Fact]
    public void Compare_ClipOfAShiftedForecast_GivesTheShiftBack()
    {
        var shift = new BandLevels(6, 5, 4, 3, 2, 0, -3);
        PlanComparison comparison = PlanComparer.Compare(Channel(s_speech, BandLevels.EnergySum(s_cabin + shift, s_self)), Prediction, FullScale)!;
        Assert.All(Enumerable.Range(0, OctaveBands.Count), b => Assert.Equal(shift[b], comparison.NoiseCorrection!.Value[b], 1e-9));
        Assert.False(comparison.TiedToSpeech);
        Assert.StartsWith("The car is ", comparison.Words, StringComparison.Ordinal);
        Assert.EndsWith("(±5).", comparison.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_UnknownFullScale_IsTiedToTheForecastSpeech()
    {
        PlanComparison comparison = PlanComparer.Compare(Channel(s_speech, Prediction.Noise.Shifted(4)), Prediction, null)!;
        Assert.True(comparison.TiedToSpeech);
        Assert.Equal(FullScale, comparison.FullScaleSplDb, 1e-9);
        Assert.Equal(0, comparison.SpeechDba.DifferenceDb!.Value, 1e-9);
        Assert.Equal(4, comparison.NoiseDba.DifferenceDb!.Value, 1e-9);
        Assert.Equal(-4, comparison.SpeechToNoiseDb.DifferenceDb!.Value, 1e-9);
        Assert.StartsWith("Against the speech the car is 4 dB louder than forecast; ", comparison.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_LowBandsLouder_NamesThem()
    {
        var shift = new BandLevels(8, 8, 0, 0, 0, 0, 0);
        Assert.Contains(", mostly at 125 to 250 Hz; ", PlanComparer.Compare(Channel(s_speech, s_cabin + shift), Prediction, FullScale)!.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_AllBandsLouder_NamesNone()
    {
        var shift = new BandLevels(10, 10, 10, 10, 10, 10, 6);
        Assert.DoesNotContain("mostly", PlanComparer.Compare(Channel(s_speech, s_cabin + shift), Prediction, FullScale)!.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_SameAsForecast_SaysSo() =>
        Assert.StartsWith("The car is as loud as forecast; ", PlanComparer.Compare(Channel(s_speech, Prediction.Noise), Prediction, FullScale)!.Words, StringComparison.Ordinal);

    // Octaves at the self-noise, or cut off by the rate, are told by the mean of the others.
    [Fact]
    public void Compare_OctavesThatCannotBeTold_TakeTheMeanOfTheOthers()
    {
        var noise = new BandLevels(60, 54, 48, 44, s_self[4] + 0.9, s_self[5], 26);
        PlanComparison comparison = PlanComparer.Compare(Channel(s_speech, noise, cut: 6), Prediction, FullScale)!;
        BandLevels correction = comparison.NoiseCorrection!.Value;
        double mean = (correction[0] + correction[1] + correction[2] + correction[3]) / 4;
        Assert.InRange(mean, 1.9, 2.1);
        Assert.All([4, 5, 6], b => Assert.Equal(mean, correction[b], 1e-9));
        Assert.Null(comparison.Bands[6].Noise.MeasuredDb);
    }

    [Fact]
    public void Compare_FewerThanThreeOctavesTold_GivesNoCorrection()
    {
        var noise = new BandLevels(60, 54, s_self[2], s_self[3], s_self[4], s_self[5], s_self[6]);
        Assert.Null(PlanComparer.Compare(Channel(s_speech, noise), Prediction, FullScale)!.NoiseCorrection);
    }

    [Theory]
    [InlineData(70, 40)]
    [InlineData(-70, -40)]
    public void Compare_ForecastFarOff_KeepsTheCorrectionInItsRange(double offDb, double correctionDb)
    {
        var prediction = new ClipPrediction("driver", "super", s_speech, s_cabin.Shifted(-offDb), BandLevels.Flat(-120), 5);
        Assert.Equal(BandLevels.Flat(correctionDb), PlanComparer.Compare(Channel(s_speech, s_cabin), prediction, FullScale)!.NoiseCorrection);
    }

    [Fact]
    public void Compare_NoSpeech_NeedsToKnowFullScale()
    {
        ChannelMeasures c = Made.Channel().With(s => s with { SpeechNoise = Made.NoSpeech() });
        Assert.Null(PlanComparer.Compare(c, Prediction, null));
        PlanComparison comparison = PlanComparer.Compare(c, Prediction, FullScale)!;
        Assert.Null(comparison.SpeechToNoiseDb.MeasuredDb);
        Assert.Equal(FullScale - 60, comparison.NoiseDba.MeasuredDb!.Value, 1e-9);
        Assert.Null(PlanComparer.Compare(Made.Channel().With(s => s with { SpeechNoise = null }), Prediction, FullScale));
    }

    // The whole way: noise made with the octave levels of a forecast, measured as sound.
    [Fact]
    public void Compare_SoundOfAShiftedForecast_GivesTheShiftBackWithinOneDecibel()
    {
        var shift = new BandLevels(3, 6, 4, -2, 5, 1, 2);
        BandLevels put = s_cabin + shift;
        double Density(double hz)
        {
            int b = Math.Clamp((int)Math.Round(10 * Math.Log10(hz / 125.89) / 3), 0, 6);
            double exact = 125.89 * Math.Pow(10, 0.3 * b);
            return hz < 20 ? 0 : FullScaleMeanSquare(put[b] - FullScale) / (exact * (Math.Pow(10, 0.15) - Math.Pow(10, -0.15)));
        }

        var meter = new ClipMeter(Made.Rate, 1);
        meter.Add(Spectrum.Sound.Noise(Density, 20, 3));
        PlanComparison comparison = PlanComparer.Compare(meter.Finish().Channels[0], Prediction with { SelfNoise = BandLevels.Flat(-40) }, FullScale)!;
        Assert.All(Enumerable.Range(0, OctaveBands.Count), b => Assert.Equal(shift[b], comparison.NoiseCorrection!.Value[b], 1.0));
    }

    private static double FullScaleMeanSquare(double db) => Clips.Spectrum.FullScale.MeanSquare(db);

    private static ChannelMeasures Channel(BandLevels speechSpl, BandLevels noiseSpl, int cut = 7)
    {
        IReadOnlyList<BandLevel> Levels(BandLevels spl) => [.. Enumerable.Range(0, OctaveBands.Count).Select(b => new BandLevel(OctaveBands.CentresHz[b], spl[b] - FullScale, b < cut))];
        double speech = speechSpl.AWeightedDb() - FullScale, noise = noiseSpl.AWeightedDb() - FullScale;
        return Made.Channel().With(s => s with { SpeechNoise = new(noise, 0.5, Levels(noiseSpl), speech, Levels(speechSpl), speech - noise, 0.5, 10, 0.4) });
    }
}
