namespace Quarterlight.Endurance.Heat;

/// <summary>How much of the sun the glass lets in.</summary>
public enum GlassKind
{
    /// <summary>Clear.</summary>
    Clear,

    /// <summary>Lightly tinted, as most cars have it.</summary>
    Tinted,

    /// <summary>With a solar-control coating.</summary>
    SolarControl,
}

/// <summary>What keeps the sun off the whole car, also while rolling.</summary>
public enum CarShade
{
    /// <summary>Full sun.</summary>
    None,

    /// <summary>Broken shade, as under trees or along a street.</summary>
    Broken,

    /// <summary>Under a pop-up canopy: no direct sun, much of the sky.</summary>
    PopUp,

    /// <summary>Deep shade of a building or a hall.</summary>
    Full,
}

/// <summary>What is put on the car between takes and comes off to roll.</summary>
public enum SunCover
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Reflective screen behind the windscreen.</summary>
    Windscreen,

    /// <summary>Reflective cover over all glass.</summary>
    AllGlass,
}

/// <summary>Up to where a rhythm may go.</summary>
public enum HeatLimitKind
{
    /// <summary>People stay comfortable: PMV within 0.7 of neutral, ISO 7730 category C.</summary>
    Comfort,

    /// <summary>Occupational caution: recommended alert limit, heat index caution, or stale air.</summary>
    Caution,

    /// <summary>Stop: recommended exposure limit, heat index danger, or foul air. Never a goal of a rhythm.</summary>
    Stop,
}

/// <summary>The air outside.</summary>
/// <param name="TemperatureC">Air temperature in the shade, degrees Celsius, -30 to 55.</param>
/// <param name="RelativeHumidityPercent">Relative humidity, percent, 1 to 100.</param>
/// <param name="WindSpeedMPerS">Wind, m/s, 0 to 30.</param>
/// <param name="CloudFraction">Share of the sky under cloud, 0 to 1.</param>
public sealed record OutsideAir(double TemperatureC, double RelativeHumidityPercent, double WindSpeedMPerS = 0, double CloudFraction = 0);

/// <summary>A pane of glass of the car.</summary>
/// <param name="Id">windscreen, rear, roof, or the name of a side window.</param>
/// <param name="AreaM2">Area in square metres, above 0.</param>
/// <param name="BearingDeg">Where its outside faces, degrees clockwise from straight ahead, 0 to 360: 0 windscreen, 90 right side.</param>
/// <param name="TiltDeg">Angle of its outward normal from straight up, degrees: 0 a glass roof, 90 upright glass.</param>
public sealed record GlassPane(string Id, double AreaM2, double BearingDeg, double TiltDeg);

/// <summary>What the heat model needs to know of a car.</summary>
/// <param name="AirVolumeM3">Air in the cabin, cubic metres, above 0.</param>
/// <param name="Panes">All glass.</param>
public sealed record HeatCar(double AirVolumeM3, IReadOnlyList<GlassPane> Panes);

/// <summary>Who sits in the car during takes.</summary>
public sealed record Occupants
{
    /// <summary>Adults, 0 to 9.</summary>
    public int AdultCount { get; init; } = 2;

    /// <summary>Children, 0 to 9.</summary>
    public int ChildCount { get; init; }

    /// <summary>Animals, 0 to 9.</summary>
    public int AnimalCount { get; init; }

    /// <summary>Clothing insulation in clo, 0 to 2. Default 0.6.</summary>
    public double ClothingClo { get; init; } = 0.6;

    /// <summary>Metabolic rate in met, 0.8 to 4. Default 1.2: seated and talking.</summary>
    public double ActivityMet { get; init; } = 1.2;

    /// <summary>True when they are used to heat by a week or more of work in it.</summary>
    public bool Acclimatised { get; init; }

    /// <summary>True when none of them can open a door from inside.</summary>
    public bool NobodyCanOpenADoor { get; init; }

    /// <summary>True when the strictest limit is the only one: children, animals, or people shut in.</summary>
    public bool NeedStrictestLimit => ChildCount > 0 || AnimalCount > 0 || NobodyCanOpenADoor;
}

/// <summary>How the car is cooled before and between takes. The fan is off while rolling.</summary>
public sealed record CoolingSystem
{
    /// <summary>Heat it takes out of the cabin at full fan, watts, 0 to 15000. Default 3500 (from memory).</summary>
    public double PowerW { get; init; } = 3500;

    /// <summary>Air temperature to cool to, degrees Celsius, 5 to 30. Default 18.3 (65 F; common practice, no source).</summary>
    public double SetPointC { get; init; } = 18.3;

    /// <summary>Air moved at full fan, litres a second, 5 to 300. Default 100 (from memory).</summary>
    public double AirflowLPerS { get; init; } = 100;

    /// <summary>True when it takes cabin air again instead of fresh air.</summary>
    public bool Recirculated { get; init; }
}

/// <summary>Everything one question about heat is about.</summary>
public sealed record HeatTask
{
    /// <summary>When shooting starts, with the local offset from UTC.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>How long the day is, minutes, 10 to 720. Default 240.</summary>
    public double DurationMin { get; init; } = 240;

    /// <summary>Latitude, degrees, north positive, -90 to 90.</summary>
    public required double LatitudeDeg { get; init; }

    /// <summary>Longitude, degrees, east positive, -180 to 180.</summary>
    public required double LongitudeDeg { get; init; }

    /// <summary>The air outside.</summary>
    public required OutsideAir Air { get; init; }

    /// <summary>The car.</summary>
    public required HeatCar Car { get; init; }

    /// <summary>Compass heading of the car, degrees, 0 to 360; null when it turns: the mean of all headings.</summary>
    public double? HeadingDeg { get; init; }

    /// <summary>What the glass lets in.</summary>
    public GlassKind Glass { get; init; } = GlassKind.Tinted;

    /// <summary>Shade over the car.</summary>
    public CarShade Shade { get; init; }

    /// <summary>Cover between takes.</summary>
    public SunCover Cover { get; init; }

    /// <summary>Minutes the car stood shut before the start, 0 to 600. Default 60.</summary>
    public double SoakMin { get; init; } = 60;

    /// <summary>Lamps and electronics in the cabin, watts, 0 to 3000.</summary>
    public double EquipmentW { get; init; }

    /// <summary>Speed while rolling, km/h, 0 to 130.</summary>
    public double SpeedKmPerHour { get; init; }

    /// <summary>How far the side windows are down while rolling, all together, 0 (shut) to 4 (four all the way).</summary>
    public double OpenWindows { get; init; }

    /// <summary>Who sits in it.</summary>
    public Occupants Occupants { get; init; } = new();

    /// <summary>How it is cooled.</summary>
    public CoolingSystem Cooling { get; init; } = new();

    /// <summary>Limit the rhythm keeps: comfort or caution.</summary>
    public HeatLimitKind RhythmLimit { get; init; } = HeatLimitKind.Comfort;

    /// <summary>Length of a take the rhythm is for, minutes, 0.5 to 240; null searches the best.</summary>
    public double? RollMin { get; init; }
}
