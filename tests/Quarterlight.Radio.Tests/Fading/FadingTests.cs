using Quarterlight.Radio.Fading;
using Quarterlight.Radio.Link;

namespace Quarterlight.Radio.Tests.Fading;

public class RiceFadingTests
{
    public static TheoryData<string, double, double> Rows
    {
        get
        {
            var data = new TheoryData<string, double, double>();
            foreach (Dictionary<string, string> row in Vectors.Read("fading_margins").Where(r => r["margin_db_below_mean"].Length > 0))
            {
                data.Add(row["parameter"], Vectors.Number(row["availability"]), Vectors.Number(row["margin_db_below_mean"]));
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Margin_BelowMean_IsThatOfTheTable(string parameter, double availability, double marginDb) =>
        Assert.Equal(marginDb, RiceFading.MarginBelowMeanDb(availability, KOf(parameter)), 0.02);

    [Fact]
    public void Crossings_RayleighWorkedExample_AreThoseOfTheTextbook()
    {
        // Textbook worked values: 18.44 a second at fd 20 Hz and ρ 1; mean fades 19.9 us (fd 200 Hz, ρ 0.01) and 3.43 ms (ρ 1).
        Assert.Equal(18.44, 20 * RiceFading.CrossingsPerHertz(1, 0), 0.01);
        Assert.Equal(19.9e-6, RiceFading.BelowFraction(1e-4, 0) / (200 * RiceFading.CrossingsPerHertz(0.01, 0)), 0.1e-6);
        Assert.Equal(3.43e-3, RiceFading.BelowFraction(1, 0) / (200 * RiceFading.CrossingsPerHertz(1, 0)), 0.01e-3);
    }

    [Fact]
    public void Below_SmallSteadyPart_GoesOverIntoRayleigh()
    {
        for (double ratio = 0.001; ratio < 10; ratio *= 2)
        {
            Assert.Equal(RiceFading.BelowFraction(ratio, 0), RiceFading.BelowFraction(ratio, 1e-9), 1e-7);
        }
    }

    [Fact]
    public void Crossings_BetweenTwoMovingCars_AreThoseOfASimulation()
    {
        // Seeded simulation: 24 scatterers round each car, every pair a path with the Doppler of both ends; counts downward crossings of the rms
        // level. fd = √2 v/λ for Rayleigh's formula.
        const double EndHz = 10, Seconds = 400, Step = 1.0 / 1000;
        const int Paths = 24;
        var random = new Random(20261125);
        var first = new double[Paths];
        var second = new double[Paths];
        var phase = new double[Paths * Paths];
        for (int i = 0; i < Paths; i++)
        {
            first[i] = EndHz * Math.Cos(2 * Math.PI * (i + random.NextDouble()) / Paths);
            second[i] = EndHz * Math.Cos(2 * Math.PI * (i + random.NextDouble()) / Paths);
        }

        for (int i = 0; i < phase.Length; i++)
        {
            phase[i] = 2 * Math.PI * random.NextDouble();
        }

        int crossings = 0;
        double before = 0;
        for (int n = 0; n * Step < Seconds; n++)
        {
            double t = n * Step, re = 0, im = 0;
            for (int i = 0; i < Paths; i++)
            {
                for (int j = 0; j < Paths; j++)
                {
                    (double s, double c) = Math.SinCos((2 * Math.PI * (first[i] + second[j]) * t) + phase[(i * Paths) + j]);
                    re += c;
                    im += s;
                }
            }

            double power = ((re * re) + (im * im)) / (Paths * Paths);
            crossings += before >= 1 && power < 1 ? 1 : 0;
            before = power;
        }

        double doppler = Math.Sqrt(2) * EndHz;
        Assert.Equal(RiceFading.CrossingsPerHertz(1, 0) * doppler, crossings / Seconds, RiceFading.CrossingsPerHertz(1, 0) * doppler * 0.08);
        double speed = EndHz * 3.6 * 299_792_458 / 600e6;
        Assert.Equal(doppler, DropOuts.DopplerHz(speed, 600), 1e-9);
    }

    internal static double KOf(string parameter) => parameter.Length == 0 ? 0 : Math.Pow(10, Vectors.Number(parameter[2..^3]) / 10);
}

public class CompositeFadingTests
{
    [Fact]
    public void Margin_WithoutSlowPart_IsTheFastOne()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("fading_margins").Where(r => r["model"] != "lognormal"))
        {
            CompositeFading fading = CompositeFading.Of(0, RiceFadingTests.KOf(row["parameter"]));

            Assert.Equal(Vectors.Number(row["margin_db_below_median"]), fading.MarginDb(Vectors.Number(row["availability"])), 0.02);
        }
    }

    [Fact]
    public void Margin_WithoutFastPart_IsTheSlowOne()
    {
        // K of 30 dB: the fast part is all but gone (its own spread is 0.27 dB).
        foreach (Dictionary<string, string> row in Vectors.Read("fading_margins").Where(r => r["model"] == "lognormal"))
        {
            CompositeFading fading = CompositeFading.Of(Vectors.Number(row["parameter"][6..^3]), 1000);

            Assert.Equal(Vectors.Number(row["margin_db_below_median"]), fading.MarginDb(Vectors.Number(row["availability"])), 0.05);
        }
    }

    [Theory]
    [InlineData(4, 3.0)]
    [InlineData(5.06, 2.6)]
    [InlineData(7, -100)]
    public void Below_SlowAndFastTogether_IsWhatASimulationCounts(double sigmaDb, double riceDb)
    {
        // Seeded draw of two million places: normal deviate in dB plus a steady and a scattered complex amplitude.
        const int Count = 2_000_000;
        double k = riceDb < -50 ? 0 : Math.Pow(10, riceDb / 10);
        CompositeFading fading = CompositeFading.Of(sigmaDb, k);
        var random = new Random(7);
        double steady = Math.Sqrt(k / (k + 1)), scattered = Math.Sqrt(1 / (2 * (k + 1)));
        double[] margins = [fading.MarginDb(0.5), fading.MarginDb(0.9), fading.MarginDb(0.95), fading.MarginDb(0.99), fading.MarginDb(0.999)];
        var below = new int[margins.Length];
        for (int i = 0; i < Count; i++)
        {
            double re = steady + (scattered * Gauss(random)), im = scattered * Gauss(random);
            double db = (10 * Math.Log10((re * re) + (im * im))) + (sigmaDb * Gauss(random)) + fading.MedianBelowMeanDb;
            for (int m = 0; m < margins.Length; m++)
            {
                below[m] += db < -margins[m] ? 1 : 0;
            }
        }

        double[] expected = [0.5, 0.1, 0.05, 0.01, 0.001];
        for (int m = 0; m < margins.Length; m++)
        {
            // Four standard errors of the count, and a thousandth for the grid.
            double tolerance = (4 * Math.Sqrt(expected[m] / Count)) + (expected[m] * 1e-3);
            Assert.Equal(expected[m], (double)below[m] / Count, tolerance);
        }
    }

    [Fact]
    public void Margin_OfTheSum_IsLessThanTheSumOfMarginsAndMoreThanEither()
    {
        CompositeFading both = CompositeFading.Of(4, 2), slow = CompositeFading.Of(4, 1000), fast = CompositeFading.Of(0, 2);
        foreach (double availability in new[] { 0.9, 0.95, 0.99 })
        {
            double sum = slow.MarginDb(availability) + fast.MarginDb(availability);

            Assert.InRange(both.MarginDb(availability), Math.Max(slow.MarginDb(availability), fast.MarginDb(availability)), sum);
        }
    }

    [Fact]
    public void BelowAndMargin_AnyAvailability_UndoEachOther()
    {
        CompositeFading fading = CompositeFading.Of(5.06, 1.8);
        for (double availability = 0.5; availability < 0.9995; availability += 0.0131)
        {
            Assert.Equal(1 - availability, fading.BelowFraction(fading.MarginDb(availability)), 1e-6);
        }
    }

    [Theory]
    [InlineData(0.5, 1)]
    [InlineData(-1, 1)]
    [InlineData(20, 1)]
    [InlineData(4, -1)]
    [InlineData(4, double.NaN)]
    public void Of_OutsideItsRange_Throws(double sigmaDb, double k) => Assert.Throws<ArgumentOutOfRangeException>(() => CompositeFading.Of(sigmaDb, k));

    private static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
