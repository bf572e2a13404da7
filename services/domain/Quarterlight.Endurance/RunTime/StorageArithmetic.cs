namespace Quarterlight.Endurance.RunTime;

/// <summary>Plain arithmetic of data and energy. Megabytes and gigabytes are 10^6 and 10^9 bytes; 4 GiB is 2^32.</summary>
public static class StorageArithmetic
{
    /// <summary>Bytes at which a file with 32 bit sizes is full.</summary>
    public const double FileLimitBytes = 4294967296;

    private const double SecondsPerMinute = 60;
    private const double MinutesPerHour = 60;

    /// <summary>Bytes of one sample: 2, 3 or 4.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The format is none of the three.</exception>
    public static int BytesPerSample(SampleFormat format) => format switch
    {
        SampleFormat.Integer16 => 2,
        SampleFormat.Integer24 => 3,
        SampleFormat.FloatingPoint32 => 4,
        _ => throw new ArgumentOutOfRangeException(nameof(format), format, "One of the three formats."),
    };

    /// <summary>Data of all tracks of one copy, bytes a second: tracks times bytes times rate.</summary>
    public static double BytesPerSecond(RecordingMedia media)
    {
        ArgumentNullException.ThrowIfNull(media);
        return (double)media.TrackCount * BytesPerSample(media.SampleFormat) * media.SampleRateHz;
    }

    /// <summary>Minutes of recording on one card. What file system and headers take is in the margin.</summary>
    public static double CardMinutes(RecordingMedia media)
    {
        ArgumentNullException.ThrowIfNull(media);
        return media.CardSizeGB * 1e9 / BytesPerSecond(media) / SecondsPerMinute;
    }

    /// <summary>Minutes until one file reaches 4 GiB.</summary>
    public static double FileLimitMinutes(RecordingMedia media) => FileLimitBytes / BytesPerSecond(media) / SecondsPerMinute;

    /// <summary>Minutes a set of batteries lasts.</summary>
    /// <param name="energyWh">Rated energy of the set, watt-hours.</param>
    /// <param name="share">Share of it that temperature and age leave, 0 to 1.</param>
    /// <param name="powerW">Draw, watts, above 0.</param>
    /// <param name="marginFraction">Share kept back, 0 up to but not including 1.</param>
    public static double BatteryMinutes(double energyWh, double share, double powerW, double marginFraction) =>
        energyWh * share * (1 - marginFraction) / powerW * MinutesPerHour;
}
