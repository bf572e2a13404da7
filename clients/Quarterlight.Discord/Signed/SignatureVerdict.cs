namespace Quarterlight.Discord.Signed;

/// <summary>What became of a signed request. Callers are told only whether it was right.</summary>
public enum SignatureVerdict
{
    /// <summary>It is the platform's.</summary>
    Right,

    /// <summary>A header is missing or is there twice.</summary>
    Missing,

    /// <summary>The signature is not 64 bytes in hexadecimal.</summary>
    Malformed,

    /// <summary>The time is no time.</summary>
    NoTime,

    /// <summary>The time is too far from our clock.</summary>
    OutOfTime,

    /// <summary>The signature is somebody else's, or the body was changed.</summary>
    Wrong,
}
