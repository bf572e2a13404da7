using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Levels;

/// <summary>However long the stream, a meter's memory is what it began with: a call allocates nothing.</summary>
public sealed class AllocationTests
{
    private delegate void Take(ReadOnlySpan<float> piece);

    [Fact]
    public void Add_AnyMeter_AllocatesNothing()
    {
        float[] x = [.. Sound.Noise(96_000, 2, 1).Select(v => Math.Clamp(v, -1, 1))];
        x.AsSpan(30_000, 2_000).Clear();
        Take[] meters =
        [
            new LoudnessMeter(48_000, 2).Add, new TruePeakMeter(48_000, 2).Add, new ActiveSpeechLevelMeter(48_000, 2).Add,
            new SampleMeter(48_000, 2).Add, new ChannelRelationMeter(48_000, 2, 0, 1).Add,
        ];
        foreach (Take add in meters)
        {
            add(x);
            long before = GC.GetAllocatedBytesForCurrentThread();
            add(x);
            Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        }
    }
}
