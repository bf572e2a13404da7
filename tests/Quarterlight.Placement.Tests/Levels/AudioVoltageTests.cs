using Quarterlight.Placement.Levels;
using Quarterlight.Tests.Shared;

namespace Quarterlight.Placement.Tests.Levels;

public class AudioVoltageTests
{
    [Fact]
    public void OutputDbu_AgainstWorkedExamples_Agrees()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("voltage_examples"))
        {
            double tolerance = Vectors.Number(row["tolerance_db"]), dbu = AudioVoltage.OutputDbu(Vectors.Number(row["sensitivity_mv_per_pa"]), Vectors.Number(row["level_db"]));
            Assert.Equal(Vectors.Number(row["output_dbv"]), dbu - AudioVoltage.DbuOverDbv, tolerance);
            if (row["gain_db"].Length > 0)
            {
                double fullScaleDbu = AudioVoltage.Dbu(Vectors.Number(row["full_scale_vpeak"]) / Math.Sqrt(2));
                Assert.Equal(Vectors.Number(row["gain_db"]), fullScaleDbu - dbu, tolerance);
            }
        }
    }

    // 0 dBu is 1 mW in 600 ohms, 0 dBV is 1 V: 2.218 dB apart.
    [Fact]
    public void DbuOverDbv_FromItsDefinition_Is2Point218() => Assert.Equal(2.218, AudioVoltage.DbuOverDbv, 0.0005);

    // Derived: 10 mV/Pa at 1 Pa is -40 dBV. 25 mV/Pa with 16 dB(A) of self-noise: 20 lg(0.025 / 0.7746) + 16 - 93.98 = -107.80 dBu.
    [Theory]
    [InlineData(10, 93.9794, -37.782)]
    [InlineData(25, 16, -107.803)]
    public void OutputDbu_ByHand_Agrees(double sensitivity, double level, double dbu) => Assert.Equal(dbu, AudioVoltage.OutputDbu(sensitivity, level), 0.002);

    // Johnson noise sqrt(4 k T R B) of 150 ohms at 290 K in 20 kHz is 0.219 microvolts, -131.0 dBu: an input noise of -128 dBu is a noise
    // figure of 3 dB, and the range of input noise lets nothing in that is 10 dB under that noise (A-weighting takes some 2 to 3 dB).
    [Fact]
    public void InputNoise_BesideThermalNoiseOf150Ohms_RangeIsPhysical()
    {
        double thermalDbu = AudioVoltage.Dbu(Math.Sqrt(4 * 1.380649e-23 * 290 * 150 * 20000));
        Assert.Equal(-131.0, thermalDbu, 0.05);
        Assert.InRange(LevelRules.InputNoise.Min, thermalDbu - 10, thermalDbu);
    }

    [Fact]
    public void OutputPeakDbu_OfASinesPeak_IsTheSine()
    {
        double rms = 100;
        Assert.Equal(AudioVoltage.OutputDbu(20, rms), AudioVoltage.OutputPeakDbu(20, rms + (20 * Math.Log10(Math.Sqrt(2)))), 1e-9);
    }

    [Fact]
    public void NoiseSum_OfEqualNoises_IsThreeDecibelsMore()
    {
        Assert.Equal(-80 + (10 * Math.Log10(2)), AudioVoltage.NoiseSum(-80, -80), 1e-9);
        Assert.Equal(-60, AudioVoltage.NoiseSum(-60, -300), 1e-9);
        Assert.Equal(-37.782, AudioVoltage.Dbu(AudioVoltage.Volts(-37.782)), 1e-9);
    }
}
