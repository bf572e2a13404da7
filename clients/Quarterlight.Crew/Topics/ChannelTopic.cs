using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>Channels for several wireless transmitters, found or checked.</summary>
internal static class ChannelTopic
{
    // Two wearers in the front seats sit about this far apart, in metres: judgement.
    private const double TransmitterDistanceM = 0.8;

    // Nearer than this, a carrier said is the link itself.
    private const double SameCarrierMHz = 0.001;

    // Step of a transmitter of which only the band was said, in kHz: judgement.
    private const double UsualStepKHz = 25;

    public static async Task<CrewAnswer> FindAsync(Asked asked)
    {
        if (Transmitters(asked) is not { Length: > 0 } transmitters)
        {
            return NoTransmitters(asked);
        }

        var request = new CoordinateChannelsRequest { Rules = Rules(asked, transmitters.Any(t => t.HasPowerMw && t.HasInterceptDbm)), IncludePicture = asked.IncludePicture };
        request.Transmitters.Add(transmitters);
        CoordinateChannelsResponse response = await asked.Planner.Radio.CoordinateChannelsAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        ChannelReport report = response.Report ?? new ChannelReport();
        string what = Join([.. transmitters.Select(t => Say($"{t.Count} × {Name(t.DisplayName, t.Id)} {Bands(t)} in steps of {t.StepKhz:0.###} kHz"))]);
        double[] found = [.. report.Assignments.Where(a => a.HasFrequencyMhz).Select(a => a.FrequencyMhz).Take(3)];
        List<string> next = [asked.Request.Radio.FifthOrder ? "and 400 kHz apart?" : "and free of fifth order products too?"];
        next.AddRange(found.Length > 1 ? [$"check {Join([.. found.Select(RadioWordings.Dial)])}"] : []);
        return asked.Answer(ChannelText.Found(report), ChannelText.Lines(report, asked.Units, asked.Request.Detailed)) with
        {
            Understood = LinkTopic.Understood(asked, "channels", what + Kept(request.Rules)),
            Pictures = Asked.Pictures(response.Picture, LinkTopic.FileName(asked, "channels"), asked.Units),
            FollowUps = next,
            Data = new Dictionary<string, IMessage> { ["channels"] = report, ["rules"] = request.Rules },
            Memory = LinkTopic.Remember(asked),
        };
    }

    public static async Task<CrewAnswer> CheckAsync(Asked asked)
    {
        IReadOnlyList<double> carriers = asked.Request.Radio.CarriersMHz;
        if (carriers.Count < 2)
        {
            return asked.Answer("Two channels or more are needed to check.", [new(CrewLineKind.Plain, "Say them in MHz, such as \"check 600.0 600.6 601.0\".")]) with { Outcome = CrewOutcome.Refused, Private = true, FollowUps = ["check 600.0 600.6 601.0", "frequencies for the radio mics"] };
        }

        WirelessTransmitter? kind = LinkSetups.KitOf(asked)?.WirelessTransmitters.FirstOrDefault(t => t.HasPowerMw && t.HasInterceptDbm);
        var request = new CheckChannelsRequest { Rules = Rules(asked, kind is not null), IncludePicture = asked.IncludePicture };
        request.FrequenciesMhz.Add(carriers);
        if (kind is not null)
        {
            (request.PowerMw, request.InterceptDbm) = (kind.PowerMw, kind.InterceptDbm);
        }

        CheckChannelsResponse response = await asked.Planner.Radio.CheckChannelsAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        ChannelReport report = response.Report ?? new ChannelReport();
        return asked.Answer(ChannelText.Checked(report), ChannelText.Lines(report, asked.Units, asked.Request.Detailed)) with
        {
            Understood = LinkTopic.Understood(asked, "check of channels", $"{Join([.. carriers.Select(RadioWordings.Dial)])} MHz{Kept(request.Rules)}"),
            Pictures = Asked.Pictures(response.Picture, LinkTopic.FileName(asked, "channel-check"), asked.Units),
            FollowUps = ["frequencies for the radio mics", Say($"coordinate {Math.Max(2, carriers.Count)} transmitters between {Math.Floor(carriers.Min()):0} and {Math.Ceiling(carriers.Max()) + 1:0} MHz")],
            Data = new Dictionary<string, IMessage> { ["channels"] = report, ["rules"] = request.Rules },
            Memory = LinkTopic.Remember(asked),
        };
    }

