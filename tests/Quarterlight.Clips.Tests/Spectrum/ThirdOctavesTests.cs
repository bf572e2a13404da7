using Quarterlight.Clips.Spectrum;
using Quarterlight.Quantities;

namespace Quarterlight.Clips.Tests.Spectrum;

public class ThirdOctavesTests
{
    // tests/vectors/clips/iso266_bands.source.md
    [Fact]
    public void Bands_EveryRowOfTheStandards_Agrees()
    {
        int seen = 0;
        foreach (Dictionary<string, string> row in Vectors.Read("iso266_bands"))
        {
            int band = (int)Vectors.Number(row["n"]) + 17;
            if (band is < 0 or >= ThirdOctaves.Count)
            {
                continue;
            }

            seen++;
            Assert.Equal(Vectors.Number(row["nominal_third_octave_hz"]), ThirdOctaves.NominalHz[band]);
            Near(row["exact_hz"], ThirdOctaves.CentreHz(band));
            Near(row["lower_edge_hz"], ThirdOctaves.LowerHz(band));
            Near(row["upper_edge_hz"], ThirdOctaves.LowerHz(band + 1));
            Assert.Equal(row["octave_centre"] == "yes", band % 3 == 2);
        }

        Assert.Equal(ThirdOctaves.Count, seen);
    }

    // tests/vectors/noise/a_weighting.source.md
    [Fact]
    public void AWeighting_EveryRowOfTheStandard_Agrees()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("a_weighting"))
        {
            Assert.Equal(Vectors.Number(row["A_table_db"]), 10 * Math.Log10(AWeighting.PowerFactor(Vectors.Number(row["exact_hz"]))), 0.0501);
        }
    }

    private static void Near(string expected, double actual) => Assert.Equal(Vectors.Number(expected), actual, 0.0002 + (1e-6 * actual));
}
