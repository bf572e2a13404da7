namespace Quarterlight.Radio.Propagation;

/// <summary>Which way the electric field stands.</summary>
public enum Polarisation
{
    /// <summary>Upright.</summary>
    Vertical,

    /// <summary>Lying.</summary>
    Horizontal,
}
