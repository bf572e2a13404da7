using Google.Protobuf;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Reports as the planner might send them; every figure is invented and only carried through.</summary>
internal static class Reports
{
    public static Picture Picture() => new() { Png = ByteString.CopyFrom(1, 2, 3), TextAlternative = "Level against distance: 95 % to 45.7 m." };

    public static LawVerdict Law() => new()
    {
        Status = LawStatus.OverExemptLimit,
        Words = "The transmitter is far above what may be sent without a licence.",
        CountryCode = "US",
        LawfulEirpDbm = -47.3,
        ExcessDb = 41.2,
        Rule = new RadioRule { CountryCode = "US", LowMhz = 88, HighMhz = 108, Use = "any", Limit = "250 uV/m at 3 m", Document = "Invented rule book", Clause = "clause 7", Date = "2020" },
        OtherRules = { new RadioRule { CountryCode = "US", LowMhz = 88, HighMhz = 108, Use = "broadcasting", Limit = "as licensed", Document = "Invented rule book", NeedsLicence = true } },
        Authority = "the invented radio office",
        Advisories = { new Advisory { Code = "local-law", Message = "Local law decides; this is not legal advice.", Severity = AdvisorySeverity.Safety } },
    };

    public static LinkReport Link() => new()
    {
        Headline = "Keep within 45.7 m.",
        Ranges = { Range(0.5, 210), Range(0.9, 80), Range(0.95, 45.7), Range(0.99, 20) },
        AskedRange = Range(0.95, 45.7),
        EirpDbm = 18,
        PathLossDb = 71,
        FieldDbuvPerM = 41,
        LevelDbm = new Estimate { Value = -84.6, PlusMinus = 8 },
        NoiseDbm = -104,
        SnrDb = 37.4,
        NeededFieldDbuvPerM = 33,
        MarginDb = 7.6,
        FadeMarginDb = 12.9,
        AvailabilityFraction = 0.914,
        DropOutsPerMinute = 2.4,
        MeanDropOutMs = 130,
        DelayMs = 0.3,
        Law = Law(),
        LawfulRange = Range(0.95, 2.2),
        Model = PropagationModel.TwoRay,
        ModelReason = "The antennas see each other over flat ground.",
        RefusedModels = { new PropagationRefusal { Model = PropagationModel.StreetUhf, Reason = "It starts at 300 MHz." } },
        Changes =
        {
            new LinkChange { Code = "antenna-outside", Words = "Put the transmitter's antenna on the roof", GainDb = 21.4, RangeGainM = 95, RangeM = 141 },
            new LinkChange { Code = "raise", Words = "Raise the receiver's antenna to 2.5 m", GainDb = 3.9, RangeGainM = 12, RangeM = 58 },
            new LinkChange { Code = "mono", Words = "Go mono", GainDb = 0, RangeGainM = 0, RangeM = 45.7 },
            new LinkChange { Code = "channel", Words = "Change the channel", GainDb = 0, RangeGainM = 0, RangeM = 45.7 },
        },
        Blocking = "Keep within 15 m at lights.",
        Advisories =
        {
            new Advisory { Code = "a", Message = "Model is typical.", Severity = AdvisorySeverity.Note },
            new Advisory { Code = "b", Message = "Never follow closer than is safe.", Severity = AdvisorySeverity.Safety },
            new Advisory { Code = "c", Message = "Wet trees take more.", Severity = AdvisorySeverity.Note },
            new Advisory { Code = "d", Message = "Watch the third thing.", Severity = AdvisorySeverity.Caution },
        },
    };

    public static ChannelReport Channels() => new()
    {
        Headline = "All clean.",
        Assignments =
        {
            new ChannelAssignment { TransmitterId = "bodypack-1", FrequencyMhz = 470.1, Clean = true },
            new ChannelAssignment { TransmitterId = "bodypack-2", FrequencyMhz = 470.475, Clean = true },
            new ChannelAssignment { TransmitterId = "bodypack-3", FrequencyMhz = 471.225, Clean = true },
        },
        Complete = true,
        Proved = true,
        Proof = "Every transmitter has a channel and nothing hits.",
        LeastThirdOrderOffsetKhz = 75,
        ThirdOrderCount = 9,
        Advisories = { new Advisory { Code = "coordinator", Message = "A licensed coordinator decides.", Severity = AdvisorySeverity.Safety } },
    };

    private static LinkRange Range(double share, double metres) => new() { AvailabilityFraction = share, RangeM = metres };
}
