using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public partial class SpeechTransmissionTests
{
    private static readonly double[] s_bandsHz = [125, 250, 500, 1000, 2000, 4000, 8000];

    // tests/vectors/intelligibility/sti_cases.source.md
    [Fact]
    public void Index_EveryVerificationValue_Agrees()
    {
        int compared = 0;
        foreach (Dictionary<string, string> row in Vectors.Read("sti_cases"))
        {
            double? value = Compute(row);
            if (value is { } v)
            {
                compared++;
                double tolerance = double.Parse(row["tolerance"].Split(' ')[0], CultureInfo.InvariantCulture);
                Assert.True(Math.Abs(Vectors.Number(row["expected"]) - v) <= tolerance + 1e-9, $"{row["case"]} {row["input"]}: {v}");
            }
        }

        Assert.True(compared >= 55, $"only {compared} rows were compared");
    }

    // tests/vectors/intelligibility/sti_annex_m.source.md
    [Fact]
    public void WorkedExampleOfAnnexM_IsReproduced()
    {
        Dictionary<string, double[]> rows = Vectors.Read("sti_annex_m").ToDictionary(r => r["row"], r => s_bandsHz.Select(f => Vectors.Number(r[f.ToString(CultureInfo.InvariantCulture)])).ToArray());
        double[] measured = SpeechTransmission.AuditoryFactors(new BandLevels(rows["measured_level_db"]), new BandLevels(rows["measured_noise_db"]));
        double[] operational = SpeechTransmission.AuditoryFactors(new BandLevels(rows["operational_level_db"]), new BandLevels(rows["operational_noise_db"]));
        double[][] modulation = [.. rows.Where(r => r.Key.StartsWith("measured_m_at_", StringComparison.Ordinal)).Select(r => r.Value)];
        Assert.Equal(14, modulation.Length);
        double[][] byBand = [.. Enumerable.Range(0, 7).Select(k => modulation.Select(m => Math.Min(1, m[k] / measured[k]) * operational[k]).ToArray())];
        for (int k = 0; k < 7; k++)
        {
            Assert.Equal(rows["expected_combined_adjustment_operational"][k], operational[k], 0.0006);
            Assert.Equal(rows["expected_MTI"][k], byBand[k].Average(SpeechTransmission.TransmissionIndex), 0.0051);
        }

        Assert.Equal(0.76, SpeechTransmission.FromModulation(byBand), 0.005);
    }

    [Fact]
    public void Statistical_MoreNoiseOrLongerDecay_IsNeverBetter()
    {
        for (double snr = -20; snr < 30; snr += 2)
        {
            Assert.True(SpeechTransmission.Statistical(BandLevels.Flat(snr), 0.1) <= SpeechTransmission.Statistical(BandLevels.Flat(snr + 2), 0.1));
            Assert.True(SpeechTransmission.Statistical(BandLevels.Flat(snr), 0.3) <= SpeechTransmission.Statistical(BandLevels.Flat(snr), 0.1));
        }
    }

    private static double? Compute(Dictionary<string, string> row)
    {
        string input = row["input"];
        switch (row["case"])
        {
            case "uniform m" or "staircase":
                double m = First(input);
                return SpeechTransmission.FromModulation([.. Enumerable.Range(0, 7).Select(_ => Enumerable.Repeat(m, 14).ToArray())]);
            case "masking slope":
                return SpeechTransmission.MaskingDb(First(input));
            case "clip":
                return SpeechTransmission.FromMti([1, 0, 1, 1, 1, 1, 1]);
            case "room":
                double time = First(input);
                string snr = input[(input.IndexOf("SNR=", StringComparison.Ordinal) + 4)..].Split(' ')[0];
                return SpeechTransmission.Statistical(BandLevels.Flat(Vectors.Number(snr)), time);
            case string pair when pair.StartsWith("weight pair", StringComparison.Ordinal):
                double low = double.Parse(pair.Split(' ')[2].Split('+')[0], CultureInfo.InvariantCulture);
                int at = Array.IndexOf(s_bandsHz, low);
                var mti = new double[7];
                mti[at] = mti[at + 1] = 1;
                return SpeechTransmission.FromMti(mti);
            default:
                return null; // Annex M has a test of its own.
        }
    }

    private static double First(string text) => double.Parse(NumberPattern().Match(text).Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\d+(\.\d+)?")]
    private static partial Regex NumberPattern();
}
