using Quarterlight.Radio.Law;
using Quarterlight.Radio.Link;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Planner.Mapping;

/// <summary>Link gear, follow cars and whole links, from the contract.</summary>
internal static class LinkMapper
{
    private const double DefaultDeEmphasisMicroseconds = 50;

    // What the words of the contract stand for, in dB over a microvolt per metre. Judgement: about what planners call barely heard, served in the
    // country, and near the mast.
    private static readonly double[] s_strengthDbuvPerM = [30, 50, 75];

    /// <summary>A whole link; null when a part is missing. Everything wrong with it is noted.</summary>
    public static LinkTask? ToDomain(V1.LinkSetup? setup, string at, FieldReader reader)
    {
        if (setup is null)
        {
            reader.Add(at, "there is no link", "Send its gear and the follow car");
            return null;
        }

        return ToDomain(setup.Gear, $"{at}.gear", setup.FollowCar, $"{at}.follow_car", setup.SpeedKmPerHour, $"{at}.speed_km_per_hour", reader);
    }

    /// <summary>The same from parts that have paths of their own.</summary>
    public static LinkTask? ToDomain(V1.LinkGear? gear, string gearAt, V1.FollowCar? follow, string followAt, double speedKmPerHour, string speedAt, FieldReader reader)
    {
        int before = reader.Violations.Count;
        LinkGear? domainGear = gear is null ? null : Gear(gear, gearAt, follow?.CountryCode ?? "", reader);
        if (gear is null)
        {
            reader.Add(gearAt, "the gear is missing", "Send transmitter and receiver");
        }

        if (follow is null)
        {
            reader.Add(followAt, "the follow car is missing", "Send at least its gap");
        }

        if (domainGear is null || follow is null)
        {
            return null;
        }

        LinkTask task = Follow(follow, followAt, reader) with { Gear = domainGear, SpeedKmPerHour = speedKmPerHour };
        if (reader.Violations.Count == before)
        {
            reader.Violations.AddRange(LinkRules.Validate(task).Select(v => v with { Field = Renamed(v.Field, gearAt, followAt, speedAt) }));
        }

        return task;
    }

    /// <summary>Checks gear that is kept with a kit.</summary>
    public static void CheckGear(V1.LinkGear gear, string at, FieldReader reader)
    {
        int before = reader.Violations.Count;
        LinkGear? domain = Gear(gear, at, "", reader);
        if (domain is not null && reader.Violations.Count == before)
        {
            reader.Violations.AddRange(LinkRules.ValidateGear(domain, at));
        }
    }

    /// <summary>Checks a follow car that is kept with a scene.</summary>
    public static void CheckFollow(V1.FollowCar follow, string at, FieldReader reader)
    {
        int before = reader.Violations.Count;
        LinkTask task = Follow(follow, at, reader);
        if (reader.Violations.Count == before)
        {
            reader.Violations.AddRange(LinkRules.ValidateFollow(task, at));
        }
    }

    private static LinkTask Follow(V1.FollowCar follow, string at, FieldReader reader)
    {
        var stations = new List<HeardStation>();
        for (int i = 0; i < follow.Stations.Count; i++)
        {
            stations.Add(Station(follow.Stations[i], $"{at}.stations[{i}]", reader));
        }

        return new LinkTask
        {
            Gear = null!, // Put in by the caller.
            GapM = follow.GapM,
            Surroundings = reader.Enum($"{at}.surroundings", follow.Surroundings, (Surroundings?)Surroundings.OpenRoad),
            Ground = reader.Enum($"{at}.ground", follow.Ground, (GroundKind?)GroundKind.Average),
            Sight = reader.Enum($"{at}.sight", follow.Sight, (LinkSight?)LinkSight.Clear),
            CountryCode = follow.CountryCode.Trim(),
            Stations = stations,
            AvailabilityFraction = follow.HasAvailabilityFraction ? follow.AvailabilityFraction : LinkTask.UsualAvailabilityFraction,
        };
    }

    private static HeardStation Station(V1.HeardStation station, string at, FieldReader reader)
    {
        bool worded = station.Strength != V1.StationStrength.Unspecified;
        if (worded == station.HasFieldDbuvPerM)
        {
            reader.Add($"{at}.field_dbuv_per_m", worded ? "the strength is given twice" : "the strength is missing", "Give either the field or the strength in words");
            return new HeardStation(station.FrequencyMhz, 0);
        }

        double field = station.HasFieldDbuvPerM ? station.FieldDbuvPerM : s_strengthDbuvPerM[Math.Clamp((int)station.Strength - 1, 0, 2)];
        if (worded && !Enum.IsDefined(station.Strength))
        {
            reader.Add($"{at}.strength", $"{(int)station.Strength} is not one of the choices", "Choose one of: Faint, Clear, Strong");
        }

        return new HeardStation(station.FrequencyMhz, field);
    }

