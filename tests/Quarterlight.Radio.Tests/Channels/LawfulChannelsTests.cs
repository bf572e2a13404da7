using Quarterlight.Quantities;
using Quarterlight.Radio.Channels;
using Quarterlight.Radio.Law;

namespace Quarterlight.Radio.Tests.Channels;

public class LawfulChannelsTests
{
    [Fact]
    public void ForbiddenBlocks_OfTheUs_KeepOffRadioAstronomyAndTheMobileBands()
    {
        // 47 CFR 73.603(c): 608 to 614 MHz is radio astronomy's; 698 to 806 MHz closed to microphones since 12 June 2010 (regulator's notice).
        IReadOnlyList<ExcludedBlock> blocks = LawfulChannels.ForbiddenBlocks(LawBook.Find("US")!);

        Assert.Contains(blocks, b => b.LowHz <= 608_000_000 && b.HighHz >= 614_000_000);
        Assert.Contains(blocks, b => b.LowHz <= 698_000_000 && b.HighHz >= 806_000_000);
        Assert.DoesNotContain(blocks, b => b.LowHz <= 600_000_000 && b.HighHz >= 600_000_000);
    }

    [Theory] // 47 CFR 15.236: 50 mW EIRP in 470 to 608 MHz without a licence; 74.861(e)(1): 250 mW with one; 608 to 614 MHz for nobody.
    [InlineData(520, 16.9, "within-exempt-limit", AdvisorySeverity.Note)]
    [InlineData(520, 24, "licence-needed", AdvisorySeverity.Safety)]
    [InlineData(610, 10, "forbidden-channel", AdvisorySeverity.Safety)]
    public void Advisories_OfOneChannel_SayWhatItsLawIs(long megahertz, double powerDbm, string code, AdvisorySeverity severity)
    {
        Advisory said = Assert.Single(LawfulChannels.Advisories("US", [megahertz * 1_000_000], powerDbm));

        Assert.Equal((code, severity), (said.Code, said.Severity));
    }

    [Fact]
    public void Advisories_NoCountryOrAnUnknownOne_SayNothingOrThatItIsUnknown()
    {
        Assert.Empty(LawfulChannels.Advisories("", [600_000_000], 10));
        Assert.Equal("unknown-country", Assert.Single(LawfulChannels.Advisories("Atlantis", [600_000_000], 10)).Code);
    }
}
