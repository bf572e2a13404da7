using Quarterlight.Quantities;
using Quarterlight.Radio.Law;

namespace Quarterlight.Radio.Tests;

public class LawBookTests
{
    public static TheoryData<string> Codes => [.. LawBook.Countries.Select(c => c.Code)];

    [Theory]
    [InlineData("US", "US")]
    [InlineData("us", "US")]
    [InlineData(" united  states ", "US")]
    [InlineData("UK", "GB")]
    [InlineData("gb", "GB")]
    [InlineData("Germany", "DE")]
    [InlineData("JAPAN", "JP")]
    [InlineData("FR", "EU")]
    [InlineData("it", "EU")]
    [InlineData("Ireland", "EU")]
    [InlineData("New Zealand", "NZ")]
    public void Find_CodeOrName_LeadsToTheTable(string asked, string code) => Assert.Equal(code, LawBook.Find(asked)?.Code);

    [Theory]
    [InlineData("XX")]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("Atlantis")]
    public void Find_UnknownCountry_IsNull(string? asked) => Assert.Null(LawBook.Find(asked));

    [Fact]
    public void Find_EveryMemberOfTheEuropeanUnion_HasATable()
    {
        // The 27 members, ISO 3166-1 codes.
        string[] members = "AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK".Split(' ');
        Assert.Equal(27, members.Length);
        Assert.All(members, m => Assert.Equal(m == "DE" ? "DE" : "EU", LawBook.Find(m)?.Code));
    }

    [Fact]
    public void Rules_All_NameDocumentClauseDateAndSource() => Assert.All(LawBook.Rules, r =>
    {
        Assert.All(new[] { r.Document, r.Clause, r.Date, r.Use, r.Provenance.Source }, text => Assert.False(string.IsNullOrWhiteSpace(text)));
        Assert.True(r.Provenance.Trust is Trust.Published or Trust.Derived or Trust.FromMemory);
        // A figure that was not read says so in words too.
        Assert.Equal(r.Provenance.Trust == Trust.FromMemory, r.Provenance.Source.Contains("from memory", StringComparison.OrdinalIgnoreCase) && r.Provenance.Trust != Trust.Published);
    });

    [Theory]
    [MemberData(nameof(Codes))]
    public void RulesOf_EachCountry_AreOrderedAndSane(string code)
    {
        IReadOnlyList<RadioRule> rules = LawBook.RulesOf(code);
        Assert.NotEmpty(rules);
        Assert.Equal([.. rules.Select(r => r.LowMHz).Order()], rules.Select(r => r.LowMHz));
        Assert.All(rules, r =>
        {
            Assert.Equal(code, r.CountryCode);
            Assert.True(r.LowMHz < r.HighMHz);
            Assert.True(LawRules.Frequency.Contains(r.LowMHz) && LawRules.Frequency.Contains(r.HighMHz));
            Assert.Equal(r.Licensing == Licensing.Forbidden, r.LimitKind == LimitKind.Nothing);
            Assert.Equal(r.LimitKind == LimitKind.Nothing, r.Limit == 0);
            Assert.Equal(r.LimitKind == LimitKind.FieldStrength, r.LimitDistanceM is > 0);
            Assert.True(r.Licensing == Licensing.Forbidden || RuleLimits.LimitDbm(r, null) is > -70 and < 40);
            Assert.True(r.WidestChannelKHz is null || r.WidestChannelKHz / 1000 <= r.HighMHz - r.LowMHz);
        });
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void RulesOf_EachCountry_NeverForbidsWhatItAllows(string code)
    {
        IReadOnlyList<RadioRule> rules = LawBook.RulesOf(code);
        foreach (RadioRule ban in rules.Where(r => r.Licensing == Licensing.Forbidden))
        {
            Assert.DoesNotContain(rules, r => r.Licensing != Licensing.Forbidden && r.Use.Contains("microphone", StringComparison.Ordinal) && r.LowMHz < ban.HighMHz && r.HighMHz > ban.LowMHz);
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Countries_Each_HasARasterThatEndsOnAChannel(string code)
    {
        CountryLaw law = Assert.Single(LawBook.Countries, c => c.Code == code);
        double steps = (law.FmHighMHz - law.FmLowMHz) * 1000 / law.FmRasterKHz;
        Assert.Equal(Math.Round(steps), steps, 1e-6);
        Assert.True(law.FmDeEmphasisMicroseconds is 50 or 75);
        Assert.False(string.IsNullOrWhiteSpace(law.Authority) || string.IsNullOrWhiteSpace(law.Provenance.Source));
    }

    // 47 CFR 73.501: channel 201 is 88.1 MHz and channel 220 is 91.9 MHz, 200 kHz apart. ITU-R BS.450-3 note 2: 75 µs there, 50 µs in Europe.
    [Fact]
    public void Countries_UnitedStatesAndEurope_MatchTheCodeAndBs450()
    {
        CountryLaw us = LawBook.Find("US")!;
        Assert.Equal(88.1, us.FmLowMHz);
        Assert.Equal(91.9, us.FmLowMHz + (19 * us.FmRasterKHz / 1000), 1e-9);
        Assert.Equal(75, us.FmDeEmphasisMicroseconds);
        Assert.Equal(50, LawBook.Find("FR")!.FmDeEmphasisMicroseconds);
    }

    [Fact]
    public void RulesOf_NoSuchTable_Throws() => Assert.Throws<ArgumentException>(() => LawBook.RulesOf("FR"));
}
