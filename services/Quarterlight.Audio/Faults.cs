using System.Globalization;

namespace Quarterlight.Audio;

/// <summary>The faults, worded once.</summary>
internal static class Faults
{
    private const string SendAgain = "Copy the file from the recorder or phone again and upload it once more";
    private const string Export = "Export it as WAV, 48 kHz, 24 bit, and upload that";

    public static AudioFaultException Empty(string problem) => New(AudioFaultCode.Empty, problem, "Check that the recording was stopped and saved, then upload it again");

    public static AudioFaultException Truncated(string problem) => New(AudioFaultCode.Truncated, problem, SendAgain);

    public static AudioFaultException Corrupt(string problem) => New(AudioFaultCode.Corrupt, problem, SendAgain);

    public static AudioFaultException Corrupt(string problem, Exception cause) => new(new AudioFault(AudioFaultCode.Corrupt, problem, SendAgain), cause);

    public static AudioFaultException Unsupported(string problem) => New(AudioFaultCode.Unsupported, problem, Export);

    public static AudioFaultException NotAudio(string problem) =>
        New(AudioFaultCode.NotAudio, problem, "Upload the sound file itself: WAV, FLAC, MP3, Ogg, Opus or M4A");

    public static AudioFaultException NoDecoder(string kind) => New(
        AudioFaultCode.NoDecoder, $"{kind} is read by the ffmpeg program, which is not installed on the planner's machine",
        "Install ffmpeg there, or export the clip as WAV and upload that");

    public static AudioFaultException TooLarge(AudioLimits limits) => New(
        AudioFaultCode.TooLarge,
        string.Create(CultureInfo.InvariantCulture, $"The file holds more than {limits.MaxBytes / (1024.0 * 1024.0):0.##} MB"),
        "Cut a shorter clip, or send fewer channels");

    public static AudioFaultException TooLong(AudioLimits limits) => New(
        AudioFaultCode.TooLong,
        string.Create(CultureInfo.InvariantCulture, $"The clip is longer than {limits.MaxDuration.TotalMinutes:0.##} minutes"),
        "Cut out the part to be judged");

    public static AudioFaultException Stalled(TimeSpan wait) => New(
        AudioFaultCode.Stalled,
        string.Create(CultureInfo.InvariantCulture, $"No byte arrived for {wait.TotalSeconds:0.##} s"),
        "Check the connection and upload the clip again");

    public static AudioFaultException DecoderStalled(TimeSpan wait) => New(
        AudioFaultCode.Stalled,
        string.Create(CultureInfo.InvariantCulture, $"The ffmpeg program gave no answer within {wait.TotalSeconds:0.##} s"),
        Export);

    /// <summary>Refuses rates and channel counts outside the limits.</summary>
    public static void CheckShape(long sampleRateHz, int channels, AudioLimits limits)
    {
        if (channels < 1)
        {
            throw Corrupt("The file says it has no channels");
        }

        if (channels > limits.MaxChannels)
        {
            throw Unsupported(string.Create(CultureInfo.InvariantCulture, $"The file has {channels} channels; at most {limits.MaxChannels} are read"));
        }

        if (sampleRateHz < limits.MinSampleRateHz || sampleRateHz > limits.MaxSampleRateHz)
        {
            throw Unsupported(string.Create(
                CultureInfo.InvariantCulture,
                $"The file says its sample rate is {sampleRateHz} Hz; {limits.MinSampleRateHz} to {limits.MaxSampleRateHz} Hz are read"));
        }
    }

    /// <summary>Most frames within the longest duration.</summary>
    public static long MostFrames(int sampleRateHz, AudioLimits limits) => (long)Math.Floor(limits.MaxDuration.TotalSeconds * sampleRateHz);

    private static AudioFaultException New(AudioFaultCode code, string problem, string remedy) => new(new AudioFault(code, problem, remedy));
}
