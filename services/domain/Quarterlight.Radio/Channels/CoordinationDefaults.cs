namespace Quarterlight.Radio.Channels;

/// <summary>Starting values where a crew states none. Spacing and guards are common practice, no source; the node limit is a choice made
/// here.</summary>
public static class CoordinationDefaults
{
    /// <summary>Smallest distance between two carriers, in Hz: 0.3 to 0.4 MHz is common practice, no source.</summary>
    public const long MinSpacingHz = 300_000;

    /// <summary>Distance kept between a third-order product and a carrier, in Hz: 50 to 100 kHz is common practice, no source.</summary>
    public const long ThirdOrderGuardHz = 50_000;

    /// <summary>Distance kept between a fifth-order product and a carrier, in Hz, when fifth order is looked at: common practice, no
    /// source.</summary>
    public const long FifthOrderGuardHz = 50_000;

    /// <summary>Carriers tried before a search gives up: a judgement, about a second for two dozen transmitters in a cramped range; more with fifth
    /// order.</summary>
    public const int NodeLimit = 200_000;
}
