namespace Quarterlight.Audio.Tests;

/// <summary>What a whole file gave.</summary>
internal sealed record Reading(AudioFormat Format, float[] Samples, AudioMetadata? Metadata, IReadOnlyList<string> Remarks)
{
    public int Frames => Samples.Length / Format.ChannelCount;

    public static Task<Reading> AllAsync(byte[] file, params int[] pieces) => AllAsync(new ChoppyStream(file, pieces), AudioLimits.Default);

    public static async Task<Reading> AllAsync(Stream source, AudioLimits limits, int bufferFrames = 500)
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        await using IAudioReader reader = await AudioReader.OpenAsync(source, limits, cancellation);
        var samples = new List<float>();
        float[] buffer = new float[bufferFrames * reader.Format.ChannelCount];
        for (int frames; (frames = await reader.ReadAsync(buffer, cancellation)) > 0;)
        {
            samples.AddRange(buffer.AsSpan(0, frames * reader.Format.ChannelCount));
        }

        Assert.Equal(samples.Count, reader.FramesRead * reader.Format.ChannelCount);
        return new Reading(reader.Format, [.. samples], reader.Metadata, [.. reader.Remarks]);
    }

    /// <summary>The fault a file gives, with both sentences there and without final stop.</summary>
    public static async Task<AudioFault> FaultAsync(byte[] file, AudioLimits? limits = null)
    {
        AudioFault fault = (await Assert.ThrowsAsync<AudioFaultException>(() => AllAsync(new ChoppyStream(file), limits ?? AudioLimits.Default))).Fault;
        Assert.All([fault.Problem, fault.Remedy], s => Assert.True(s.Length > 10 && char.IsUpper(s[0]) && !s.EndsWith('.')));
        return fault;
    }
}
