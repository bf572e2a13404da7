using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Tests.Propagation;

public class FreeSpaceTests
{
    [Fact]
    public void Field_OneKilowattErpAtOneKilometre_IsThatOfTheRecommendation()
    {
        // ITU-R P.1546 eq. (1): E = 106.9 + 10 lg P(kW) - 20 lg d(km) dB over 1 uV/m, half-wave dipole.
        double eirp = FreeSpace.DbmFromWatts(1000) + FreeSpace.DipoleGainDbi;

        Assert.Equal(106.9, FreeSpace.FieldDbuvPerM(eirp, 1000), 0.05);
    }

    [Fact]
    public void Field_OnTheSlopeOfTheSupplement_IsThatOfTheRecommendation()
    {
        // ITU-R P.1546 digital supplement log: 124.323 dB over 1 uV/m at 134.5 m for 1 kW ERP.
        double eirp = FreeSpace.DbmFromWatts(1000) + FreeSpace.DipoleGainDbi;

        Assert.Equal(124.323, FreeSpace.FieldDbuvPerM(eirp, Math.Sqrt((100 * 100) + (90 * 90))), 0.05);
    }

    [Theory]
    [InlineData(98, 300, 61.81)] // ITU-R P.525: 32.45 + 20 lg f(MHz) + 20 lg d(km).
    [InlineData(1, 1000, 32.45)]
    public void Loss_Worked_IsThatOfTheRecommendation(double frequencyMHz, double distanceM, double lossDb) =>
        Assert.Equal(lossDb, FreeSpace.LossDb(frequencyMHz, distanceM), 0.02);

    [Fact]
    public void Eirp_OfTheUsFieldLimit_IsUnderNineteenNanowatts()
    {
        // 47 CFR 15.239(b): 250 uV/m at 3 m; with e = sqrt(30 p)/d of ITU-R P.525: 18.75 nW EIRP, 11.43 nW ERP, and 200 mW EIRP 70.3 dB above.
        double eirp = FreeSpace.EirpDbmFromField(250, 3);

        Assert.Equal(18.75e-9, FreeSpace.WattsFromDbm(eirp), 0.02e-9);
        Assert.Equal(11.43e-9, FreeSpace.WattsFromDbm(eirp - FreeSpace.DipoleGainDbi), 0.02e-9);
        Assert.Equal(70.3, FreeSpace.DbmFromWatts(0.2) - eirp, 0.05);
    }

    [Fact]
    public void Range_OfTheUsFieldLimit_IsWhatTheRegulatorSays()
    {
        // The FCC's page on unlicensed FM: an effective range of about 200 ft (61 m). Threshold of a car radio 22 dB over 1 uV/m.
        Assert.Equal(61, FreeSpace.DistanceForFieldM(FreeSpace.EirpDbmFromField(250, 3), 22), 5.0);
    }

    [Theory]
    [InlineData(9.3, 0.80)] // Car receiver data: 9.3 dBf = 0.8 uV at 75 ohm.
    [InlineData(11.2, 1.0)] // Tuner data: 11.2 dBf = 1.0 uV at 75 ohm.
    public void Microvolts_OfDbf_AreThoseOfDataSheets(double dbf, double microvolts) =>
        Assert.Equal(microvolts, FreeSpace.MicrovoltsFromDbf(dbf, 75), 0.01);

    [Fact]
    public void Level_OfOneMicrovoltPerMetre_FollowsFromPowerDensityAndAperture()
    {
        // P = e²/377 · λ²/4π, by hand: -77.2 - 20 lg f(MHz) dBm.
        Assert.Equal(-77.21 - (20 * Math.Log10(98)), FreeSpace.LevelDbm(0, 98), 0.02);
        Assert.Equal(31.7, FreeSpace.FieldFromLevelDbuvPerM(FreeSpace.LevelDbm(31.7, 430, -5), 430, -5), 1e-9);
    }

    [Fact]
    public void AntennaFactor_OfAnIsotropicAntennaAt98MHz_IsTheTextbookFormula() =>
        Assert.Equal((20 * Math.Log10(98)) - 29.78, FreeSpace.AntennaFactorDb(98), 0.01); // AF = 20 lg f(MHz) - G - 29.78, 50 ohm.
}
