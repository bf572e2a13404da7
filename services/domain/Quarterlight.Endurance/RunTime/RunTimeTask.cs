namespace Quarterlight.Endurance.RunTime;

/// <summary>What a battery is made of.</summary>
public enum BatteryChemistry
{
    /// <summary>Lithium-ion.</summary>
    LithiumIon,

    /// <summary>Lithium iron phosphate.</summary>
    LithiumIronPhosphate,

    /// <summary>Nickel-metal hydride.</summary>
    NickelMetalHydride,

    /// <summary>Alkaline, not rechargeable.</summary>
    Alkaline,

    /// <summary>Lithium, not rechargeable.</summary>
    LithiumPrimary,

    /// <summary>Lead-acid.</summary>
    LeadAcid,
}

/// <summary>A kind of battery and how many charged ones there are.</summary>
/// <param name="Id">Id within the kit.</param>
/// <param name="DisplayName">What the crew calls it.</param>
/// <param name="Chemistry">What it is made of.</param>
/// <param name="EnergyWh">Energy when new, watt-hours, 0.5 to 5000.</param>
/// <param name="AgeYears">Age, years, 0 to 15.</param>
/// <param name="Count">Charged ones, 1 to 200.</param>
public sealed record Battery(string Id, string DisplayName, BatteryChemistry Chemistry, double EnergyWh, double AgeYears, int Count);

/// <summary>A device in the car that runs from batteries.</summary>
/// <param name="Id">Id within the kit.</param>
/// <param name="DisplayName">What the crew calls it.</param>
/// <param name="PowerW">Draw, watts, 0.01 to 500.</param>
/// <param name="BatteryId">Battery of the kit.</param>
/// <param name="BatteryCount">Batteries it holds at once, 1 to 24.</param>
/// <param name="Count">Such devices, 1 to 40.</param>
public sealed record PoweredDevice(string Id, string DisplayName, double PowerW, string BatteryId, int BatteryCount, int Count);

/// <summary>How a sample is kept.</summary>
public enum SampleFormat
{
    /// <summary>16 bit integer.</summary>
    Integer16,

    /// <summary>24 bit integer.</summary>
    Integer24,

    /// <summary>32 bit floating point.</summary>
    FloatingPoint32,
}

/// <summary>What is recorded and onto what.</summary>
public sealed record RecordingMedia
{
    /// <summary>Tracks, 1 to 64.</summary>
    public required int TrackCount { get; init; }

    /// <summary>Samples a second, 8000 to 384000. Default 48000.</summary>
    public int SampleRateHz { get; init; } = 48000;

    /// <summary>How a sample is kept.</summary>
    public SampleFormat SampleFormat { get; init; } = SampleFormat.Integer24;

    /// <summary>Size of one card, gigabytes of 10^9 bytes, 0.5 to 16000.</summary>
    public required double CardSizeGB { get; init; }

    /// <summary>Cards there are, 1 to 100.</summary>
    public required int CardCount { get; init; }

    /// <summary>Cards written at once with the same, 1 to 4. Default 1.</summary>
    public int CopyCount { get; init; } = 1;

    /// <summary>Slowest steady writing of a card, megabytes of 10^6 bytes a second, 0.1 to 10000; null is not checked.</summary>
    public double? WriteSpeedMBPerS { get; init; }

    /// <summary>True when one file may grow beyond 4 GiB.</summary>
    public bool LargeFiles { get; init; }
}

/// <summary>Everything one question about batteries and media is about.</summary>
public sealed record RunTimeTask
{
    /// <summary>Batteries, at most 20 kinds, ids distinct.</summary>
    public IReadOnlyList<Battery> Batteries { get; init; } = [];

    /// <summary>Devices, at most 20 kinds, ids distinct.</summary>
    public IReadOnlyList<PoweredDevice> Devices { get; init; } = [];

    /// <summary>What is recorded; null when not known.</summary>
    public RecordingMedia? Media { get; init; }

    /// <summary>Share kept back for safety, 0 to 0.6. Default 0.2 (judgement).</summary>
    public double MarginFraction { get; init; } = 0.2;

    /// <summary>Temperature of the batteries, degrees Celsius, -40 to 80. Default 20.</summary>
    public double BatteryC { get; init; } = 20;

    /// <summary>True records in takes only; false lets the recorder run all day.</summary>
    public bool TakesOnly { get; init; }

    /// <summary>Length of the day, minutes, 1 to 1440. Default 240.</summary>
    public double DurationMin { get; init; } = 240;

    /// <summary>The call sheet, at most 200, in time order and not overlapping.</summary>
    public IReadOnlyList<PlannedTake> Takes { get; init; } = [];
}
