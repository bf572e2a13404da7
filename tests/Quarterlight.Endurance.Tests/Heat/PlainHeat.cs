using Quarterlight.Endurance.Heat;

namespace Quarterlight.Endurance.Tests.Heat;

/// <summary>The heat forecast the plain way: forward Euler by single seconds, every pair of roll and cool tried in turn, every limit at every step. For
/// comparison only.</summary>
internal sealed class PlainHeat(HeatTask task)
{
    private readonly HeatLimits _limits = new(task);
    private readonly int _day = (int)(task.DurationMin * 60), _soak = (int)(task.SoakMin * 60);
    private readonly Dictionary<int, (double Roll, double Cover, bool Sunlit)> _sun = [];

    public int?[] LimitS { get; } = new int?[3];

    public int RollS { get; private set; }

    public int CoolS { get; private set; }

    public int RolledS { get; private set; }

    /// <summary>Runs it; rolls shorter than 3 minutes and breaks shorter than 2 are not tried.</summary>
    public PlainHeat Run()
    {
        double outside = task.Air.TemperatureC, ratio = HumidAir.Ratio(outside, task.Air.RelativeHumidityPercent);
        var state = new CabinState(outside, outside, ratio, CarbonDioxide.OutsidePpm);
        for (int at = -_soak; at < 0; at++)
        {
            Step(ref state, at, PhaseKind.Soak);
        }

        var cooled = new List<CabinState> { state };
        int last = Math.Min(3600, _day), start = last;
        bool air = false;
        for (int at = 0; at <= last; at++)
        {
            if (at % 30 == 0 && at < start)
            {
                air |= state.AirC <= task.Cooling.SetPointC + 0.5;
                double rest = Math.Max(task.Cooling.SetPointC, state.AirC) + (0.3 * Sun(at).Cover / CabinNodes.ForVolume(task.Car.AirVolumeM3).InteriorWPerK);
                start = air && state.InteriorC <= rest + 3 ? at : start;
            }

            Step(ref state, at, PhaseKind.Precool);
            cooled.Add(state);
        }

        state = cooled[start];
        for (int at = start; at <= _day; at++)
        {
            for (int k = 0; k < 3; k++)
            {
                LimitS[k] ??= Over((HeatLimitKind)k, state, at) ? at - start : null;
            }

            Step(ref state, at, PhaseKind.Roll);
        }

        for (int roll = 180; roll <= 14400 && roll <= _day; roll += 30)
        {
            int first = start;
            while (first <= last && !Keeps(cooled[first], first, roll, _day))
            {
                first += 30;
            }

            int cool = 120;
            while (first <= last && cool <= 3600 && !Keeps(cooled[first], first, roll, cool))
            {
                cool += 30;
            }

            if (first > last || cool > 3600)
            {
                break;
            }

            int rolled = ((_day - first) / (roll + cool) * roll) + Math.Min((_day - first) % (roll + cool), roll);
            if (rolled >= RolledS)
            {
                (RollS, CoolS, RolledS) = (roll, cool, rolled);
            }
        }

        return this;
    }

    private bool Keeps(CabinState state, int from, int roll, int cool)
    {
        for (int at = from; at <= _day; at++)
        {
            int within = (at - from) % (roll + cool);
            if (within <= roll && Over(task.RhythmLimit, state, at))
            {
                return false;
            }

            if (within == roll && cool >= _day)
            {
                return true;
            }

            Step(ref state, at, within < roll ? PhaseKind.Roll : PhaseKind.Cool);
        }

        return true;
    }

    private bool Over(HeatLimitKind kind, in CabinState state, int at)
    {
        (double roll, _, bool sunlit) = Sun(at);
        return (_limits.Strictest ? _limits.OverStrictest(state, roll, sunlit) : _limits.Over(kind, state, roll, sunlit)) != HeatCause.None;
    }

