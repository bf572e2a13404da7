using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>Puts a link together: the scene's follow car and the kit's link gear, with what the question says on top.</summary>
internal static class LinkSetups
{
    /// <summary>Gap sent when nobody said one and the answer does not rest on it, in metres.</summary>
    public const double NeutralGapM = 50;

    // Heights an antenna gets when only its place was said, in metres above the road: judgement, a car 1.5 m high.
    private const double CabinHeightM = 1.0, GlassHeightM = 1.2, RoofHeightM = 1.6, MastHeightM = 2.5;

    // Beyond broadcast FM the gear made up for a question is taken as digital: judgement.
    private const double LastFmMHz = 108;

    /// <summary>Kit the gear comes from: the one named, else the scene's.</summary>
    public static Kit? KitOf(Asked asked) =>
        asked.Request.Radio.KitName is { } named ? asked.Vocabulary.Kits.FirstOrDefault(k => k.Name == named) : asked.Vocabulary.KitOf(asked.Scene);

    /// <summary>The link gear with what was said; null when the kit has none and the question does not say enough to make one up.</summary>
    /// <param name="asked">The question.</param>
    /// <param name="assumed">Gets what was taken for granted, in words.</param>
    public static LinkGear? Gear(Asked asked, List<string> assumed)
    {
        RadioSaid said = asked.Request.Radio;
        LinkGear? gear = KitOf(asked)?.LinkGear?.Clone();
        if (gear is null)
        {
            if (said.FrequencyMHz is not { } frequency || said.Power is null)
            {
                return null;
            }

            gear = MadeUp(frequency);
            assumed.Add(frequency <= LastFmMHz ? "whips on both roofs and FM taken for granted" : "whips on both roofs and a digital link needing 12 dB in 200 kHz taken for granted");
        }

        gear.FrequencyMhz = said.FrequencyMHz ?? gear.FrequencyMhz;
        if (said.Power is { } power)
        {
            TransmitPowerBasis kept = gear.PowerBasis is TransmitPowerBasis.Unspecified or TransmitPowerBasis.Field ? TransmitPowerBasis.Conducted : gear.PowerBasis;
            (gear.Power, gear.PowerBasis) = (power.Value, power.Basis ?? kept);
            gear.ClearFieldDistanceM();
            if (power.FieldDistanceM is { } distance)
            {
                gear.FieldDistanceM = distance;
            }
        }

        if (said.Stereo is { } stereo)
        {
            if (gear.AnalogueFm is { } fm)
            {
                fm.Stereo = stereo;
            }
            else
            {
                assumed.Add("mono or stereo is one to a digital link");
            }
        }

        gear.TransmitAntenna = Rig(gear.TransmitAntenna, said.TransmitAntenna, "transmitter's antenna", asked.Units, assumed);
        gear.ReceiveAntenna = Rig(gear.ReceiveAntenna, said.ReceiveAntenna, "receiver's antenna", asked.Units, assumed);
        return gear;
    }

    /// <summary>The follow car with what was said; null when the scene has none and no gap was said.</summary>
    /// <param name="asked">The question.</param>
    /// <param name="gapM">Gap to take when nobody said one, in metres; null when one must be known.</param>
    public static FollowCar? FollowCar(Asked asked, double? gapM)
    {
        RadioSaid said = asked.Request.Radio;
        FollowCar? kept = asked.Scene?.FollowCar;
        if (kept is null && said.GapM is null && gapM is null)
        {
            return null;
        }

        FollowCar car = kept?.Clone() ?? new FollowCar();
        car.GapM = said.GapM ?? kept?.GapM ?? gapM ?? 0;
        car.Surroundings = said.Surroundings ?? car.Surroundings;
        car.Sight = said.Sight ?? car.Sight;
        car.CountryCode = asked.Country;
        if (said.AvailabilityFraction is { } availability)
        {
            car.AvailabilityFraction = availability;
        }

        if (said.Stations.Count > 0)
        {
            car.Stations.Clear();
            car.Stations.Add(said.Stations);
        }

        return car;
    }

    /// <summary>Both, at the speed said or the scene's.</summary>
    public static LinkSetup Setup(Asked asked, LinkGear gear, FollowCar followCar) => new()
    {
        Gear = gear,
        FollowCar = followCar,
        SpeedKmPerHour = asked.Request.Radio.SpeedKmPerHour ?? asked.Scene?.DriveConditions?.SpeedKmPerHour ?? 0,
    };