    private static LinkGear? Gear(V1.LinkGear gear, string at, string country, FieldReader reader)
    {
        Emission? emission = gear.EmissionCase switch
        {
            V1.LinkGear.EmissionOneofCase.AnalogueFm => Fm(gear.AnalogueFm, country),
            V1.LinkGear.EmissionOneofCase.Digital => new DigitalLink
            {
                RequiredCnDb = gear.Digital.RequiredCnDb,
                FilterBandwidthKHz = gear.Digital.BandwidthKhz,
                LatencyMs = gear.Digital.HasLatencyMs ? gear.Digital.LatencyMs : null,
            },
            _ => null,
        };
        if (emission is null)
        {
            reader.Add($"{at}.emission", "it is not said what is sent", "Fill in analogue_fm or digital");
        }

        Antenna? transmit = ToDomain(gear.TransmitAntenna, $"{at}.transmit_antenna", reader), receive = ToDomain(gear.ReceiveAntenna, $"{at}.receive_antenna", reader);
        TransmitPowerBasis basis = reader.Enum<TransmitPowerBasis>($"{at}.power_basis", gear.PowerBasis);
        return emission is null || transmit is null || receive is null ? null : new LinkGear
        {
            FrequencyMHz = gear.FrequencyMhz,
            PowerBasis = basis,
            Power = gear.Power,
            FieldDistanceM = gear.HasFieldDistanceM ? gear.FieldDistanceM : null,
            TransmitAntenna = transmit,
            ReceiveAntenna = receive,
            NoiseFigureDb = gear.HasNoiseFigureDb ? gear.NoiseFigureDb : LinkGear.UsualNoiseFigureDb,
            Emission = emission,
        };
    }

    private static AnalogueFm Fm(V1.AnalogueFm fm, string country)
    {
        var standard = new AnalogueFm();
        return new AnalogueFm
        {
            DeviationKHz = fm.HasDeviationKhz ? fm.DeviationKhz : standard.DeviationKHz,
            AudioBandwidthKHz = fm.HasAudioBandwidthKhz ? fm.AudioBandwidthKhz : standard.AudioBandwidthKHz,
            DeEmphasisMicroseconds = fm.HasDeEmphasisUs ? fm.DeEmphasisUs : LawBook.Find(country)?.FmDeEmphasisMicroseconds ?? DefaultDeEmphasisMicroseconds,
            FilterBandwidthKHz = fm.HasFilterBandwidthKhz ? fm.FilterBandwidthKhz : standard.FilterBandwidthKHz,
            Stereo = fm.Stereo,
            TargetSnrDb = fm.HasTargetSnrDb ? fm.TargetSnrDb : standard.TargetSnrDb,
        };
    }

    private static Antenna? ToDomain(V1.Antenna? antenna, string at, FieldReader reader)
    {
        if (antenna is null)
        {
            reader.Add(at, "the antenna is missing", "Give its kind, place and height");
            return null;
        }

        return new Antenna
        {
            Kind = reader.Enum<AntennaKind>($"{at}.kind", antenna.Kind),
            Place = reader.Enum<AntennaPlace>($"{at}.place", antenna.Place),
            HeightM = antenna.HeightM,
            Polarisation = reader.Enum($"{at}.polarisation", antenna.Polarisation, (Polarisation?)Polarisation.Vertical),
            StatedGainDbi = antenna.HasGainDbi ? antenna.GainDbi : null,
            FeederLossDb = antenna.HasFeederLossDb ? antenna.FeederLossDb : 0,
            StatedShieldingDb = antenna.HasShieldingDb ? antenna.ShieldingDb : null,
            WindscreenDropM = antenna.HasWindscreenDropM ? antenna.WindscreenDropM : null,
        };
    }

    private static string Renamed(string field, string gearAt, string followAt, string speedAt) =>
        field.StartsWith("setup.gear", StringComparison.Ordinal) ? gearAt + field["setup.gear".Length..]
        : field.StartsWith("setup.follow_car", StringComparison.Ordinal) ? followAt + field["setup.follow_car".Length..]
        : field == "setup.speed_km_per_hour" ? speedAt : field;
}
