using System.Collections.Concurrent;
using MathNet.Numerics.Distributions;

namespace Quarterlight.Radio.Fading;

/// <summary>
/// Location and multipath fading together: the level in dB is the median plus a normal deviate (slow, from place to place) plus Rice fading (fast).
/// Quantiles of the sum are those of the convolution, not sums of quantiles.
/// </summary>
/// <remarks>Worked out once for a pair of parameters on a grid of 0.25 dB and kept; a look-up costs some nanoseconds.</remarks>
public sealed class CompositeFading
{
    private const double StepDb = 0.25;
    private const double LowestDb = -30, HighestDb = 80;
    private const int Count = (int)((HighestDb - LowestDb) / StepDb) + 1;
    private const double DeepestFraction = 1e-13;

    private static readonly ConcurrentDictionary<(double, double), CompositeFading> s_known = new();

    // Against the margin in dB below the median, from LowestDb up: probit of the share below, and ln of crossings per hertz.
    private readonly double[] _probit = new double[Count];
    private readonly double[] _lnCrossings = new double[Count];

    private CompositeFading(double sigmaDb, double riceK)
    {
        SigmaDb = sigmaDb;
        RiceK = riceK;
        Convolution below = new(sigmaDb, db => RiceFading.BelowFraction(Math.Pow(10, db / 10), riceK));
        Convolution crossings = new(sigmaDb, db => RiceFading.CrossingsPerHertz(Math.Pow(10, db / 20), riceK));
        double low = -40, high = 40;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = below.At(middle) < 0.5 ? (middle, high) : (low, middle);
        }

        MedianBelowMeanDb = -(low + high) / 2;
        for (int i = 0; i < Count; i++)
        {
            double db = -MedianBelowMeanDb - (LowestDb + (i * StepDb));
            _probit[i] = Normal.InvCDF(0, 1, Math.Clamp(below.At(db), DeepestFraction, 1 - DeepestFraction));
            _lnCrossings[i] = Math.Log(Math.Max(crossings.At(db), 1e-300));
        }
    }

    /// <summary>Standard deviation of the slow part in dB.</summary>
    public double SigmaDb { get; }

    /// <summary>Steady over scattered power of the fast part; 0 is Rayleigh's.</summary>
    public double RiceK { get; }

    /// <summary>How far the median lies below the mean of the fast part's power, in dB.</summary>
    public double MedianBelowMeanDb { get; }

    /// <summary>The fading for a pair of parameters.</summary>
    /// <param name="sigmaDb">Standard deviation of the slow part: 0, or 1 to 15 dB.</param>
    /// <param name="riceK">Steady over scattered power, 0 to 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is outside its range.</exception>
    public static CompositeFading Of(double sigmaDb, double riceK)
    {
        if (sigmaDb is not (0 or (>= 1 and <= 15)))
        {
            throw new ArgumentOutOfRangeException(nameof(sigmaDb), sigmaDb, "0, or 1 to 15 dB: below 1 dB the grid is too coarse.");
        }

        if (riceK is not (>= 0 and <= 1000))
        {
            throw new ArgumentOutOfRangeException(nameof(riceK), riceK, "0 to 1000.");
        }

        return s_known.GetOrAdd((sigmaDb, riceK), key => new CompositeFading(key.Item1, key.Item2));
    }

    /// <summary>Share of time and places below the median less a margin.</summary>
    public double BelowFraction(double marginDb) => Normal.CDF(0, 1, Interpolate(_probit, marginDb));

    /// <summary>Margin in dB below the median that holds for an availability; 0 for one half.</summary>
    /// <param name="availabilityFraction">Above 0 and below 1.</param>
    public double MarginDb(double availabilityFraction)
    {
        double wanted = Normal.InvCDF(0, 1, 1 - availabilityFraction);
        int low = 0, high = Count - 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = _probit[middle] > wanted ? (middle, high) : (low, middle);
        }

        double fraction = (wanted - _probit[low]) / (_probit[high] - _probit[low]);
        return LowestDb + ((low + Math.Clamp(fraction, 0, 1)) * StepDb);
    }

    /// <summary>Drop-outs a second below the median less a margin, for one hertz of Doppler spread; the slow part only shifts the level.</summary>
    public double CrossingsPerHertz(double marginDb) => Math.Exp(Interpolate(_lnCrossings, marginDb));

    private static double Interpolate(double[] table, double marginDb)
    {
        double at = Math.Clamp((marginDb - LowestDb) / StepDb, 0, Count - 1);
        int i = Math.Min((int)at, Count - 2);
        return table[i] + ((at - i) * (table[i + 1] - table[i]));
    }

    /// <summary>Mean of a function of the level over the slow part, by the trapezoidal rule, which is exact to rounding for a normal weight on so
    /// fine a grid.</summary>
    private sealed class Convolution(double sigmaDb, Func<double, double> function)
    {
        private readonly Dictionary<long, double> _values = [];

        public double At(double db)
        {
            if (sigmaDb == 0)
            {
                return function(db);
            }

            // Nodes lie on the function's own grid, so that each value is worked out once.
            long centre = (long)Math.Floor(db / StepDb);
            int reach = (int)Math.Ceiling(8 * sigmaDb / StepDb);
            double sum = 0, weights = 0;
            for (long i = centre - reach; i <= centre + reach + 1; i++)
            {
                double z = ((i * StepDb) - db) / sigmaDb, weight = Math.Exp(-z * z / 2);
                sum += weight * Value(i);
                weights += weight;
            }

            return sum / weights;
        }

        private double Value(long i)
        {
            if (!_values.TryGetValue(i, out double value))
            {
                _values[i] = value = function(i * StepDb);
            }

            return value;
        }
    }
}
