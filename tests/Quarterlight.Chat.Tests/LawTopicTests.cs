using Quarterlight.Crew;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about the law on the transmitter.</summary>
public sealed class LawTopicTests
{
    private readonly CannedRadio radio = new();

    [Fact]
    public async Task Ask_Law_DecisionRuleAuthorityAndCautions()
    {
        CrewAnswer answer = await radio.AskAsync("what can I legally radiate?");

        Assert.Equal("No, on 98.1 MHz: not lawful without a licence in the United States: 41 dB over the limit of 250 uV/m at 3 m.", answer.Headline);
        Assert.Contains(answer.Lines, l => l.Text == "Rule: any, 88.0 MHz to 108.0 MHz, 250 uV/m at 3 m (Invented rule book, clause 7, 2020).");
        Assert.Contains(answer.Lines, l => l.Text.StartsWith("With a licence: broadcasting", StringComparison.Ordinal));
        Assert.Contains(answer.Lines, l => l.Text == "Ask: the invented radio office.");
        Assert.Contains(answer.Lines, l => l.Text == "Safety: Local law decides; this is not legal advice.");
        Assert.Contains(answer.Lines, l => l.Text.EndsWith("with that the link reaches 2 m.", StringComparison.Ordinal));
    }

    // -47.3 dBm in mW by the definition of the decibel: 10^-4.73 = 1.862e-5 mW = 18.62 nW.
    [Fact]
    public async Task Ask_Law_SaysTheLawfulPowerInWatts() =>
        Assert.Contains((await radio.AskAsync("are we legal")).Lines, l => l.Text.StartsWith("Most that may be radiated: -47.3 dBm EIRP, that is 18.6 nW", StringComparison.Ordinal));

    // 250 uV/m at 3 m is -47.3 dBm EIRP with e = sqrt(30 p)/d (ITU-R P.525); 10 mW is 10 dBm; ERP to EIRP is 2.15 dB.
    [Theory]
    [InlineData("is 10 mW EIRP on 863 MHz legal in Japan?", "JP", 863, 10, null)]
    [InlineData("is 10 mW ERP on 863 MHz legal in Japan?", "JP", 863, 12.15, null)]
    [InlineData("is 10 mW on 863 MHz legal in Japan?", "JP", 863, 12.15, 10.0)]
    [InlineData("is 250 uV/m at 3 m on 322 MHz legal in Japan?", "JP", 322, -47.27, null)]
    public async Task Ask_LawOfAnotherBand_IsLookedUpFromTheQuestionAlone(string question, string country, double mhz, double eirpDbm, double? conductedDbm)
    {
        await radio.AskAsync(question);

        Assert.Equal((country, mhz), (radio.LawAsked!.CountryCode, radio.LawAsked.FrequencyMhz));
        Assert.Equal(eirpDbm, radio.LawAsked.EirpDbm, 1);
        Assert.Equal(conductedDbm is not null, radio.LawAsked.HasConductedPowerDbm);
        Assert.Equal(conductedDbm ?? 0, radio.LawAsked.ConductedPowerDbm, 6);
    }

    [Fact]
    public async Task Ask_LimitWithoutPower_TellsTheLimitAlone()
    {
        CrewAnswer answer = await radio.AskAsync("what's the limit in Japan at 863 MHz");

        Assert.False(radio.LawAsked!.HasEirpDbm);
        Assert.StartsWith("The limit without a licence on 863.0 MHz in the United States is 250 uV/m at 3 m.", answer.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_UnknownCountry_SaysStrictestWasTaken()
    {
        radio.Law.CountryCode = "";

        CrewAnswer answer = await radio.AskAsync("is 10 mW on 863 MHz legal in Ruritania?");

        Assert.Equal("Ruritania", radio.LawAsked!.CountryCode);
        Assert.Contains("the strictest limit known, as the country is not known", answer.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(LawStatus.WithinExemptLimit, "Yes, on 98.1 MHz: lawful without a licence")]
    [InlineData(LawStatus.NeedsLicence, "No, on 98.1 MHz: only with a licence")]
    [InlineData(LawStatus.Forbidden, "No, on 98.1 MHz: forbidden")]
    [InlineData(LawStatus.NoRuleKnown, "Not known, on 98.1 MHz: no rule is known here")]
    public async Task Ask_EveryVerdict_DecisionFirst(LawStatus status, string start)
    {
        radio.Link.Law.Status = status;

        Assert.StartsWith(start, (await radio.AskAsync("are we legal")).Headline, StringComparison.Ordinal);
    }
}
