using Quarterlight.Clips;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Drawing;

/// <summary>What a bar of the octave panel stands for.</summary>
internal enum OctaveSeries
{
    /// <summary>Speech as forecast.</summary>
    ForecastSpeech,

    /// <summary>Speech as measured.</summary>
    MeasuredSpeech,

    /// <summary>Noise as forecast.</summary>
    ForecastNoise,

    /// <summary>Noise as measured.</summary>
    MeasuredNoise,

    /// <summary>All sound of a clip too short to part it.</summary>
    Whole,
}

/// <summary>One octave's bars.</summary>
/// <param name="CentreHz">Nominal centre in Hz.</param>
/// <param name="LevelsDb">Level of each series of the panel, in their order; null where there is none.</param>
internal sealed record OctaveBar(double CentreHz, IReadOnlyList<double?> LevelsDb);

/// <summary>Levels by octave as the panel shows them.</summary>
/// <param name="Series">What is shown, in the order drawn; empty when there is nothing.</param>
/// <param name="Bars">Octaves, rising.</param>
/// <param name="Unit">Unit of the levels.</param>
internal sealed record OctaveFigures(IReadOnlyList<OctaveSeries> Series, IReadOnlyList<OctaveBar> Bars, string Unit)
{
    private const double LowestCentreHz = 50;

    public static OctaveFigures Of(ClipView view, ChannelMeasures channel)
    {
        if (view.Comparison is { } comparison)
        {
            return new(
                [OctaveSeries.ForecastSpeech, OctaveSeries.MeasuredSpeech, OctaveSeries.ForecastNoise, OctaveSeries.MeasuredNoise],
                [.. comparison.Bands.Select(b => new OctaveBar(b.CentreHz, [Told(b.Speech.PredictedDb), Told(b.Speech.MeasuredDb), Told(b.Noise.PredictedDb), Told(b.Noise.MeasuredDb)]))],
                "dB SPL");
        }

        if (channel.Spectrum.SpeechNoise is { } report)
        {
            bool speech = report.SpeechOctaves.Count > 0;
            return new(
                speech ? [OctaveSeries.MeasuredSpeech, OctaveSeries.MeasuredNoise] : [OctaveSeries.MeasuredNoise],
                [.. report.NoiseOctaves.Where(b => b.NominalHz > LowestCentreHz).Select(b => new OctaveBar(b.NominalHz, speech ? [SpeechAt(report, b.NominalHz), Told(b.LevelDb)] : [Told(b.LevelDb)]))],
                "dBFS");
        }

        IReadOnlyList<BandLevel> whole = channel.Spectrum.Bands?.OctaveLevels() ?? [];
        return new(
            whole.Count > 0 ? [OctaveSeries.Whole] : [],
            [.. whole.Where(b => b.NominalHz > LowestCentreHz).Select(b => new OctaveBar(b.NominalHz, [Told(b.LevelDb)]))],
            "dBFS");
    }

    private static double? SpeechAt(SpeechNoiseReport report, double centreHz)
    {
        foreach (BandLevel band in report.SpeechOctaves)
        {
            if (band.NominalHz == centreHz)
            {
                return Told(band.LevelDb);
            }
        }

        return null;
    }

    private static double? Told(double? db) => db is { } level && double.IsFinite(level) && level > FullScale.SilenceDb ? level : null;
}
