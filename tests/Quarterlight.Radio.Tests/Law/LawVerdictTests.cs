using Quarterlight.Quantities;
using Quarterlight.Radio.Law;

namespace Quarterlight.Radio.Tests;

public class LawVerdictTests
{
    // 200 mW e.i.r.p., 23.01 dBm.
    private static readonly double s_twoHundredMilliwatts = Dbm(200);

    // Limits: 47 CFR 15.239(b); ERC/REC 70-03 annex 10; the German general assignment for wireless audio; Japan's Radio Act article 4 item 1.
    // Decibels: 10 lg(200 mW / limit), the limit by ITU-R P.525 and a dipole gain of 2.15 dB.
    [Theory]
    [InlineData("US", 98.1, 70.3, "250 µV/m at 3 m")]
    [InlineData("DE", 98.1, 63.9, "50 nW ERP")]
    [InlineData("FR", 98.1, 63.9, "50 nW ERP")]
    [InlineData("JP", 80.0, 64.3, "500 µV/m at 3 m")]
    public void Judge_TwoHundredMilliwattsOnFm_IsFarOverTheExemptLimit(string country, double frequency, double excess, string limit)
    {
        LawVerdict verdict = FromReadRule(LawBook.Judge(country, frequency, s_twoHundredMilliwatts, null, 200));
        Assert.Equal(LawStatus.OverExemptLimit, verdict.Status);
        Assert.Equal(excess, verdict.ExcessDb!.Value, 0.05);
        Assert.Contains(FormattableString.Invariant($"{excess:0.0} dB above"), verdict.Words, StringComparison.Ordinal);
        Assert.Contains(limit, verdict.Words, StringComparison.Ordinal);
        Assert.Contains(verdict.GoverningRule!.Clause, verdict.Words, StringComparison.Ordinal);
    }

    // 15.239(b): 18.75 nW e.i.r.p. is -47.27 dBm.
    [Fact]
    public void Judge_AtTheLawfulPower_IsJustWithin()
    {
        double lawful = FromReadRule(LawBook.Judge("US", 98.1, 0)).LawfulEirpDbm!.Value;
        Assert.Equal(-47.27, lawful, 0.01);
        Assert.Equal(LawStatus.WithinExemptLimit, LawBook.Judge("US", 98.1, lawful).Status);
        LawVerdict over = LawBook.Judge("US", 98.1, lawful + 0.01);
        Assert.Equal(LawStatus.OverExemptLimit, over.Status);
        Assert.Contains("less than 0.1 dB above", over.Words, StringComparison.OrdinalIgnoreCase);
    }

    // 47 CFR 15.236: 50 mW e.i.r.p. without a licence; 74.861(e)(1): 250 mW with one.
    [Theory]
    [InlineData(50, LawStatus.WithinExemptLimit)]
    [InlineData(250, LawStatus.NeedsLicence)]
    [InlineData(500, LawStatus.OverExemptLimit)]
    public void Judge_MicrophoneAt600MHzInTheUnitedStates_DependsOnPower(double milliwatts, LawStatus status)
    {
        LawVerdict verdict = FromReadRule(LawBook.Judge("US", 600, Dbm(milliwatts), null, 200));
        Assert.Equal(status, verdict.Status);
        Assert.Contains("15.236", verdict.GoverningRule!.Clause, StringComparison.Ordinal);
        Assert.Contains(verdict.LicensedAlternatives, r => r.Clause.Contains("74.861", StringComparison.Ordinal) && r.Limit == 250);
    }

    // EN 300 422-1 V1.5.1, scope: 10 mW in 863 to 865 MHz, e.r.p. by ERC/REC 70-03; 16.41 mW e.i.r.p.
    [Theory]
    [InlineData(16.3, LawStatus.WithinExemptLimit)]
    [InlineData(16.5, LawStatus.OverExemptLimit)]
    public void Judge_863MHzBandInEurope_AllowsTenMilliwattsErp(double eirpMilliwatts, LawStatus status) =>
        Assert.Equal(status, FromReadRule(LawBook.Judge("EU", 864, Dbm(eirpMilliwatts))).Status);

