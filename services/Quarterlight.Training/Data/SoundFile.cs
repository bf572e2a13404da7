using System.Security.Cryptography;
using Quarterlight.Audio;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Training.Data;

/// <summary>Reads a sound file as one channel at 16 kHz.</summary>
public static class SoundFile
{
    /// <summary>SHA-256 of the file's bytes in hexadecimal, which no change of a filter touches.</summary>
    public static async Task<string> DigestAsync(string path, CancellationToken cancellation)
    {
        FileStream stream = File.OpenRead(path);
        await using (stream.ConfigureAwait(false))
        {
            return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancellation).ConfigureAwait(false));
        }
    }

    /// <summary>Reads it; several channels are averaged.</summary>
    /// <exception cref="AudioFaultException">The file is not one that is read.</exception>
    public static async Task<float[]> ReadAsync(string path, CancellationToken cancellation)
    {
        FileStream stream = File.OpenRead(path);
        await using (stream.ConfigureAwait(false))
        {
            IAudioReader reader = await AudioReader.OpenAsync(stream, AudioLimits.Default, cancellation).ConfigureAwait(false);
            await using (reader.ConfigureAwait(false))
            {
                int channels = reader.Format.ChannelCount;
                float[] frames = new float[4096 * channels];
                float[] mono = new float[4096];
                var samples = new List<float>();
                var resampler = new AnalysisResampler(reader.Format.SampleRateHz, part => samples.AddRange(part));
                while (await reader.ReadAsync(frames, cancellation).ConfigureAwait(false) is int read and > 0)
                {
                    for (int i = 0; i < read; i++)
                    {
                        mono[i] = 0;
                        for (int c = 0; c < channels; c++)
                        {
                            mono[i] += frames[(i * channels) + c] / channels;
                        }
                    }

                    resampler.Add(mono.AsSpan(0, read));
                }

                resampler.Finish();
                return [.. samples];
            }
        }
    }
}
