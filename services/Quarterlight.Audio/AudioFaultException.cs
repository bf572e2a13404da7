namespace Quarterlight.Audio;

/// <summary>
/// The only exception the readers throw because of the bytes they were given. Cancellation by the caller and exceptions of the
/// source stream itself (a broken connection) pass through unchanged.
/// </summary>
public sealed class AudioFaultException : Exception
{
    /// <summary>Throws with the fault.</summary>
    public AudioFaultException(AudioFault fault)
        : base($"{Checked(fault).Problem}. {fault.Remedy}.") => Fault = fault;

    /// <summary>Throws with the fault and what led to it, for the log.</summary>
    public AudioFaultException(AudioFault fault, Exception cause)
        : base($"{Checked(fault).Problem}. {fault.Remedy}.", cause) => Fault = fault;

    /// <summary>What is wrong and what to do.</summary>
    public AudioFault Fault { get; }

    private static AudioFault Checked(AudioFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return fault;
    }
}
