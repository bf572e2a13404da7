using Quarterlight.Crew.Language;
using static Quarterlight.Crew.Commands.ReadableOption;

namespace Quarterlight.Crew.Commands.Options;

/// <summary>Channels for several transmitters. Bounds are those of radio.proto.</summary>
internal static class ChannelOptions
{
    private const double LowestMHz = 1, HighestMHz = 6000;
    private const double LeastKHz = 1, MostKHz = 10000;
    private const int MostTransmitters = 40;

    private static readonly string[] BandWords = ["mhz", "ghz", "to", "between", "and", "from", "or", "till", "through", "avoid", "on"];
    private static readonly string[] ListWords = ["mhz", "and", "check", "on"];
    private static readonly string[] StepWords = ["khz", "mhz", "apart", "steps", "step", "of"];

    public static readonly ReadableOption Count = Number("count", "How many transmitters; the kit's when left out", 1, MostTransmitters, whole: true, ["transmitters", "transmitter", "packs", "bodypacks"],
        (said, count) => said with { Radio = said.Radio with { TransmitterCount = (int)count } });

    public static readonly ReadableOption Range = Text("range", "Where they can be tuned: \"470-494 MHz\"; the kit's when left out", "say it like \"470-494 MHz\" or \"470-494 and 510-520\", within 1 to 6000 MHz", (text, said) =>
    {
        BandSaid[] bands = [.. FrequencyReader.Bands(text.Tokens).Select(b => b.Band)];
        return !text.HasOnly(BandWords) || bands.Length == 0 || bands.Length * 2 != text.Numbers.Count ? OptionReading.NotUnderstood
            : bands.Any(b => b.LowMHz < LowestMHz || b.HighMHz > HighestMHz) ? OptionReading.Refused("is out of range, 1 to 6000 MHz")
            : said with { Radio = said.Radio with { TuningRanges = bands } };
    });

    public static readonly ReadableOption Avoid = Text("avoid", "Bands and carriers to keep clear of: \"482-488, 600.5\"", "say it like \"482-488, 600.5 MHz\", within 1 to 6000 MHz", (text, said) =>
    {
        IReadOnlyList<Token> tokens = text.Behind("avoid", "on");
        RadioSaid read = ChannelReader.Read(tokens, FrequencyReader.Find(tokens)).Said;
        return !text.HasOnly(BandWords) || text.Minus || (read.Excluded.Count * 2) + read.AvoidedMHz.Count != text.Numbers.Count || text.Numbers.Count == 0 ? OptionReading.NotUnderstood
            : read.Excluded.Any(b => b.LowMHz < LowestMHz || b.HighMHz > HighestMHz) || read.AvoidedMHz.Any(f => f is < LowestMHz or > HighestMHz) ? OptionReading.Refused("is out of range, 1 to 6000 MHz")
            : said with { Radio = said.Radio with { Excluded = read.Excluded, AvoidedMHz = read.AvoidedMHz } };
    });

    public static readonly ReadableOption Check = Text("check", "Channels already chosen, to see whether they go together: \"600.0 600.6 601.0\"", "list two or more in MHz, such as \"600.0 600.6 601.0\"", (text, said) =>
    {
        double[] carriers = [.. FrequencyReader.Find(text.Behind("check")).Select(f => f.MHz)];
        return !text.HasOnly(ListWords) || text.Minus || carriers.Length < 2 || carriers.Length != text.Numbers.Count ? OptionReading.NotUnderstood
            : carriers.Length > MostTransmitters ? OptionReading.Refused("has more than 40 channels")
            : carriers.Any(f => f is < LowestMHz or > HighestMHz) ? OptionReading.Refused("has a channel out of range, 1 to 6000 MHz")
            : said with { Radio = said.Radio with { CarriersMHz = carriers, FrequencyMHz = carriers[0] } };
    });

    public static readonly ReadableOption Spacing = KHz("spacing", "Least distance of two channels: \"400 kHz\"; 300 kHz when left out", (said, khz) => said with { Radio = said.Radio with { SpacingKHz = khz } });

    public static readonly ReadableOption Step = KHz("step", "Tuning step: \"25 kHz\"; the kit's when left out", (said, khz) => said with { Radio = said.Radio with { StepKHz = khz } });

    public static readonly ReadableOption FifthOrder = Flag("fifth-order", "Yes keeps clear of fifth-order products too", (said, on) => said with { Radio = said.Radio with { FifthOrder = on } });

    private static ReadableOption KHz(string name, string description, Func<CommandSaid, double, CommandSaid> set) => Text(name, description, "say it like \"25 kHz\", 1 to 10000 kHz", (text, said) =>
    {
        if (text.OnlyNumber(StepWords) is not { } number || !text.Tokens.Any(t => t.Word is "khz" or "mhz"))
        {
            return OptionReading.NotUnderstood;
        }

        double khz = text.Tokens.Any(t => t.Is("mhz")) ? number * 1000 : number;
        return OptionRange.Held(khz, LeastKHz, MostKHz, "1 to 10000 kHz", set(said, khz));
    });
}
