namespace Quarterlight.Radio.Law;

/// <summary>What is to be sent; within the ranges of <see cref="LawRules"/>.</summary>
/// <param name="FrequencyMHz">Centre frequency in MHz.</param>
/// <param name="EirpDbm">Power radiated in the strongest direction, over an isotropic antenna, in dBm.</param>
/// <param name="ConductedPowerDbm">Power at the transmitter's output in dBm; null when not known.</param>
/// <param name="ChannelWidthKHz">Width of the channel in kHz; null when not known.</param>
/// <param name="Digital">Whether it is digital; null when not known, and then rules for digital equipment count too.</param>
/// <param name="PowerStated">False when only the limit is asked for; the power given then lies below any limit.</param>
public sealed record Transmission(double FrequencyMHz, double EirpDbm, double? ConductedPowerDbm, double? ChannelWidthKHz, bool? Digital = null, bool PowerStated = true);
