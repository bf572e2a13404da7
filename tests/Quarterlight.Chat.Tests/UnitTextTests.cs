using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Quarterlight.Crew;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Chat.Tests;

/// <summary>Units, checked against the exact definitions of the international yard and pound agreement of 1959: 1 in = 0.0254 m, 1 mile = 1609.344 m.</summary>
public sealed class UnitTextTests
{
    [Theory]
    [InlineData(0.31, "31 cm", "12 in")]
    [InlineData(0.0254, "3 cm", "1.0 in")]
    [InlineData(0.3048, "30 cm", "12 in")]
    [InlineData(0.6096, "61 cm", "2 ft")]
    [InlineData(0.9144, "91 cm", "3 ft")]
    [InlineData(1.2, "1.20 m", "3 ft 11 in")]
    [InlineData(1.8288, "1.83 m", "6 ft")]
    public void Length_KnownLengths_InBothUnits(double metres, string metric, string imperial)
    {
        Assert.Equal(metric, UnitText.Length(metres, UnitPreference.Metric));
        Assert.Equal(imperial, UnitText.Length(metres, UnitPreference.Imperial));
    }

    [Theory]
    [InlineData(64.37376, "64 km/h", "40 mph")]
    [InlineData(0, "0 km/h", "0 mph")]
    [InlineData(130, "130 km/h", "81 mph")]
    public void Speed_KnownSpeeds_InBothUnits(double kmPerHour, string metric, string imperial)
    {
        Assert.Equal(metric, UnitText.Speed(kmPerHour, UnitPreference.Metric));
        Assert.Equal(imperial, UnitText.Speed(kmPerHour, UnitPreference.Imperial));
    }

    // 60 m is 196.85 ft; 300 m is 328.08 yd; 1609.344 m is a mile; limits are rounded down.
    [Theory]
    [InlineData(3.9, false, "4 m", "13 ft")]
    [InlineData(3.9, true, "3.5 m", "12 ft")]
    [InlineData(45.7, true, "45 m", "149 ft")]
    [InlineData(60, false, "60 m", "197 ft")]
    [InlineData(300, false, "300 m", "328 yd")]
    [InlineData(1609.344, false, "1.6 km", "1.0 miles")]
    [InlineData(2990, true, "2.9 km", "1.8 miles")]
    public void Distance_KnownDistances_InBothUnits(double metres, bool down, string metric, string imperial)
    {
        Assert.Equal(metric, UnitText.Distance(metres, UnitPreference.Metric, down));
        Assert.Equal(imperial, UnitText.Distance(metres, UnitPreference.Imperial, down));
    }

    [Fact]
    public void Distance_RoundedDown_NeverPromisesMore() => Gen.Double[1, 3000].Sample(metres =>
    {
        double back = Assert.Single(DistanceReader.Find(Tokenizer.Split(UnitText.Distance(metres, UnitPreference.Imperial, roundDown: true)))).Metres;
        Assert.InRange(back, metres - 161, metres + 1e-6);
    });

    // Fixed points of water, by definition of the scales.
    [Theory]
    [InlineData(0, "32 °F")]
    [InlineData(100, "212 °F")]
    [InlineData(-40, "-40 °F")]
    public void Temperature_KnownPoints_InFahrenheit(double celsius, string fahrenheit) => Assert.Equal(fahrenheit, UnitText.Temperature(celsius, UnitPreference.Imperial));

    [Fact]
    public void Length_ImperialReadBack_WithinHalfAnInch() => Gen.Double[0.08, 6].Sample(metres =>
    {
        Match said = Regex.Match(UnitText.Length(metres, UnitPreference.Imperial), @"^(?:(\d+) ft)? ?(?:([\d.]+) in)?$");
        Assert.True(said.Success);
        double inches = (Number(said.Groups[1]) * 12) + Number(said.Groups[2]);
        Assert.InRange(inches * 0.0254, metres - 0.0128, metres + 0.0128);
    });

    [Fact]
    public void Length_MetricReadBack_WithinHalfACentimetre() => Gen.Double[0, 6].Sample(metres =>
    {
        Match said = Regex.Match(UnitText.Length(metres, UnitPreference.Metric), @"^([\d.]+) (cm|m)$");
        Assert.True(said.Success);
        double back = Number(said.Groups[1]) * (said.Groups[2].Value == "cm" ? 0.01 : 1);
        Assert.InRange(back, metres - 0.00501, metres + 0.00501);
    });

    [Fact]
    public void Speed_SaidInEitherUnit_ReadAsTheSameSpeed() => Gen.Int[5, 80].Sample(mph =>
    {
        double fromMiles = QuantityReader.SpeedKmPerHour(Tokenizer.Split($"at {mph} mph"), UnitPreference.Metric)!.Value;
        double fromKm = QuantityReader.SpeedKmPerHour(Tokenizer.Split(string.Create(CultureInfo.InvariantCulture, $"at {mph * 1.609344:0.######} km/h")), UnitPreference.Imperial)!.Value;
        Assert.Equal(mph * 1.609344, fromMiles, 9);
        Assert.Equal(fromMiles, fromKm, 5);
    });

    [Fact]
    public void Rewrite_MetricSentence_BecomesImperialAndNothingElseChanges()
    {
        const string sentence = "Move it 31 cm back, 1.2 m up, below 40 km/h; a 35 mm lens, SNR 9 dB, 3 mV/Pa, m2.";

        Assert.Equal("Move it 12 in back, 3 ft 11 in up, below 25 mph; a 35 mm lens, SNR 9 dB, 3 mV/Pa, m2.", UnitText.Rewrite(sentence, UnitPreference.Imperial));
        Assert.Equal(sentence, UnitText.Rewrite(sentence, UnitPreference.Metric));
    }

    [Theory]
    [InlineData("It must be 0.9 to 2.2 m.", "It must be 2 ft 11 in to 7 ft 3 in.")]
    [InlineData("43 cm from the mouth instead of 27, speech -2.1 dB", "17 in from the mouth instead of 11 in, speech -2.1 dB")]
    [InlineData("43 cm away instead of 9 dB", "17 in away instead of 9 dB")]
    [InlineData("0 to 130 km/h", "0 mph to 81 mph")]
    [InlineData("Keep within 60 m; 2 km off, 250 uV/m at 3 m, 98.1 MHz, -85 dBm, 20 ms, 50 mW, 350 kHz", "Keep within 197 ft; 1.2 miles off, 250 uV/m at 3 m, 98.1 MHz, -85 dBm, 20 ms, 50 mW, 350 kHz")]
    [InlineData("It must be 1 to 3000 m.", "It must be 3 ft 3 in to 1.9 miles.")]
    public void Rewrite_UnitNamedOnce_HoldsForBothNumbers(string metric, string imperial) => Assert.Equal(imperial, UnitText.Rewrite(metric, UnitPreference.Imperial));

    private static double Number(Group group) => group.Success ? double.Parse(group.Value, CultureInfo.InvariantCulture) : 0;
}