    // The kit's, with what was said on top; from the question alone where the kit has none or another band is meant.
    private static WirelessTransmitter[] Transmitters(Asked asked)
    {
        RadioSaid said = asked.Request.Radio;
        WirelessTransmitter[] kept = [.. LinkSetups.KitOf(asked)?.WirelessTransmitters.Select(t => t.Clone()) ?? []];
        if (said.TuningRanges.Count == 0 && said.TransmitterCount is null)
        {
            foreach (WirelessTransmitter t in kept)
            {
                t.StepKhz = said.StepKHz ?? t.StepKhz;
            }

            return kept;
        }

        int? count = said.TransmitterCount ?? (kept.Length > 0 ? kept.Sum(t => t.Count) : null);
        if (count is null || (said.TuningRanges.Count == 0 && kept.Length == 0))
        {
            return [];
        }

        // Of several kinds only the first is counted out; the rest stay in the bag.
        WirelessTransmitter one = kept.Length > 0 ? kept[0] : new WirelessTransmitter { Id = "transmitter", DisplayName = "transmitter", StepKhz = UsualStepKHz };
        one.Count = count.Value;
        one.StepKhz = said.StepKHz ?? one.StepKhz;
        one.ClearFixedMhz();
        if (said.TuningRanges.Count > 0)
        {
            one.TuningRanges.Clear();
            one.TuningRanges.Add(said.TuningRanges.Select(r => new TuningRange { LowMhz = r.LowMHz, HighMhz = r.HighMHz }));
        }

        return [one];
    }

    private static ChannelRules Rules(Asked asked, bool levels)
    {
        RadioSaid said = asked.Request.Radio;
        var rules = new ChannelRules { FifthOrder = said.FifthOrder ? FifthOrder.TwoAndThreeSignal : FifthOrder.None };
        if (said.SpacingKHz is { } spacing)
        {
            rules.MinSpacingKhz = spacing;
        }

        if (levels)
        {
            rules.TransmitterDistanceM = TransmitterDistanceM;
        }

        rules.CountryCode = asked.Country;
        rules.ExcludedBlocks.Add(said.Excluded.Select(e => new ExcludedBlock { LowMhz = e.LowMHz, HighMhz = e.HighMHz, Reason = "asked for" }));
        rules.Neighbours.Add(said.AvoidedMHz.Select(f => new FixedCarrier { DisplayName = "to keep clear of", FrequencyMhz = f }));
        if (LinkSetups.KitOf(asked)?.LinkGear is { } link && !said.CarriersMHz.Any(f => Math.Abs(f - link.FrequencyMhz) < SameCarrierMHz))
        {
            rules.Neighbours.Add(new FixedCarrier { DisplayName = "link to the follow car", FrequencyMhz = link.FrequencyMhz });
        }

        return rules;
    }

    private static string Bands(WirelessTransmitter t) => t.HasFixedMhz ? $"fixed at {RadioWordings.Dial(t.FixedMhz)} MHz"
        : "between " + Join([.. t.TuningRanges.Select(r => Say($"{r.LowMhz:0.###} and {r.HighMhz:0.###} MHz"))]);

    private static string Kept(ChannelRules rules)
    {
        var parts = new List<string> { rules.FifthOrder == FifthOrder.None ? "third order" : "third and fifth order" };
        if (rules.HasMinSpacingKhz)
        {
            parts.Add(Say($"{rules.MinSpacingKhz:0.#} kHz apart"));
        }

        parts.AddRange(rules.ExcludedBlocks.Select(e => Say($"out of {e.LowMhz:0.###} to {e.HighMhz:0.###} MHz")));
        parts.AddRange(rules.Neighbours.Select(n => $"beside {RadioWordings.Frequency(n.FrequencyMhz)} ({Name(n.DisplayName)})"));
        return ", " + string.Join(", ", parts);
    }

    private static CrewAnswer NoTransmitters(Asked asked)
    {
        bool count = asked.Request.Radio.TransmitterCount is not null, band = asked.Request.Radio.TuningRanges.Count > 0;
        string missing = band ? "How many transmitters there are is not known" : count ? "Where the transmitters can be tuned is not known" : "The kit has no wireless transmitters";
        return asked.Answer($"{missing}, so no channels can be found.", [new(CrewLineKind.Plain, "Say both with the question, such as \"coordinate 8 bodypacks between 470 and 494 MHz\".")]) with
        {
            Outcome = CrewOutcome.Refused,
            Private = true,
            FollowUps = ["coordinate 8 bodypacks between 470 and 494 MHz", "list kits"],
            Memory = LinkTopic.Remember(asked),
        };
    }
}