    private (double Roll, double Cover, bool Sunlit) Sun(int at)
    {
        int minute = (int)Math.Floor(at / 60.0);
        if (!_sun.TryGetValue(minute, out (double, double, bool) sun))
        {
            PaneLight light = SunTable.At(task, task.HeadingDeg, minute + 0.5);
            (double direct, double diffuse) = ShadeFactors.Of(task.Shade);
            (double windscreen, double other) = ShadeFactors.Of(task.Cover);
            double glass = GlassTransmission.Normal(task.Glass);
            double front = glass * ((direct * light.WindscreenDirectW) + (diffuse * light.WindscreenDiffuseW)), rest = glass * ((direct * light.OtherDirectW) + (diffuse * light.OtherDiffuseW));
            sun = (front + rest, (windscreen * front) + (other * rest), glass * direct * (light.WindscreenDirectW + light.OtherDirectW) > 20);
            _sun[minute] = sun;
        }

        return sun;
    }

    private void Step(ref CabinState s, int at, PhaseKind kind)
    {
        const double Heat = HumidAir.DensityKgPerM3 * HumidAir.HeatJPerKgK;
        bool rolling = kind == PhaseKind.Roll, cooling = kind is PhaseKind.Precool or PhaseKind.Cool;
        double volume = task.Car.AirVolumeM3, people = kind is PhaseKind.Roll or PhaseKind.Cool ? OccupantHeat.AdultEquivalents(task.Occupants) : 0;
        double speed = rolling ? task.SpeedKmPerHour : 0, outside = task.Air.TemperatureC, fan = cooling ? task.Cooling.AirflowLPerS / 1000 : 0;
        double leak = AirChange.FlowM3PerS(volume, task.Air.WindSpeedMPerS, speed, rolling ? task.OpenWindows : 0, rolling && !task.Cooling.Recirculated);
        double loss = AirChange.SkinWPerK(volume, AirChange.AirSpeedMPerS(task.Air.WindSpeedMPerS, speed)) + (leak * Heat);
        var nodes = CabinNodes.ForVolume(volume);
        (double roll, double cover, _) = Sun(at);
        double sun = rolling ? roll : cover, exchange = nodes.InteriorWPerK * (s.InteriorC - s.AirC);
        double air = s.AirC + (((nodes.SunToAir * sun) + (kind == PhaseKind.Soak ? 0 : task.EquipmentW) + (people * OccupantHeat.SensibleW(s.AirC)) - (loss * (s.AirC - outside)) + exchange) / nodes.AirJPerK);
        double outsideRatio = HumidAir.Ratio(outside, task.Air.RelativeHumidityPercent), supply = outsideRatio;
        if (cooling)
        {
            double drawn = task.Cooling.Recirculated ? s.AirC : outside, drawnRatio = task.Cooling.Recirculated ? s.WaterRatio : outsideRatio;
            double load = fan * Heat * (drawn - s.AirC), most = Math.Max(0, Math.Min(task.Cooling.PowerW, fan * Heat * (drawn - 5)));
            double highest = Math.Max(0, load), held = Math.Clamp((task.Cooling.SetPointC - air) * nodes.AirJPerK, Math.Min(load - most, highest), highest);
            air += held / nodes.AirJPerK;
            supply = drawnRatio - ((most > 0 ? Math.Clamp((load - held) / most, 0, 1) : 0) * Math.Max(0, drawnRatio - HumidAir.Ratio(5, 100)));
        }

        double interior = s.InteriorC + ((((1 - nodes.SunToAir) * sun) - exchange) / nodes.InteriorJPerK);
        double water = s.WaterRatio + (((leak * (outsideRatio - s.WaterRatio)) + (fan * (supply - s.WaterRatio)) + (people * OccupantHeat.LatentW(s.AirC) / HumidAir.LatentJPerKg / HumidAir.DensityKgPerM3)) / volume);
        double exchanged = leak + (task.Cooling.Recirculated ? 0 : fan);
        double co2 = s.Co2Ppm + (((people * CarbonDioxide.AdultLPerS * 1000) - (exchanged * (s.Co2Ppm - CarbonDioxide.OutsidePpm))) / volume);
        s = new CabinState(air, interior, water, co2);
    }
}
