using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>The forecast of noise as an answer of its own: all kinds together, each kind's share, and what is loudest where.</summary>
/// <remarks>docs/models/noise-forecast.md.</remarks>
public static class CabinNoises
{
    /// <summary>All noise at the driver's ear.</summary>
    /// <param name="drive">Valid conditions: see <see cref="DriveConditionsRules"/>.</param>
    /// <param name="car">The car.</param>
    /// <inheritdoc cref="NoiseForecast.Forecast" path="/exception"/>
    public static CabinNoise Of(DriveConditions drive, NoiseCar car) => Of(drive, NoiseForecast.Forecast(drive, car));

    /// <summary>All noise at the driver's ear, from a forecast made already.</summary>
    /// <param name="drive">The conditions of the forecast.</param>
    /// <param name="forecast">The forecast; at least one contribution.</param>
    /// <exception cref="ArgumentException">The forecast is empty.</exception>
    public static CabinNoise Of(DriveConditions drive, IReadOnlyList<NoiseContribution> forecast)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(forecast);
        if (forecast.Count == 0)
        {
            throw new ArgumentException("No place is silent: a forecast has at least one contribution.", nameof(forecast));
        }

        double[] energies = [.. forecast.Select(c => Energy(c.LevelAtDriverEar.AWeightedDb()))];
        double total = energies.Sum(), levelDba = Level(total);
        return new CabinNoise(
            drive,
            BandLevels.Create(b => Level(forecast.Sum(c => Energy(c.LevelAtDriverEar[b])))),
            levelDba,
            forecast.Zip(energies, (c, e) => c.UncertaintyDb * e).Sum() / total, // What nobody hears makes nothing uncertain.
            [.. forecast.Zip(energies, (c, e) => new NoiseShare(c, Level(e), e / total)).OrderByDescending(s => s.ShareFraction)],
            [.. Enumerable.Range(0, OctaveBands.Count).Select(b => Loudest(forecast, [.. forecast.Select(c => Energy(c.LevelAtDriverEar[b]))]))],
            ListeningDose.DailyLimitMin(levelDba));
    }

    /// <summary>Words of what is loudest: all open windows count as one kind.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="energies">Energy of each contribution, in any one unit and weighting.</param>
    /// <exception cref="ArgumentException">The forecast is empty, or the counts differ.</exception>
    public static string Loudest(IReadOnlyList<NoiseContribution> forecast, ReadOnlySpan<double> energies)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        if (forecast.Count == 0 || forecast.Count != energies.Length)
        {
            throw new ArgumentException("Each contribution has one energy, and there is at least one.", nameof(energies));
        }

        double windows = 0, most = double.NegativeInfinity;
        string words = "", windowWords = "";
        for (int i = 0; i < forecast.Count; i++)
        {
            if (forecast[i].PaneId is not null)
            {
                windowWords = windowWords.Length == 0 ? forecast[i].Words : "open windows";
                windows += energies[i];
            }
            else if (energies[i] > most)
            {
                (most, words) = (energies[i], forecast[i].Words);
            }
        }

        return windowWords.Length > 0 && windows > most ? windowWords : words;
    }

    private static double Energy(double db) => Math.Pow(10, db / 10);

    private static double Level(double energy) => 10 * Math.Log10(energy);
}
