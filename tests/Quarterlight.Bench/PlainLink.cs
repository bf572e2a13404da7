using Quarterlight.Radio.Link;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Bench;

/// <summary>The ranges of a link the plain way: the fading integrated for every question, the distance found by halving. For comparison
/// only.</summary>
internal static class PlainLink
{
    private const int SlowSteps = 60, FastSteps = 200;

    /// <summary>Ranges in metres at 50, 90, 95 and 99 % for an open road with the two-ray model, nothing between and no stations.</summary>
    public static double[] Ranges(LinkTask task)
    {
        LinkGear gear = task.Gear;
        var path = new PathInputs(gear.FrequencyMHz, gear.TransmitAntenna.HeightM, gear.ReceiveAntenna.HeightM, gear.TransmitAntenna.Polarisation, GroundProperties.Of(task.Ground));
        double gain = AntennaValues.GainDbi(gear.ReceiveAntenna);
        double noise = ReceiverNoise.LevelDbm(gear.FrequencyMHz, gear.Emission.FilterBandwidthKHz, NoiseEnvironment.Rural, gear.NoiseFigureDb, gain);
        double needed = noise + FmReception.NeededCnDb((AnalogueFm)gear.Emission), eirp = FreeSpace.DbmFromWatts(gear.Power / 1e3);
        double medianDb = Quantile(0.5);
        return [.. new[] { 0.5, 0.9, 0.95, 0.99 }.Select(Range)];

        double Range(double availability)
        {
            double margin = medianDb - Quantile(1 - availability), low = 5, high = 3000;
            for (int i = 0; i < 30; i++)
            {
                double middle = Math.Sqrt(low * high);
                (low, high) = eirp - TwoRay.LocalMeanLossDb(path, middle) + gain - needed >= margin ? (middle, high) : (low, middle);
            }

            return low;
        }
    }

    // Level in dB over the mean power that a share lies below: normal deviate of 4 dB plus Rice fading of K = 3 dB.
    private static double Quantile(double share)
    {
        double low = -40, high = 20;
        for (int i = 0; i < 30; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Below(middle) < share ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static double Below(double db)
    {
        const double Sigma = 4, K = 1.9952623149688795;
        double sum = 0, weights = 0;
        for (int i = 0; i <= SlowSteps; i++)
        {
            double z = -6 + (12.0 * i / SlowSteps), weight = Math.Exp(-z * z / 2);
            sum += weight * RiceBelow(Math.Pow(10, (db - (Sigma * z)) / 10), K);
            weights += weight;
        }

        return sum / weights;
    }

    // Integral of the Rice power density; the Bessel function by its own integral over an angle would be slower still, so by its series.
    private static double RiceBelow(double ratio, double k)
    {
        double step = Math.Min(ratio, 12) / FastSteps, sum = 0;
        for (int i = 0; i < FastSteps; i++)
        {
            double u = (i + 0.5) * step;
            sum += (k + 1) * Math.Exp(-k - ((k + 1) * u)) * BesselI0(2 * Math.Sqrt(k * (k + 1) * u)) * step;
        }

        return Math.Min(sum, 1);
    }

    private static double BesselI0(double x)
    {
        double term = 1, sum = 1;
        for (int n = 1; term > 1e-12 * sum; n++)
        {
            term *= x * x / (4.0 * n * n);
            sum += term;
        }

        return sum;
    }
}
