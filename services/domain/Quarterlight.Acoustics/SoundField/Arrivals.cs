using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.SoundField;

/// <summary>One sound path at a microphone.</summary>
/// <param name="Direction">Unit vector from the microphone toward where the sound comes from.</param>
/// <param name="Energy">Energy per band relative to the source's on-axis energy at 1 m.</param>
/// <param name="DistanceM">Path length in metres.</param>
/// <param name="Order">Number of reflections; 0 is the direct sound.</param>
public readonly record struct Arrival(Vector3D Direction, BandVector Energy, double DistanceM, int Order);

/// <summary>What sends out sound.</summary>
/// <param name="Position">Metres.</param>
/// <param name="Axis">Unit vector of the mouth's axis; ignored for an omnidirectional source.</param>
/// <param name="IsVoice">True applies the voice directivity about the axis.</param>
/// <param name="ExtentM">Radius in metres over which the source is spread; keeps the inverse square law finite close by.</param>
/// <param name="Owner">Talker number, so that the own head does not screen the own voice; -1 for none.</param>
public readonly record struct SoundSource(Vector3D Position, Vector3D Axis, bool IsVoice, double ExtentM, int Owner);
