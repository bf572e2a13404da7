using Quarterlight.Quantities;
using Quarterlight.Radio.Law;

namespace Quarterlight.Radio.Tests;

public class LawRulesTests
{
    [Theory]
    [InlineData(76, 60)]
    [InlineData(2500, -150)]
    public void Validate_EndsOfTheRanges_AreValid(double frequency, double power) =>
        Assert.Empty(LawRules.Validate("US", frequency, power, power, 20_000));

    [Theory]
    [InlineData(75.999)]
    [InlineData(2500.001)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Validate_FrequencyOutside_IsOneViolation(double frequency) =>
        Assert.Equal("frequency_mhz", Assert.Single(LawRules.Validate("US", frequency, 0)).Field);

    [Fact]
    public void Validate_EverythingWrong_SaysAllAtOnceWithThePrefix()
    {
        IReadOnlyList<Violation> wrong = LawRules.Validate(new string('x', 61), 1, double.NaN, 61, 0.5, "link");
        Assert.Equal(
            ["link.country_code", "link.frequency_mhz", "link.eirp_dbm", "link.conducted_power_dbm", "link.channel_width_khz"],
            wrong.Select(v => v.Field));
        Assert.All(wrong, v => Assert.False(v.Problem.EndsWith('.') || v.Remedy.EndsWith('.')));
    }

    [Fact]
    public void Validate_NameTooLong_IsRefused() =>
        Assert.Equal("country_code", Assert.Single(LawRules.Validate(new string('a', LawRules.LongestCountryName + 1), 98, 0)).Field);

    [Fact]
    public void Validate_UnknownCountry_IsAValidQuestion() => Assert.Empty(LawRules.Validate("Atlantis", 98, 0));

    [Fact]
    public void Judge_NoCountry_SaysSoAndTakesTheStrictest()
    {
        LawVerdict verdict = LawBook.Judge("", 98, 23);

        Assert.False(verdict.CountryKnown);
        Assert.StartsWith("No country is given; held to the strictest limit", verdict.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_WithoutPower_GivesTheLimitAlone()
    {
        // 47 CFR 15.239(b): 250 uV/m at 3 m, which is -47.27 dBm EIRP (ITU-R P.525).
        LawVerdict verdict = LawBook.Judge("US", 98, null, null, 200);

        Assert.Null(verdict.ExcessDb);
        Assert.Equal(-47.27, verdict.LawfulEirpDbm!.Value, 0.01);
        Assert.StartsWith("The licence-exempt limit of 250 µV/m at 3 m", verdict.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("to spare", verdict.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_AnalogueInADigitalBand_IsNotWithinARuleForDigitalEquipment()
    {
        // 47 CFR 15.247 is for frequency hopping and digital modulation; analogue FM at 915 MHz does not qualify.
        Assert.Equal(LawStatus.WithinExemptLimit, LawBook.Judge("US", 915, 10, 10, 200, digital: true).Status);
        Assert.NotEqual(LawStatus.WithinExemptLimit, LawBook.Judge("US", 915, 10, 10, 200, digital: false).Status);
    }

    [Fact]
    public void Judge_UncheckedInput_Throws() =>
        Assert.Equal("frequency_mhz", Assert.Throws<InvalidInputException>(() => LawBook.Judge("US", 50, 0)).Violations[0].Field);
}
