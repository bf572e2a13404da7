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
        IReadOnlyList<Violation> wrong = LawRules.Validate(" ", 1, double.NaN, 61, 0.5, "link");
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
    public void Judge_UncheckedInput_Throws() =>
        Assert.Equal("frequency_mhz", Assert.Throws<InvalidInputException>(() => LawBook.Judge("US", 50, 0)).Violations[0].Field);
}
