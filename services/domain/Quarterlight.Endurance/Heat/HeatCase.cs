namespace Quarterlight.Endurance.Heat;

/// <summary>One question worked up for stepping: the sun by the minute, and the phases of a day.</summary>
internal sealed class HeatCase
{
    /// <summary>Seconds a step of the search has; the report itself is stepped at one second.</summary>
    public const int CoarseS = 30;

    // Direct light through the glass that counts as sitting in the sun.
    private const double SunlitW = 20;

    private readonly double[] _rollSun, _coverSun;
    private readonly bool[] _sunlit;
    private readonly int _firstS;

    /// <summary>Works up a task.</summary>
    /// <param name="task">The question.</param>
    /// <param name="table">Light, long enough for soak and day.</param>
    /// <param name="shiftMin">Minutes the day starts later than the table's (earlier when negative).</param>
    public HeatCase(HeatTask task, SunTable table, double shiftMin = 0)
    {
        Task = task;
        SoakS = (int)Math.Round(task.SoakMin * 60);
        DayS = (int)Math.Round(task.DurationMin * 60);
        _firstS = -((SoakS + 59) / 60 * 60);
        int minutes = ((DayS - _firstS) / 60) + 2;
        _rollSun = new double[minutes];
        _coverSun = new double[minutes];
        _sunlit = new bool[minutes];
        double glass = GlassTransmission.Normal(task.Glass);
        (double direct, double diffuse) = ShadeFactors.Of(task.Shade);
        (double windscreen, double other) = ShadeFactors.Of(task.Cover);
        for (int i = 0; i < minutes; i++)
        {
            PaneLight light = table.At(shiftMin + (_firstS / 60) + i + 0.5);
            double front = glass * ((direct * light.WindscreenDirectW) + (diffuse * light.WindscreenDiffuseW));
            double rest = glass * ((direct * light.OtherDirectW) + (diffuse * light.OtherDiffuseW));
            _rollSun[i] = front + rest;
            _coverSun[i] = (windscreen * front) + (other * rest);
            _sunlit[i] = glass * direct * (light.WindscreenDirectW + light.OtherDirectW) > SunlitW;
        }

        Soak = new CabinPhase(this, _coverSun, PhaseKind.Soak);
        Precool = new CabinPhase(this, _coverSun, PhaseKind.Precool);
        Cool = new CabinPhase(this, _coverSun, PhaseKind.Cool);
        Roll = new CabinPhase(this, _rollSun, PhaseKind.Roll);
    }

    public HeatTask Task { get; }

    public int SoakS { get; }

    public int DayS { get; }

    public CabinPhase Soak { get; }

    public CabinPhase Precool { get; }

    public CabinPhase Cool { get; }

    public CabinPhase Roll { get; }

    /// <summary>The cabin before the soak: as outside.</summary>
    public CabinState Outside
    {
        get
        {
            OutsideAir air = Task.Air;
            return new CabinState(air.TemperatureC, air.TemperatureC, HumidAir.Ratio(air.TemperatureC, air.RelativeHumidityPercent), CarbonDioxide.OutsidePpm);
        }
    }

    /// <summary>Index of the minute that a second of the day falls in.</summary>
    public int MinuteIndex(int second) => Math.Clamp((second - _firstS) / 60, 0, _rollSun.Length - 1);

    /// <summary>Second at which the next minute begins; the sun is taken as steady within one.</summary>
    public int NextMinuteS(int second) => ((((second - _firstS) / 60) + 1) * 60) + _firstS;

    /// <summary>Sun into the cabin while rolling, watts.</summary>
    public double RollSunW(int second) => _rollSun[MinuteIndex(second)];

    /// <summary>Sun into the cabin with the cover on, watts.</summary>
    public double CoverSunW(int second) => _coverSun[MinuteIndex(second)];

    /// <summary>True when people without a cover sit in the sun.</summary>
    public bool IsSunlit(int second) => _sunlit[MinuteIndex(second)];
}
