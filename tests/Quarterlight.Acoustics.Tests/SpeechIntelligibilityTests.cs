using CsCheck;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class SpeechIntelligibilityTests
{
    // tests/vectors/intelligibility/sii_cases.source.md
    [Fact]
    public void Index_EveryPublishedCase_AgreesToSixDigits()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("sii_cases"))
        {
            double[] e = Vectors.Numbers(row["E_db"]), n = Vectors.Numbers(row["N_db"]), t = Vectors.Numbers(row["T_db"]);
            double[] importance = row["importance"] == "standard" ? [] : Vectors.Numbers(row["importance"]);
            double index = row["method"] == "third"
                ? SpeechIntelligibility.ThirdOctaveIndex(e, n, t, importance)
                : SpeechIntelligibility.OctaveIndex(e, n, t, importance);
            Assert.True(Math.Abs(Vectors.Number(row["expected_sii"]) - index) <= 1e-6, $"{row["case"]}: {index}");
        }
    }

    [Fact]
    public void AtListeningLevel_LouderRecording_ChangesNothing() => Gen.Double[-40, 40].Sample(shift =>
    {
        BandLevels speech = VoiceSpectrum.AtOneMetre(VocalEffort.Raised), noise = new(60, 55, 50, 45, 40, 35, 30);
        Assert.Equal(SpeechIntelligibility.AtListeningLevel(speech, noise), SpeechIntelligibility.AtListeningLevel(speech.Shifted(shift), noise.Shifted(shift)), 1e-9);
    });

    [Fact]
    public void AtListeningLevel_MoreNoise_IsNeverBetter() => Gen.Double[0, 90].Select(Gen.Double[0, 20]).Sample((level, more) =>
    {
        BandLevels speech = VoiceSpectrum.AtOneMetre(VocalEffort.Normal), noise = new BandLevels(0, -3, -6, -9, -12, -15, -18).Shifted(level);
        Assert.True(SpeechIntelligibility.AtListeningLevel(speech, noise.Shifted(more)) <= SpeechIntelligibility.AtListeningLevel(speech, noise) + 1e-12);
    });

    // ANSI S3.5-1997 is an index: whatever the levels, it stays between nothing and everything.
    [Fact]
    public void AtListeningLevel_AnySpectra_StaysBetweenZeroAndOne() => Gen.Double[-60, 130].Array[14].Sample(db =>
    {
        double index = SpeechIntelligibility.AtListeningLevel(new BandLevels(db.AsSpan(0, 7)), new BandLevels(db.AsSpan(7, 7)));
        Assert.InRange(index, 0, 1);
    });

    [Fact]
    public void AtListeningLevel_NobodySpeaks_IsZero() =>
        Assert.Equal(0, SpeechIntelligibility.AtListeningLevel(BandLevels.Flat(double.NegativeInfinity), BandLevels.Flat(30)));

    [Fact]
    public void AtListeningLevel_NoNoise_IsNearlyOne() =>
        Assert.InRange(SpeechIntelligibility.AtListeningLevel(VoiceSpectrum.AtOneMetre(VocalEffort.Normal), BandLevels.Flat(double.NegativeInfinity)), 0.95, 1);

    // ANSI S3.5-1997 Table 4: the weights sum to 1; 125 Hz is not in it.
    [Fact]
    public void Importance_Bands_SumToOne()
    {
        Assert.Equal(0, SpeechIntelligibility.OctaveImportance[0]);
        Assert.Equal(1, SpeechIntelligibility.OctaveImportance.ToArray().Sum(), 1e-9);
    }

    [Fact]
    public void Index_WrongNumberOfBands_Throws()
    {
        Assert.Throws<ArgumentException>(() => SpeechIntelligibility.OctaveIndex([1, 2], [1, 2], [1, 2]));
        Assert.Throws<ArgumentException>(() => SpeechIntelligibility.OctaveIndex(new double[6], new double[6], new double[6], [1, 2]));
        Assert.Throws<ArgumentException>(() => SpeechIntelligibility.ThirdOctaveIndex(new double[6], new double[6], new double[6]));
    }
}
