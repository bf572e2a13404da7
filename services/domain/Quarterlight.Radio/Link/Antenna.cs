using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Link;

/// <summary>What radiates or receives.</summary>
public enum AntennaKind
{
    /// <summary>Quarter-wave whip on a metal roof; vertical.</summary>
    QuarterWaveWhip,

    /// <summary>Half-wave dipole.</summary>
    HalfWaveDipole,

    /// <summary>Whip much shorter than a quarter wave, such as a car radio's; vertical.</summary>
    ShortWhip,

    /// <summary>Wire laid along trim or dash.</summary>
    HiddenWire,

    /// <summary>Film on glass.</summary>
    GlassFilm,

    /// <summary>Directional antenna pointed at the other car.</summary>
    Directional,

    /// <summary>Any other, by its gain.</summary>
    StatedGain,
}

/// <summary>Where an antenna is.</summary>
public enum AntennaPlace
{
    /// <summary>Inside the car.</summary>
    InCabin,

    /// <summary>On a window, inside.</summary>
    OnGlass,

    /// <summary>On the roof, outside.</summary>
    OnRoof,

    /// <summary>On a mast above the roof.</summary>
    OnMast,
}

/// <summary>An antenna as rigged.</summary>
public sealed record Antenna
{
    /// <summary>What it is.</summary>
    public required AntennaKind Kind { get; init; }

    /// <summary>Where it is.</summary>
    public required AntennaPlace Place { get; init; }

    /// <summary>True in the car or on its glass, where the car shields it.</summary>
    public bool IsInside => Place is AntennaPlace.InCabin or AntennaPlace.OnGlass;

    /// <summary>Height above the road in metres, 0.2 to 6.</summary>
    public required double HeightM { get; init; }

    /// <summary>Which way it lies.</summary>
    public Polarisation Polarisation { get; init; }

    /// <summary>Gain in dBi, -20 to 15; only for a stated gain, and needed there.</summary>
    public double? StatedGainDbi { get; init; }

    /// <summary>Cable loss in dB, 0 to 20.</summary>
    public double FeederLossDb { get; init; }

    /// <summary>What the car, and a body or seat on it, takes away in dB, 0 to 50; null takes the planning value for the place.</summary>
    public double? StatedShieldingDb { get; init; }

    /// <summary>How far it reaches below the top of the area the wipers sweep, in metres, 0 to 1; only on a windscreen, null elsewhere or when not
    /// known.</summary>
    public double? WindscreenDropM { get; init; }
}
