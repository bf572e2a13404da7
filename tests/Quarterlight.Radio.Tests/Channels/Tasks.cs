using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

/// <summary>Invented tasks.</summary>
internal static class Tasks
{
    public const long UnitHz = 25_000, BaseHz = 500_000_000;

    /// <summary>Alike transmitters on a unit grid where any product must miss every carrier by a step.</summary>
    public static CoordinationTask OnChannels(int transmitters, int channels) => new()
    {
        Transmitters = Alike(transmitters, BaseHz, BaseHz + ((channels - 1) * UnitHz)),
        Limits = new CoordinationLimits { MinSpacingHz = UnitHz, ThirdOrderGuardHz = UnitHz },
        NodeLimit = 4_000_000,
    };

    public static ChannelTransmitter[] Alike(int count, long lowHz, long highHz) =>
        [.. Enumerable.Range(1, count).Select(i => new ChannelTransmitter { Id = $"t{i:00}", TuningRanges = [new(lowHz, highHz)], StepHz = UnitHz })];

    public static CheckedCarrier[] Carriers(IEnumerable<double> channels) =>
        [.. channels.Select(c => new CheckedCarrier(FormattableString.Invariant($"c{c}"), BaseHz + ((long)c * UnitHz)))];

    public static CheckedCarrier[] CarriersMHz(params double[] mhz) =>
        [.. mhz.Select(m => new CheckedCarrier(FormattableString.Invariant($"{m}"), (long)Math.Round(m * 1e6)))];
}
