using Quarterlight.Clips.Spectrum;
using Quarterlight.Quantities;

namespace Quarterlight.Clips.Tests.Spectrum;

public class ClipBandLevelsTests
{
    public static TheoryData<int> Bands => [.. Enumerable.Range(0, ThirdOctaves.Count)];

    // Closed form: a sine of amplitude 0.1 is -20 dBFS (AES17), all of it in the band it is the centre of.
    [Theory]
    [MemberData(nameof(Bands))]
    public void ThirdOctaves_SineAtTheCentre_ReadsThereAndNowhereElse(int band)
    {
        IReadOnlyList<BandLevel> levels = Sound.Measure(Sound.Sine(ThirdOctaves.CentreHz(band), 0.1, 4)).Bands!.ThirdOctaveLevels();
        Assert.Equal(-20, levels[band].LevelDb, 0.15);
        for (int b = 0; b < levels.Count; b++)
        {
            Assert.True(b == band || levels[b].LevelDb < (Math.Abs(b - band) == 1 ? -40 : -55), $"{levels[b]} for a sine in band {band}");
        }
    }

    // Closed form: white noise grows with the band's width, 10 lg(width x density), + 3.01 dB for AES17.
    [Fact]
    public void ThirdOctaves_WhiteNoise_GrowWithTheirWidth()
    {
        IReadOnlyList<BandLevel> levels = Sound.Measure(Sound.Noise(_ => 1e-8, 60, 1, fixedSize: true)).Bands!.ThirdOctaveLevels();
        for (int b = 0; b < levels.Count; b++)
        {
            double width = ThirdOctaves.LowerHz(b + 1) - ThirdOctaves.LowerHz(b);
            Assert.Equal((10 * Math.Log10(width * 1e-8)) + 3.0103, levels[b].LevelDb, b < ThirdOctaves.Count - 1 ? 0.6 : 5);
        }
    }

    // Pink noise has the same power in every third-octave: c ln(10^0.1) for a density of c / f.
    [Fact]
    public void ThirdOctaves_PinkNoise_AreFlat()
    {
        IReadOnlyList<BandLevel> levels = Sound.Measure(Sound.Noise(f => 1e-4 / f, 60, 2, fixedSize: true)).Bands!.ThirdOctaveLevels();
        double expected = (10 * Math.Log10(1e-4 * Math.Log(Math.Pow(10, 0.1)))) + 3.0103;
        Assert.All(levels.Where(l => l.NominalHz is > 20 and < 20000), l => Assert.Equal(expected, l.LevelDb, 0.3));
    }

    [Fact]
    public void OctaveLevels_AnyNoise_AreTheSumOfTheirThirds()
    {
        ClipBandLevels bands = Sound.Measure(Sound.Noise(Sound.CarDensity, 5, 3)).Bands!;
        IReadOnlyList<BandLevel> thirds = bands.ThirdOctaveLevels();
        IReadOnlyList<BandLevel> octaves = bands.OctaveLevels();
        Assert.Equal([31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000], octaves.Select(o => o.NominalHz));
        for (int i = 0; i < octaves.Count; i++)
        {
            double sum = Enumerable.Range((3 * i) + 1, 3).Sum(b => Math.Pow(10, thirds[b].LevelDb / 10));
            Assert.Equal(10 * Math.Log10(sum), octaves[i].LevelDb, 1e-9);
        }
    }

    // A tone's A-weighted level is its level plus the table's weighting. tests/vectors/noise/a_weighting.source.md
    [Fact]
    public void AWeightedDb_SineAtExactCentres_FollowsTheStandard()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("a_weighting").Where(r => Vectors.Number(r["nominal_hz"]) >= 31.5))
        {
            double level = Sound.Measure(Sound.Sine(Vectors.Number(row["exact_hz"]), 0.1, 4)).Bands!.AWeightedDb;
            Assert.Equal(Vectors.Number(row["A_table_db"]) - 20, level, 0.1);
        }
    }

    // No tone is counted twice or lost where the two spectra meet.
    [Fact]
    public void AWeightedDb_SineAcrossTheChange_FollowsTheCurve()
    {
        for (double hz = 300; hz < 760; hz += 23)
        {
            double expected = (10 * Math.Log10(AWeighting.PowerFactor(hz))) - 20;
            Assert.Equal(expected, Sound.Measure(Sound.Sine(hz, 0.1, 4)).Bands!.AWeightedDb, 0.05);
        }
    }

    [Fact]
    public void Finish_Calibration_ShiftsEveryLevel()
    {
        float[] x = Sound.Noise(Sound.CarDensity, 4, 3);
        ClipSpectrumReport plain = Sound.Measure(x);
        ClipSpectrumReport shifted = Sound.Measure(x, calibrationDb: 120);
        Assert.Equal(plain.Bands!.AWeightedDb + 120, shifted.Bands!.AWeightedDb, 1e-9);
        Assert.Equal(plain.Bands.OctaveLevels().Select(l => l.LevelDb + 120), shifted.Bands.OctaveLevels().Select(l => l.LevelDb));
        Assert.Equal(plain.SpeechNoise!.NoiseAWeightedDb + 120, shifted.SpeechNoise!.NoiseAWeightedDb, 1e-9);
    }

    [Theory]
    [InlineData(8000, 3150, 4000)]
    [InlineData(44100, 20000, 16000)]
    public void Levels_LowRate_EndBelowHalfOfIt(double rateHz, double highestThirdHz, double highestOctaveHz)
    {
        ClipBandLevels bands = Sound.Measure(Sound.Noise(_ => 1e-8, 3, 4, rateHz), rateHz: rateHz).Bands!;
        Assert.Equal(rateHz == 8000 ? 4000 : highestThirdHz, bands.ThirdOctaveLevels()[^1].NominalHz);
        Assert.Equal(highestOctaveHz, bands.OctaveLevels()[^1].NominalHz);
        Assert.False(bands.OctaveLevels()[^1].IsWhole);
    }

    [Fact]
    public void Levels_ClipShorterThanASlowFrame_StartAtWholeFastBands()
    {
        ClipBandLevels bands = Sound.Measure(Sound.Sine(1000, 0.1, 0.5)).Bands!;
        Assert.Equal(800, bands.ThirdOctaveLevels()[0].NominalHz);
        Assert.Equal(1000, bands.OctaveLevels()[0].NominalHz);
        Assert.Equal(-20, bands.AWeightedDb, 0.1);
    }
}
