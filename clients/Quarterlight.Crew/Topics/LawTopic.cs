using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>What may be radiated, and whether a transmitter is lawful.</summary>
internal static class LawTopic
{
    // Gain of a half-wave dipole in dBi (1.641 as a ratio): the difference of ERP and EIRP.
    private const double DipoleGainDbi = 2.15;

    // e = sqrt(30 p)/d with p in W (ITU-R P.525): EIRP in dBm = field in dBuV/m + 20 log d - 104.77.
    private const double FieldToEirpDb = 104.77;

    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        RadioSaid said = asked.Request.Radio;
        LinkGear? kept = LinkSetups.KitOf(asked)?.LinkGear;
        WirelessTransmitter? pack = LinkSetups.KitOf(asked)?.WirelessTransmitters.FirstOrDefault(t => t.TuningRanges.Count > 0);
        if (said is { OfMicrophones: true, FrequencyMHz: null, TuningRanges.Count: 0 } && pack is not null)
        {
            // The microphones' own band, not the link's.
            return await LookUpAsync(asked, (pack.TuningRanges[0].LowMhz + pack.TuningRanges[0].HighMhz) / 2).ConfigureAwait(false);
        }

        bool ours = kept is not null && said.TuningRanges.Count == 0 && (said.FrequencyMHz is not { } other || Math.Abs(other - kept.FrequencyMhz) < kept.FrequencyMhz * 0.1);
        return ours ? await WholeAsync(asked).ConfigureAwait(false)
            : said.FrequencyMHz is { } frequency ? await LookUpAsync(asked, frequency).ConfigureAwait(false)
            : said.TuningRanges.Count > 0 ? await LookUpAsync(asked, (said.TuningRanges[0].LowMHz + said.TuningRanges[0].HighMHz) / 2).ConfigureAwait(false)
            : NoFrequency(asked);
    }

    // The kit's own gear: the planner knows its antenna, and so what it radiates and how far the lawful level reaches.
    private static async Task<CrewAnswer> WholeAsync(Asked asked)
    {
        var assumed = new List<string>();
        LinkGear gear = LinkSetups.Gear(asked, assumed)!;
        LinkSetup setup = LinkSetups.Setup(asked, gear, LinkSetups.FollowCar(asked, LinkSetups.NeutralGapM)!);
        CheckLinkResponse response = await asked.Planner.Radio.CheckLinkAsync(new() { Setup = setup }, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        LinkReport report = response.Report ?? new LinkReport();
        string details = Say($"{RadioWordings.Frequency(gear.FrequencyMhz)}, {RadioWordings.Power(gear)}, {Country(setup.FollowCar.CountryCode)}{(assumed.Count > 0 ? ", " + string.Join(", ", assumed) : "")}");
        return Answer(asked, report.Law ?? new LawVerdict(), report.LawfulRange, gear.FrequencyMhz, true, details, new Dictionary<string, IMessage> { ["law"] = report.Law ?? new LawVerdict(), ["link"] = report, ["setup"] = setup });
    }

    private static async Task<CrewAnswer> LookUpAsync(Asked asked, double frequencyMHz)
    {
        PowerSaid? power = asked.Request.Radio.Power;
        string country = asked.Country;
        var request = new LookUpLawRequest { CountryCode = country, FrequencyMhz = frequencyMHz };
        string assumed = "";
        if (power is not null)
        {
            double dbm = 10 * Math.Log10(power.Value);
            bool conducted = power.Basis is null or TransmitPowerBasis.Conducted;
            request.EirpDbm = power.Basis switch
            {
                TransmitPowerBasis.Eirp => dbm,
                TransmitPowerBasis.Field => (20 * Math.Log10(power.Value)) + (20 * Math.Log10(power.FieldDistanceM ?? 3)) - FieldToEirpDb,
                _ => dbm + DipoleGainDbi,
            };
            if (conducted)
            {
                request.ConductedPowerDbm = dbm;
                assumed = ", sent by a half-wave dipole";
            }
        }

        LookUpLawResponse response = await asked.Planner.Radio.LookUpLawAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        LawVerdict verdict = response.Verdict ?? new LawVerdict();
        string strength = power is null ? "any power" : RadioWordings.Power(new LinkGear { Power = power.Value, PowerBasis = power.Basis ?? TransmitPowerBasis.Conducted, FieldDistanceM = power.FieldDistanceM ?? 3 });
        return Answer(asked, verdict, null, frequencyMHz, power is not null, $"{RadioWordings.Frequency(frequencyMHz)}, {strength}{assumed}, {Country(country)}", new Dictionary<string, IMessage> { ["law"] = verdict });
    }

    private static CrewAnswer Answer(Asked asked, LawVerdict verdict, LinkRange? lawful, double frequencyMHz, bool powerKnown, string details, IReadOnlyDictionary<string, IMessage> data) =>
        asked.Answer(LawText.Headline(verdict, frequencyMHz, powerKnown), LawText.Lines(verdict, lawful, asked.Units, asked.Request.Detailed)) with
        {
            Understood = LinkTopic.Understood(asked, "the law on the transmitter", details),
            FollowUps = ["how far can we fall back?", Say($"what is the limit in {(verdict.CountryCode == "DE" ? "the UK" : "Germany")} at {frequencyMHz:0.0###} MHz?")],
            Data = data,
            Memory = LinkTopic.Remember(asked),
        };

    private static CrewAnswer NoFrequency(Asked asked) => asked.Answer("The kit has no transmitter for a follow car, so the frequency is not known.",
        [new(CrewLineKind.Plain, "Say it with the question, such as \"is 50 mW on 98.1 MHz legal in Germany?\".")]) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
        FollowUps = ["is 50 mW on 98.1 MHz legal in Germany?", "list kits"],
        Memory = LinkTopic.Remember(asked),
    };

    private static string Country(string country) => country.Length > 0 ? CountryReader.Say(country) : "country not known";
}
