using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

public class IntermodLevelsTests
{
    [Theory]
    [InlineData(-10, -25)]
    [InlineData(0, 0)]
    public void Levels_AgainstATransformOfACubedSum_AreTheSame(double powerADbm, double powerBDbm)
    {
        // y = x + k x^3 over one period; tones at 40, 43 and 47 periods. The intercept point is where the straight lines of the tone (a) and of
        // 2A-B (3/4 k a^3) meet: a^2 = 4/(3k). 1 mW in 50 ohm has an amplitude of sqrt(0.1) V.
        const double k = 0.02, powerCDbm = -7;
        double oip3Dbm = 10 * Math.Log10(4 / (3 * k) / 0.1);
        double Amplitude(double dbm) => Math.Sqrt(0.1 * Math.Pow(10, dbm / 10));
        double[] a = [Amplitude(powerADbm), Amplitude(powerBDbm), Amplitude(powerCDbm)];
        int[] tones = [40, 43, 47];
        double LevelAt(int bin)
        {
            const int n = 1024;
            double re = 0;
            for (int i = 0; i < n; i++)
            {
                double x = 0;
                for (int t = 0; t < 3; t++)
                {
                    x += a[t] * Math.Cos(2 * Math.PI * tones[t] * i / n);
                }

                re += (x + (k * x * x * x)) * Math.Cos(2 * Math.PI * bin * i / n) * 2 / n;
            }

            return 10 * Math.Log10(re * re / 0.1);
        }

        Assert.Equal(LevelAt((2 * 40) - 43), IntermodLevels.TwoSignalDbm(powerADbm, powerBDbm, oip3Dbm), 6);
        Assert.Equal(LevelAt((2 * 43) - 40), IntermodLevels.TwoSignalDbm(powerBDbm, powerADbm, oip3Dbm), 6);
        Assert.Equal(LevelAt(40 + 43 - 47), IntermodLevels.ThreeSignalDbm(powerADbm, powerBDbm, powerCDbm, oip3Dbm), 6);
        Assert.Equal(LevelAt(43 + 47 - 40), IntermodLevels.ThreeSignalDbm(powerBDbm, powerCDbm, powerADbm, oip3Dbm), 6);
    }

    [Fact]
    public void ThreeSignal_EqualPowers_StandsSixDbAboveTwoSignal()
    {
        // Hausman, "Carrier Triple Beats", Microwave Journal: 6 dB.
        Assert.Equal(6, IntermodLevels.ThreeSignalDbm(10, 10, 10, 30) - IntermodLevels.TwoSignalDbm(10, 10, 30), 1);
    }

    [Fact]
    public void CouplingLoss_98MHz300M_IsTheWorkedValue()
    {
        // Worked with ITU-R P.525: 61.81 dB; its printed form with the rounded 32.4 is 0.05 dB lower.
        Assert.Equal(61.81, IntermodLevels.CouplingLossDb(98, 300), 2);
        Assert.Equal(32.4 + (20 * Math.Log10(600)) + (20 * Math.Log10(0.002)), IntermodLevels.CouplingLossDb(600, 2), 0.06);
    }

    [Fact]
    public void CouplingLoss_OfLongWavesAndExtraLoss_NeverGains()
    {
        Assert.Equal(0, IntermodLevels.CouplingLossDb(1, 0.1));
        Assert.Equal(12, IntermodLevels.CouplingLossDb(1, 0.1, 12));
    }

    [Theory]
    [InlineData(0.99, 1)]
    [InlineData(6001, 1)]
    [InlineData(600, 0.09)]
    [InlineData(600, double.NaN)]
    public void CouplingLoss_OutsideItsRange_Throws(double mhz, double metres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => IntermodLevels.CouplingLossDb(mhz, metres));

    [Fact]
    public void Of_TwoSignals_IsStrongestWhereTheDoubledCarrierIsAtHome()
    {
        // By hand: in A 2 x 17 + (14 - 30) - 2 x 35 = -52; in B 2 x (17 - 30) + 14 - 2 x 36 = -84.
        OutputStage[] stages = [new(17, 35), new(14, 36)];
        IReadOnlyList<ProductLevel> levels = ProductLevels.Of(new IntermodProduct(ProductKind.TwoAMinusB, 0, 1, -1, 1), stages, (_, _) => 30);
        Assert.Equal([new(0, -52), new(1, -84)], levels);
    }

    [Fact]
    public void Of_ThreeSignals_GivesEachStageItsOwn()
    {
        // By hand, in A: 17 + (17 - 30) + (17 - 40) - 70 + 6.02 = -82.98; in B: (17 - 30) + 17 + (17 - 30) - 70 + 6.02 = -72.98.
        OutputStage[] stages = [new(17, 35), new(17, 35), new(17, 35)];
        double Loss(int from, int to) => from + to == 2 ? 40 : 30;
        IReadOnlyList<ProductLevel> levels = ProductLevels.Of(new IntermodProduct(ProductKind.APlusBMinusC, 0, 1, 2, 1), stages, Loss);
        Assert.Equal([1, 0, 2], levels.Select(l => l.MadeIn));
        Assert.Equal(-72.98, levels[0].LevelDbm, 2);
        Assert.Equal(-82.98, levels[1].LevelDbm, 2);
    }

    [Fact]
    public void Of_FifthOrder_GivesNoLevel() =>
        Assert.Empty(ProductLevels.Of(new IntermodProduct(ProductKind.ThreeAMinusTwoB, 0, 1, -1, 1), [new(10, 30), new(10, 30)], (_, _) => 20));
}
