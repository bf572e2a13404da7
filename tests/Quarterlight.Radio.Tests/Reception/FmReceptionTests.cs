using System.Numerics;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Tests.Reception;

public class FmReceptionTests
{
    private static readonly AnalogueFm s_mono = new() { DeEmphasisMicroseconds = 0 };

    [Theory] // Textbook closed form 10 lg(x³/(3 (x - atan x))), x = 2πWτ: 13.2 and 10.2 dB at 15 kHz.
    [InlineData(75, 13.2)]
    [InlineData(50, 10.2)]
    [InlineData(0, 0)]
    public void DeEmphasis_OfParabolicNoise_IsTheTextbookGain(double microseconds, double gainDb) =>
        Assert.Equal(gainDb, FmReception.DeEmphasisGainDb(microseconds), 0.05);

    [Theory] // Numerical integration in another language of f² against f² + (38k-f)² + (38k+f)², de-emphasised: 20.7 and 22.2 dB.
    [InlineData(50, 20.7)]
    [InlineData(75, 22.2)]
    public void StereoPenalty_Above_Threshold_IsTheIntegral(double microseconds, double penaltyDb) =>
        Assert.Equal(penaltyDb, FmReception.StereoPenaltyDb(microseconds), 0.06);

    [Theory] // SNR = C/N + 10 lg(B/W) + 10 lg(1.5 (Δf/W)²): 27 dB over C/N for 200, 15 and 75 kHz; and de-emphasis on top.
    [InlineData(25, 0, 52.0)]
    [InlineData(25, 75, 65.2)]
    [InlineData(25, 50, 62.2)]
    [InlineData(40, 0, 67.0)]
    public void Snr_WellAboveThreshold_IsTheTextbookGain(double cnDb, double microseconds, double snrDb) =>
        Assert.Equal(snrDb, FmReception.SnrDb(cnDb, s_mono with { DeEmphasisMicroseconds = microseconds }), 0.1);

    [Fact]
    public void Stereo_AtTheSameCarrier_CostsThePenaltyAndThePilot()
    {
        AnalogueFm mono = s_mono with { DeEmphasisMicroseconds = 50 };
        double cost = FmReception.SnrDb(30, mono) - FmReception.SnrDb(30, mono with { Stereo = true });

        Assert.Equal(20.7 + (20 * Math.Log10(1 / 0.9)), cost, 0.1);
    }

    [Fact]
    public void Snr_UsableSensitivityOfACarReceiver_Is30DecibelNotFarFromThreshold()
    {
        // FS-1037C: about 30 dB is typical at the improvement threshold. Data sheet of a car receiver: 9.3 dBf usable sensitivity (30 dB quieting);
        // with a noise figure of 5 to 8 dB that is
        // C/N = 9.3 - 120 + 121 - F, 2 to 5 dB in 200 kHz: our curve must cross 30 dB between there and the threshold.
        double low = FmReception.SnrDb(4, s_mono with { DeEmphasisMicroseconds = 75 }), high = FmReception.SnrDb(10, s_mono with { DeEmphasisMicroseconds = 75 });

        Assert.InRange(30, low, high);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(8)]
    [InlineData(10)]
    [InlineData(13)]
    public void Snr_ThroughTheThreshold_IsThatOfASimulatedReceiver(double cnDb)
    {
        // Seeded simulation of the whole receiver: a carrier swung by a 1 kHz sine at full deviation, white noise in an ideal 200 kHz filter, an
        // arc-tangent discriminator, an ideal 15 kHz
        // low pass. Noise is what is left when the sine itself is taken out.
        double measured = Simulate(cnDb, 75_000, 20261125);

        Assert.Equal(measured, FmReception.SnrDb(cnDb, s_mono), 1.5);
    }

    [Fact]
    public void Needed_TargetBelowWhatThresholdGives_IsTheThreshold() => Assert.Equal(FmReception.ThresholdCnDb, FmReception.NeededCnDb(s_mono with { TargetSnrDb = 30 }));

    [Theory]
    [InlineData(50, false)]
    [InlineData(60, false)]
    [InlineData(40, true)]
    [InlineData(55, true)]
    public void Needed_HigherTarget_GivesJustThat(double target, bool stereo)
    {
        AnalogueFm fm = s_mono with { DeEmphasisMicroseconds = 50, TargetSnrDb = target, Stereo = stereo };

        Assert.True(FmReception.NeededCnDb(fm) >= FmReception.ThresholdCnDb);
        Assert.True(FmReception.SnrAtReceiverDb(FmReception.NeededCnDb(fm), fm) >= target - 1e-6);
    }

    [Fact]
    public void SnrAtReceiver_StrongestSignal_IsTheCeilingOfTheDataSheet() =>
        Assert.Equal(65, FmReception.SnrAtReceiverDb(80, s_mono), 0.1); // One car receiver's data sheet: S/N 65 dB.

    [Fact]
    public void Snr_MoreCarrier_IsNeverWorse()
    {
        for (double cn = -5; cn < 60; cn += 0.5)
        {
            Assert.True(FmReception.SnrDb(cn + 0.5, s_mono) > FmReception.SnrDb(cn, s_mono));
        }
    }

    private static double Simulate(double cnDb, double deviationHz, int seed)
    {
        const int Count = 1 << 19;
        const double Rate = 524_288, ToneHz = 1000, FilterHz = 200_000, AudioHz = 15_000;
        var random = new Random(seed);
        var noise = new Complex[Count];
        int half = (int)(FilterHz / 2 * Count / Rate);
        double each = Math.Sqrt(Math.Pow(10, -cnDb / 10) / (2 * half));
        for (int bin = -half; bin < half; bin++)
        {
            double radius = Math.Sqrt(-Math.Log(1 - random.NextDouble())), angle = 2 * Math.PI * random.NextDouble();
            noise[(bin + Count) % Count] = Complex.FromPolarCoordinates(radius * each, angle);
        }

        PlainFft.Transform(noise, inverse: true);
        var audio = new Complex[Count];
        double before = 0;
        for (int n = 0; n < Count; n++)
        {
            Complex carrier = Complex.FromPolarCoordinates(1, deviationHz / ToneHz * Math.Sin(2 * Math.PI * ToneHz * n / Rate));
            double phase = (carrier + noise[n]).Phase;
            audio[n] = Math.IEEERemainder(phase - before, 2 * Math.PI) * Rate / (2 * Math.PI);
            before = phase;
        }

        audio[0] = audio[1];
        PlainFft.Transform(audio, inverse: false);
        int tone = (int)(ToneHz * Count / Rate), last = (int)(AudioHz * Count / Rate);
        double rest = 0;
        for (int bin = 1; bin <= last; bin++)
        {
            rest += bin == tone ? 0 : 2 * Math.Pow(audio[bin].Magnitude / Count, 2);
        }

        return 10 * Math.Log10(deviationHz * deviationHz / 2 / rest);
    }
}
