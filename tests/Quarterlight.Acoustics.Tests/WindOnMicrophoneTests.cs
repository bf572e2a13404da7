namespace Quarterlight.Acoustics.Tests;

public class WindOnMicrophoneTests
{
    // tests/vectors/noise/wind_noise.source.md
    [Fact]
    public void ThirdOctaveLevelDb_EveryRow_AgreesOrIsRefused()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("wind_noise"))
        {
            double? level = WindOnMicrophone.ThirdOctaveLevelDb(Vectors.Number(row["wind_speed_m_s"]), Vectors.Number(row["screen_diameter_m"]), Vectors.Number(row["third_octave_hz"]));
            if (row["in_validity"] == "yes")
            {
                Assert.Equal(Vectors.Number(row["level_db"]), level!.Value, 0.01);
            }
            else
            {
                Assert.Null(level);
            }
        }
    }

    // Worked from the fit by hand: 10 m/s, 90 mm, 100 Hz: 56.05 dB; twice the wind adds 63 lg 2 = 18.96 dB.
    [Fact]
    public void ThirdOctaveLevelDb_WorkedExample_Agrees()
    {
        double level = WindOnMicrophone.ThirdOctaveLevelDb(10, 0.09, 100)!.Value;
        Assert.Equal(56.05, level, 0.01);
        Assert.Equal(18.96, WindOnMicrophone.ThirdOctaveLevelDb(20, 0.09, 100)!.Value - level, 0.01);
    }

    [Theory]
    [InlineData(0, 0.09, 100)]
    [InlineData(-10, 0.09, 100)]
    [InlineData(-10, -0.09, 100)]
    [InlineData(10, double.NaN, 100)]
    [InlineData(10, 0.1, 10)] // Strouhal number 0.1, the excluded end.
    [InlineData(10, 0.1, 500)] // Strouhal number 5, the excluded end.
    public void ThirdOctaveLevelDb_OutsideTheFit_IsRefused(double windMps, double screenM, double hz) =>
        Assert.Null(WindOnMicrophone.ThirdOctaveLevelDb(windMps, screenM, hz));
}
