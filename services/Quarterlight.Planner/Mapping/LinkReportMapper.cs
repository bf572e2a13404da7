using Quarterlight.Quantities;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Link;

namespace Quarterlight.Planner.Mapping;

/// <summary>Link reports, verdicts of the law and quiet channels, to the contract.</summary>
internal static class LinkReportMapper
{
    public static V1.LinkReport ToContract(LinkReport report)
    {
        var contract = new V1.LinkReport
        {
            Headline = report.Headline,
            AskedRange = ToContract(report.AskedRange),
            EirpDbm = report.EirpDbm,
            PathLossDb = report.PathLossDb,
            FieldDbuvPerM = report.FieldDbuvPerM,
            LevelDbm = new V1.Estimate { Value = report.LevelDbm, PlusMinus = report.LevelUncertaintyDb },
            NoiseDbm = report.NoiseDbm,
            NeededFieldDbuvPerM = report.NeededFieldDbuvPerM,
            MarginDb = report.MarginDb,
            FadeMarginDb = report.FadeMarginDb,
            AvailabilityFraction = report.AvailabilityFraction,
            DropOutsPerMinute = report.DropOutsPerMinute,
            MeanDropOutMs = report.MeanDropOutMs,
            Law = ToContract(report.Law),
            Model = report.Path.Model.ToContract<V1.PropagationModel>(),
            ModelReason = report.Path.Reason,
            Blocking = report.Blocking,
        };
        if (report.SnrDb is { } snr)
        {
            contract.SnrDb = snr;
        }

        if (report.DelayMs is { } delay)
        {
            contract.DelayMs = delay;
        }

        if (report.LawfulRange is { } lawful)
        {
            contract.LawfulRange = ToContract(lawful);
        }

        contract.Ranges.AddRange(report.Ranges.Select(ToContract));
        contract.RefusedModels.AddRange(report.Path.Refused.Select(r => new V1.PropagationRefusal { Model = r.Model.ToContract<V1.PropagationModel>(), Reason = r.Reason }));
        contract.Changes.AddRange(report.Changes.Select(c => new V1.LinkChange { Code = c.Code, Words = c.Words, GainDb = c.GainDb, RangeGainM = c.RangeGainM, RangeM = c.RangeM }));
        contract.Curve.AddRange(report.Curve.Select(ToContract));
        contract.Advisories.AddRange(report.Advisories.Select(GeometryMapper.ToContract));
        return contract;
    }

    public static V1.LawVerdict ToContract(LawVerdict verdict)
    {
        var contract = new V1.LawVerdict
        {
            Status = verdict.Status.ToContract<V1.LawStatus>(),
            Words = verdict.Words,
            CountryCode = verdict.CountryKnown ? verdict.Country!.Code : "",
            Authority = verdict.Authority,
            Rule = verdict.GoverningRule is { } rule ? ToContract(rule) : null,
        };
        if (verdict.LawfulEirpDbm is { } lawful)
        {
            contract.LawfulEirpDbm = lawful;
        }

        if (verdict.ExcessDb is { } excess)
        {
            contract.ExcessDb = excess;
        }

        contract.OtherRules.AddRange(verdict.ForbiddenBy.Concat(verdict.LicensedAlternatives).Select(ToContract));
        contract.Advisories.AddRange(verdict.Advisories.Select(GeometryMapper.ToContract));
        return contract;
    }

    public static V1.FmChannel ToContract(QuietChannel channel)
    {
        var contract = new V1.FmChannel
        {
            FrequencyMhz = channel.FrequencyMHz,
            NeededFieldDbuvPerM = channel.NeededFieldDbuvPerM,
            InterferenceDb = channel.InterferenceDb,
            Words = channel.Words,
            RangeM = channel.RangeM,
        };
        if (channel.WorstStationMHz is { } station)
        {
            contract.WorstStationMhz = station;
        }

        return contract;
    }

    private static V1.LinkRange ToContract(LinkRange range) => new() { AvailabilityFraction = range.AvailabilityFraction, RangeM = range.RangeM, BeyondModel = range.BeyondModel };

    private static V1.LinkPoint ToContract(LinkPoint point)
    {
        var contract = new V1.LinkPoint { DistanceM = point.DistanceM, LevelDbm = point.LevelDbm, AvailabilityFraction = point.AvailabilityFraction };
        if (point.SnrDb is { } snr)
        {
            contract.SnrDb = snr;
        }

        return contract;
    }

    private static V1.RadioRule ToContract(RadioRule rule)
    {
        var contract = new V1.RadioRule
        {
            CountryCode = rule.CountryCode,
            LowMhz = rule.LowMHz,
            HighMhz = rule.HighMHz,
            Use = rule.Use,
            Limit = LawBook.LimitWords(rule),
            Document = rule.Document,
            Clause = rule.Clause,
            Date = rule.Date,
            Conditions = rule.Conditions,
            FromMemory = rule.Provenance.Trust == Trust.FromMemory,
            NeedsLicence = rule.Licensing == Licensing.Licensed,
            Forbids = rule.Licensing == Licensing.Forbidden,
        };
        if (rule.LimitKind != LimitKind.ConductedPower && RuleLimits.LimitDbm(rule, null) is { } dbm)
        {
            contract.EirpDbm = dbm;
        }

        return contract;
    }
}
