namespace Quarterlight.Radio.Propagation;

/// <summary>What the path models look at, distance aside.</summary>
/// <param name="FrequencyMHz">Frequency in MHz.</param>
/// <param name="TransmitHeightM">Height of the transmitting antenna above the road in metres.</param>
/// <param name="ReceiveHeightM">Height of the receiving antenna above the road in metres.</param>
/// <param name="Polarisation">Which way the wave stands.</param>
/// <param name="Ground">The ground.</param>
public readonly record struct PathInputs(
    double FrequencyMHz, double TransmitHeightM, double ReceiveHeightM, Polarisation Polarisation, GroundProperties Ground)
{
    /// <summary>Wavelength in metres.</summary>
    public double WavelengthM => FreeSpace.WavelengthM(FrequencyMHz);

    /// <summary>Distance in metres beyond which direct and ground ray no longer alternate: 4 h1 h2/λ.</summary>
    public double BreakpointM => 4 * TransmitHeightM * ReceiveHeightM / WavelengthM;
}