    // Regulators' notices: 698 to 806 MHz in the United States since 12 June 2010, 694 to 820 MHz in Australia since 1 January 2015, the same
    // in New Zealand from 11 March 2015; 47 CFR 73.603(c): 608 to 614 MHz for radio astronomy.
    [Theory]
    [InlineData("US", 750)]
    [InlineData("AU", 700)]
    [InlineData("NZ", 750)]
    [InlineData("US", 610)]
    public void Judge_ForbiddenBand_AllowsNothing(string country, double frequency)
    {
        LawVerdict verdict = LawBook.Judge(country, frequency, -100);
        Assert.Equal(LawStatus.Forbidden, verdict.Status);
        Assert.NotEmpty(verdict.ForbiddenBy);
        Assert.All(verdict.ForbiddenBy, r => Assert.Equal(Trust.Published, r.Provenance.Trust));
        Assert.Null(verdict.LawfulEirpDbm);
        Assert.Null(verdict.GoverningRule);
        Assert.StartsWith("Forbidden", verdict.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Judge_ChannelReachingIntoAForbiddenBand_IsForbidden() =>
        Assert.Equal(LawStatus.Forbidden, LawBook.Judge("US", 607.95, 0, null, 200).Status);

    // 15.239(a): the whole 200 kHz channel lies inside 88 to 108 MHz.
    [Theory]
    [InlineData(107.9, true)]
    [InlineData(107.95, false)]
    public void Judge_FmChannelAtTheBandEdge_MustFitTheBand(double frequency, bool fits)
    {
        // -60 dBm is far below the limit: only the room counts.
        LawVerdict verdict = FromReadRule(LawBook.Judge("US", frequency, -60, null, 200));
        Assert.Equal(fits ? LawStatus.WithinExemptLimit : LawStatus.OverExemptLimit, verdict.Status);
        Assert.Equal(fits, verdict.LawfulEirpDbm is not null);
        Assert.Equal(!fits, verdict.Advisories.Any(a => a.Code == "channel-too-wide" && a.Severity == AdvisorySeverity.Safety));
    }

    // 15.239(a) has room for 200 kHz; 15.209(a), 150 µV/m at 3 m, states no width: 6.75 nW is -51.71 dBm.
    [Fact]
    public void Judge_FmChannelOf400KHz_FallsToTheGeneralLimit()
    {
        LawVerdict verdict = FromReadRule(LawBook.Judge("US", 98.1, -60, null, 400));
        Assert.Equal("15.209(a)", verdict.GoverningRule!.Clause);
        Assert.Equal(-51.71, verdict.LawfulEirpDbm!.Value, 0.01);
    }

    // 47 CFR 15.319(c): 100 µW times the root of the bandwidth in Hz: 118.3 mW at 1.4 MHz, 44.7 mW at 200 kHz.
    [Theory]
    [InlineData(1400, 118.3)]
    [InlineData(200, 44.72)]
    public void Judge_DigitalCordlessInTheUnitedStates_LimitFollowsTheBandwidth(double width, double milliwatts)
    {
        LawVerdict verdict = FromReadRule(LawBook.Judge("US", 1925, 10, 10, width));
        Assert.Equal(Dbm(milliwatts), verdict.LawfulEirpDbm!.Value, 0.01);
    }

    [Fact]
    public void Judge_ConductedLimit_ComparesConductedPowerAndSaysWhenItCannot()
    {
        // 1 W at the output (47 CFR 15.247(b)); 3 dB of antenna gain show in the two powers.
        LawVerdict both = LawBook.Judge("US", 2440, 33, 30);
        Assert.Equal(0, both.ExcessDb!.Value, 1e-9);
        Assert.Equal(33, both.LawfulEirpDbm!.Value, 1e-9);
        Assert.DoesNotContain(both.Advisories, a => a.Code == "compared-with-eirp");
        LawVerdict radiatedOnly = LawBook.Judge("US", 2440, 33);
        Assert.Equal(3, radiatedOnly.ExcessDb!.Value, 1e-9);
        Assert.Contains(radiatedOnly.Advisories, a => a.Code == "compared-with-eirp");
    }

    [Fact]
    public void Judge_FieldFromMemory_SaysSo()
    {
        LawVerdict verdict = LawBook.Judge("AU", 98.1, 0);
        Assert.Equal(Trust.FromMemory, verdict.GoverningRule!.Provenance.Trust);
        Assert.Contains(verdict.Advisories, a => a.Code == "figure-from-memory");
        Assert.DoesNotContain(LawBook.Judge("US", 98.1, 0).Advisories, a => a.Code == "figure-from-memory");
    }

    [Fact]
    public void Judge_EuropeanCountryWithoutATable_SaysItsOwnTableDecides()
    {
        LawVerdict verdict = LawBook.Judge("fr", 98.1, 0);
        Assert.True(verdict.CountryKnown);
        Assert.Equal("EU", verdict.Country!.Code);
        Assert.Contains(verdict.Advisories, a => a.Code == "national-table-decides" && a.Message.Contains("France", StringComparison.Ordinal));
        Assert.DoesNotContain(LawBook.Judge("DE", 98.1, 0).Advisories, a => a.Code == "national-table-decides");
    }

    [Fact]
    public void Judge_FrequencyWithoutARule_IsNotAllowed()
    {
        LawVerdict verdict = LawBook.Judge("EU", 300, -100);
        Assert.Equal(LawStatus.NoRuleKnown, verdict.Status);
        Assert.Null(verdict.LawfulEirpDbm);
        Assert.Null(verdict.ExcessDb);
        Assert.Contains("not allowed until", verdict.Words, StringComparison.Ordinal);
    }

    private static LawVerdict FromReadRule(LawVerdict verdict)
    {
        // A figure from memory is no oracle: this fails when a check rests on one.
        Assert.NotNull(verdict.GoverningRule);
        Assert.NotEqual(Trust.FromMemory, verdict.GoverningRule.Provenance.Trust);
        return verdict;
    }

    private static double Dbm(double milliwatts) => 10 * Math.Log10(milliwatts);
}