    private static LinkGear MadeUp(double frequencyMHz)
    {
        var gear = new LinkGear
        {
            PowerBasis = TransmitPowerBasis.Conducted,
            TransmitAntenna = new Antenna { Kind = AntennaKind.QuarterWaveWhip, Place = AntennaPlace.OnRoof, HeightM = RoofHeightM, Polarisation = Polarisation.Vertical },
            ReceiveAntenna = new Antenna { Kind = AntennaKind.QuarterWaveWhip, Place = AntennaPlace.OnRoof, HeightM = RoofHeightM, Polarisation = Polarisation.Vertical },
        };
        if (frequencyMHz <= LastFmMHz)
        {
            gear.AnalogueFm = new AnalogueFm();
        }
        else
        {
            gear.Digital = new DigitalLink { RequiredCnDb = 12, BandwidthKhz = 200 };
        }

        return gear;
    }

    private static Antenna? Rig(Antenna? kept, AntennaSaid said, string whose, UnitPreference units, List<string> assumed)
    {
        if (kept is null || said.IsEmpty)
        {
            return kept;
        }

        Antenna antenna = kept.Clone();
        if (said.Place is { } place && place != kept.Place)
        {
            antenna.Place = place;

            // What the car took away at the old place says nothing of the new one.
            antenna.ClearShieldingDb();
            antenna.Kind = KindAt(place, kept.Kind);
            antenna.HeightM = place switch
            {
                AntennaPlace.OnMast => Math.Max(kept.HeightM, MastHeightM),
                AntennaPlace.OnRoof => RoofHeightM,
                AntennaPlace.OnGlass => GlassHeightM,
                _ => CabinHeightM,
            };
        }

        antenna.HeightM = said.HeightM ?? antenna.HeightM;
        assumed.Add($"{whose} {RadioWordings.Place(antenna.Place)} at {UnitText.Length(antenna.HeightM, units)}{(antenna.Kind != kept.Kind ? $" as a {RadioWordings.Kind(antenna.Kind)}" : "")}");
        return antenna;
    }

    // A wire along the trim or a film on glass does not go onto a roof, nor does a roof whip go along the trim.
    private static AntennaKind KindAt(AntennaPlace place, AntennaKind kind) => (place, kind) switch
    {
        (AntennaPlace.OnRoof or AntennaPlace.OnMast, AntennaKind.HiddenWire or AntennaKind.GlassFilm) => AntennaKind.QuarterWaveWhip,
        (AntennaPlace.InCabin, AntennaKind.QuarterWaveWhip or AntennaKind.GlassFilm) => AntennaKind.HiddenWire,
        (AntennaPlace.OnGlass, AntennaKind.QuarterWaveWhip or AntennaKind.HiddenWire) => AntennaKind.GlassFilm,
        _ => kind,
    };

    /// <summary>What the question changes, in words, for the line that says what was understood.</summary>
    public static string Said(Asked asked, LinkSetup setup, IReadOnlyList<string> assumed)
    {
        FollowCar car = setup.FollowCar;
        var parts = new List<string>
        {
            Say($"{RadioWordings.Frequency(setup.Gear.FrequencyMhz)}, {RadioWordings.Power(setup.Gear)}{(setup.Gear.AnalogueFm is { } fm ? fm.Stereo ? ", stereo" : ", mono" : "")}"),
            Say($"gap {UnitText.Distance(car.GapM, asked.Units)}{Lengths(asked)}"),
            RadioWordings.Surroundings(car.Surroundings),
        };
        if (car.Sight > LinkSight.Clear)
        {
            parts.Add(RadioWordings.Sight(car.Sight));
        }

        parts.Add(setup.SpeedKmPerHour > 0 ? UnitText.Speed(setup.SpeedKmPerHour, asked.Units) : "standing still");
        parts.Add(car.CountryCode.Length > 0 ? CountryReader.Say(car.CountryCode) : "country not known");
        if (car.Stations.Count > 0)
        {
            parts.Add(Say($"{car.Stations.Count} {(car.Stations.Count == 1 ? "station" : "stations")} heard"));
        }

        parts.AddRange(assumed);
        return string.Join(", ", parts);
    }

    private static string Lengths(Asked asked) => asked.Request.Radio.CarLengths is { } lengths
        ? Say($" ({lengths:0.#} car lengths at {UnitText.Distance(DistanceReader.MetresPerCarLength, asked.Units)} each)") : "";
}
