namespace Quarterlight.Endurance.Heat;

/// <summary>What is going on in the cabin.</summary>
internal enum PhaseKind
{
    /// <summary>Shut and empty, cover on.</summary>
    Soak,

    /// <summary>Cooling an empty car, cover on.</summary>
    Precool,

    /// <summary>Cooling between takes, people in, cover on.</summary>
    Cool,

    /// <summary>Rolling: people in, cooling and fan off, cover off.</summary>
    Roll,
}

/// <summary>Steps the cabin through one phase: heat exactly by step, water and carbon dioxide by their own exact balance.</summary>
internal sealed class CabinPhase
{
    // Coldest a coil gets, so that it does not freeze (from memory).
    private const double CoilC = 5;

    private readonly HeatCase _case;
    private readonly double[] _sun;
    private readonly double _sunFactor, _people, _equipmentW, _outsideC, _outsideRatio, _sunToAir;
    private readonly double _leakM3, _fanM3, _fanWPerK, _volume, _powerW, _setC, _coilRatio, _latentPerRatio, _steadyCo2, _perFlow;
    private readonly bool _cooling, _recirculated;
    private readonly Stepper _coarse, _fine;

    public CabinPhase(HeatCase of, double[] sun, PhaseKind kind, double sunFactor = 1, double lossFactor = 1)
    {
        HeatTask task = of.Task;
        _case = of;
        _sun = sun;
        _sunFactor = sunFactor;
        _people = kind is PhaseKind.Roll or PhaseKind.Cool ? OccupantHeat.AdultEquivalents(task.Occupants) : 0;
        _equipmentW = kind == PhaseKind.Soak ? 0 : task.EquipmentW;
        _outsideC = task.Air.TemperatureC;
        _outsideRatio = of.Outside.WaterRatio;
        _volume = task.Car.AirVolumeM3;
        _cooling = kind is PhaseKind.Precool or PhaseKind.Cool;
        _recirculated = task.Cooling.Recirculated;
        _powerW = task.Cooling.PowerW;
        _setC = task.Cooling.SetPointC;
        _fanM3 = _cooling ? task.Cooling.AirflowLPerS / 1000 : 0;
        _fanWPerK = _fanM3 * HumidAir.DensityKgPerM3 * HumidAir.HeatJPerKgK;
        _coilRatio = HumidAir.Ratio(CoilC, 100);
        double speed = kind == PhaseKind.Roll ? task.SpeedKmPerHour : 0, windows = kind == PhaseKind.Roll ? task.OpenWindows : 0;
        _leakM3 = AirChange.FlowM3PerS(_volume, task.Air.WindSpeedMPerS, speed, windows, kind == PhaseKind.Roll && !_recirculated);
        double loss = lossFactor * (AirChange.SkinWPerK(_volume, AirChange.AirSpeedMPerS(task.Air.WindSpeedMPerS, speed))
            + (_leakM3 * HumidAir.DensityKgPerM3 * HumidAir.HeatJPerKgK));
        double exchanged = _leakM3 + (_recirculated ? 0 : _fanM3);
        var nodes = CabinNodes.ForVolume(_volume);
        _sunToAir = nodes.SunToAir;
        _latentPerRatio = _people / (HumidAir.LatentJPerKg * HumidAir.DensityKgPerM3);
        _steadyCo2 = CarbonDioxide.OutsidePpm + (_people * CarbonDioxide.AdultLPerS * 1000 / exchanged);
        _perFlow = 1 / (_leakM3 + _fanM3);
        _coarse = new Stepper(HeatCase.CoarseS, nodes, loss, exchanged, _leakM3 + _fanM3, _volume);
        _fine = new Stepper(1, nodes, loss, exchanged, _leakM3 + _fanM3, _volume);
    }

    /// <summary>The same phase with more sun and another loss to outside.</summary>
    public CabinPhase Loaded(double sunFactor, double lossFactor) => new(_case, _sun, PhaseKind.Roll, sunFactor, lossFactor);

    /// <summary>Sun into the cabin, watts.</summary>
    public double SunW(int second) => _sunFactor * _sun[_case.MinuteIndex(second)];

    /// <summary>Steps on from one second of the day to another.</summary>
    /// <param name="state">The cabin; replaced.</param>
    /// <param name="fromS">First second.</param>
    /// <param name="toS">Last second.</param>
    /// <param name="fine">True steps by single seconds.</param>
    public void Advance(ref CabinState state, int fromS, int toS, bool fine = false)
    {
        int at = fromS;
        while (at < toS)
        {
            // The sun is taken as steady within its minute.
            int until = Math.Min(toS, _case.NextMinuteS(at));
            double sun = SunW(at);
            for (; !fine && at + HeatCase.CoarseS <= until; at += HeatCase.CoarseS)
            {
                Step(_coarse, ref state, sun);
            }

            for (; at < until; at++)
            {
                Step(_fine, ref state, sun);
            }
        }
    }

    private void Step(Stepper by, ref CabinState state, double sun)
    {
        double sensible = _people > 0 ? OccupantHeat.SensibleW(state.AirC) : 0;
        double interiorW = (1 - _sunToAir) * sun, airW = (_sunToAir * sun) + _equipmentW + (_people * sensible);
        double air = state.AirC, interior = state.InteriorC, supplyRatio = state.WaterRatio;
        by.Heat.Step(ref air, ref interior, _outsideC, airW, interiorW);
        if (_cooling)
        {
            double fanW = FanW(by, state.AirC, air, out double use);
            air += fanW * by.Heat.AirPerWatt;
            interior += fanW * by.Heat.InteriorPerWatt;
            double drawn = _recirculated ? state.WaterRatio : _outsideRatio;
            supplyRatio = drawn - (use * Math.Max(0, drawn - _coilRatio));
        }

        // Water: outside through leaks, supply through the fan, people; each flow mixes at once.
        double source = _people > 0 ? _latentPerRatio * OccupantHeat.LatentW(state.AirC) : 0;
        double steadyRatio = ((_leakM3 * _outsideRatio) + (_fanM3 * supplyRatio) + source) * _perFlow;
        double ratio = steadyRatio + ((state.WaterRatio - steadyRatio) * by.WaterKept);
        state = new CabinState(air, interior, ratio, _steadyCo2 + ((state.Co2Ppm - _steadyCo2) * by.Co2Kept));
    }

    // Heat the fan brings into the air, negative when it cools: as much as holds the set point, between full cooling and none. Air from outside is never
    // let chill the cabin below the set point.
    private double FanW(Stepper by, double airC, double withoutC, out double use)
    {
        double drawnC = _recirculated ? airC : _outsideC, free = _recirculated ? 0 : Math.Max(0, _fanWPerK * (drawnC - airC));
        double most = Math.Max(0, Math.Min(_powerW, _fanWPerK * (drawnC - CoilC)));
        double coldest = (_fanWPerK * (drawnC - airC)) - most;
        double wanted = (_setC - withoutC) / by.Heat.AirPerWatt, fanW = Math.Clamp(wanted, Math.Min(coldest, free), free);
        use = most > 0 ? Math.Clamp(((_fanWPerK * (drawnC - airC)) - fanW) / most, 0, 1) : 0;
        return fanW;
    }

    private sealed class Stepper(int seconds, CabinNodes nodes, double loss, double exchangedM3, double mixedM3, double volume)
    {
        public CabinHeatModel Heat { get; } = new(nodes, loss, seconds);

        public double WaterKept { get; } = Math.Exp(-mixedM3 * seconds / volume);

        public double Co2Kept { get; } = Math.Exp(-exchangedM3 * seconds / volume);
    }
}
