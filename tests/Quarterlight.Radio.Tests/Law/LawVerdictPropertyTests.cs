using Quarterlight.Quantities;
using Quarterlight.Radio.Law;

namespace Quarterlight.Radio.Tests;

public class LawVerdictPropertyTests
{
    private static readonly double[] s_powers = [-90, -60, -47.27, -30, -10, 0, 10, 13, 17, 20, 24, 30, 40];

    public static TheoryData<string> Asked => [.. LawBook.Countries.Select(c => c.Code), "FR", "Atlantis"];

    [Theory]
    [MemberData(nameof(Asked))]
    public void Judge_AnyFrequencyAndPower_KeepsItsPromises(string country)
    {
        int judged = 0;
        for (double frequency = 76; frequency <= 2500; frequency = Math.Min(frequency + 1.37, frequency < 2500 ? 2500 : double.MaxValue))
        {
            foreach (double? width in new double?[] { null, 200 })
            {
                double? before = null;
                bool stopped = false;
                foreach (double power in s_powers)
                {
                    LawVerdict verdict = LawBook.Judge(country, frequency, power, null, width);
                    Check(verdict, power);
                    Assert.True(before is null || verdict.ExcessDb > before, "more power never means less excess");
                    // What is not allowed at some power is not allowed at more.
                    Assert.False(stopped && verdict.Status == LawStatus.WithinExemptLimit);
                    stopped |= verdict.Status != LawStatus.WithinExemptLimit;
                    before = verdict.ExcessDb;
                    judged++;
                }
            }

            if (frequency >= 2500)
            {
                break;
            }
        }

        Assert.True(judged > 10_000);
    }

    [Theory]
    [InlineData(98.1)]
    [InlineData(600)]
    [InlineData(864)]
    [InlineData(1890)]
    [InlineData(2440)]
    public void Judge_UnknownCountry_UsesTheStrictestOfAll(double frequency)
    {
        // Brute force: every known country asked for the power it would allow, at 0 dBi.
        LawVerdict[] known = [.. LawBook.Countries.Select(c => LawBook.Judge(c.Code, frequency, 0))];
        double strictest = known.Where(v => v.LawfulEirpDbm is not null).Min(v => v.LawfulEirpDbm!.Value);
        LawVerdict verdict = LawBook.Judge("Atlantis", frequency, 0);
        Assert.False(verdict.CountryKnown);
        Assert.Equal(strictest, verdict.LawfulEirpDbm!.Value, 1e-9);
        Assert.Contains(verdict.Advisories, a => a.Code == "unknown-country" && a.Severity == AdvisorySeverity.Safety);
        Assert.Contains("strictest", verdict.Words, StringComparison.Ordinal);

        // Where some country allows nothing, it is named and nothing is called lawful.
        string[] nothing = [.. LawBook.Countries.Where((_, i) => known[i].GoverningRule is null).Select(c => c.Name)];
        Assert.All(nothing, name => Assert.Contains(name, verdict.Words, StringComparison.Ordinal));
        LawVerdict faint = LawBook.Judge("Atlantis", frequency, -120);
        Assert.Equal(nothing.Length == 0 ? LawStatus.WithinExemptLimit : LawStatus.NoRuleKnown, faint.Status);
    }

    private static void Check(LawVerdict verdict, double power)
    {
        Advisory first = verdict.Advisories[0];
        Assert.Equal("local-law-decides", first.Code);
        Assert.Equal(AdvisorySeverity.Safety, first.Severity);
        Assert.Equal(verdict.Advisories.Count, verdict.Advisories.DistinctBy(a => a.Code).Count());
        Assert.False(verdict.Status == LawStatus.WithinExemptLimit && !(verdict.ExcessDb <= 0));
        Assert.False(verdict.Status == LawStatus.WithinExemptLimit && verdict.GoverningRule is null);
        Assert.False(verdict.Status == LawStatus.NeedsLicence && verdict.LicensedAlternatives.Count == 0);
        Assert.Equal(verdict.Status == LawStatus.Forbidden, verdict.ForbiddenBy.Count > 0);
        Assert.False(string.IsNullOrWhiteSpace(verdict.Authority));
        Assert.EndsWith(".", verdict.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("..", verdict.Words, StringComparison.Ordinal);
        if (verdict.LawfulEirpDbm is { } lawful)
        {
            Assert.Equal(power - lawful, verdict.ExcessDb!.Value, 1e-6);
        }

        if (verdict.GoverningRule is { } rule && verdict.Status is LawStatus.WithinExemptLimit or LawStatus.OverExemptLimit)
        {
            Assert.Contains(rule.Document, verdict.Words, StringComparison.Ordinal);
            Assert.Contains(rule.Clause, verdict.Words, StringComparison.Ordinal);
        }
    }
}
