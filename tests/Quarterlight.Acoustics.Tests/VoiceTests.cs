using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class VoiceTests
{
    // tests/vectors/voice/voice_directivity.source.md
    [Fact]
    public void LevelDb_EveryRowOfThePublishedTable_Agrees()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("voice_directivity"))
        {
            int band = OctaveBands.CentresHz.IndexOf(Vectors.Number(row["centre_hz"]));
            double level = VoiceDirectivity.LevelDb(band, Angles.DegToRad(Vectors.Number(row["azimuth_deg"])));
            Assert.Equal(Vectors.Number(row["level_re_front_db"]), level, 0.05);
        }
    }

    // Same table: sound meets behind the head.
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void LevelDb_StraightBehind_IsNotForcedBelow150Degrees(int band) =>
        Assert.True(VoiceDirectivity.LevelDb(band, Math.PI) > VoiceDirectivity.LevelDb(band, Angles.DegToRad(150)));

    // tests/vectors/voice/speech_levels.source.md: ANSI S3.5-1997 Table 4.
    [Theory]
    [InlineData("normal", VocalEffort.Normal)]
    [InlineData("raised", VocalEffort.Raised)]
    [InlineData("loud", VocalEffort.Loud)]
    [InlineData("shout", VocalEffort.Shout)]
    public void AtOneMetre_OctavesOfTheStandard_Agree(string name, VocalEffort effort)
    {
        BandLevels spectrum = VoiceSpectrum.AtOneMetre(effort);
        List<Dictionary<string, string>> rows = [.. Vectors.Read("speech_levels").Where(r => r["effort"] == name && r["band_type"] == "octave")];
        Assert.Equal(6, rows.Count);
        foreach (Dictionary<string, string> row in rows)
        {
            Assert.Equal(Vectors.Number(row["band_level_db"]), spectrum[OctaveBands.CentresHz.IndexOf(Vectors.Number(row["centre_hz"]))], 0.005);
        }
    }

    // ANSI S3.5-1997 Table 3: overall levels 62.35, 68.34, 74.85, 82.30; third-octave sums come within 0.07 dB of the print.
    [Theory]
    [InlineData("normal", 62.35)]
    [InlineData("raised", 68.34)]
    [InlineData("loud", 74.85)]
    [InlineData("shout", 82.30)]
    public void ThirdOctaveRows_SummedByEnergy_GiveThePrintedOverallLevel(string name, double overallDb)
    {
        SoundPressureLevel[] bands =
        [
            .. Vectors.Read("speech_levels").Where(r => r["effort"] == name && r["band_type"] == "third").Select(r => new SoundPressureLevel(Vectors.Number(r["band_level_db"]))),
        ];
        Assert.Equal(18, bands.Length);
        Assert.Equal(overallDb, SoundPressureLevel.EnergySum(bands).Db, 0.07);
    }

    [Fact]
    public void AtOneMetre_MoreEffort_IsNeverQuieterInAnyBand()
    {
        VocalEffort[] efforts = Enum.GetValues<VocalEffort>();
        for (int i = 1; i < efforts.Length; i++)
        {
            BandLevels more = VoiceSpectrum.AtOneMetre(efforts[i]), less = VoiceSpectrum.AtOneMetre(efforts[i - 1]);
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                Assert.True(more[b] > less[b]);
            }
        }
    }

    // A voice is directional: between an omni (1) and a half-space radiator of the same front level with a deep rear.
    [Fact]
    public void DirectivityFactor_GrowsFromLowToHighBands()
    {
        Assert.InRange(VoiceDirectivity.DirectivityFactor(0), 1.2, 1.8);
        Assert.InRange(VoiceDirectivity.DirectivityFactor(6), 3, 5);
    }
}
