using System.Numerics;
using System.Runtime.InteropServices;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips;

/// <summary>Compares channels: every pair of a few; of many the neighbours, and by a digest of their samples whichever are identical.</summary>
internal sealed class ChannelPairs
{
    private readonly (int First, int Second, ChannelRelationMeter Meter)[] _pairs;
    private readonly Vector<uint>[] _digests;

    /// <summary>Starts a clip.</summary>
    public ChannelPairs(int sampleRateHz, int channels, bool all)
    {
        var pairs = new List<(int, int, ChannelRelationMeter)>();
        for (int a = 0; a < channels; a++)
        {
            for (int b = a + 1; b < (all ? channels : Math.Min(channels, a + 2)); b++)
            {
                pairs.Add((a, b, new ChannelRelationMeter(sampleRateHz, channels, a, b)));
            }
        }

        _pairs = [.. pairs];
        _digests = all ? [] : new Vector<uint>[channels];
    }

    /// <summary>Adds a piece of any number of whole frames.</summary>
    public void Add(ReadOnlySpan<float> interleaved)
    {
        foreach ((_, _, ChannelRelationMeter meter) in _pairs)
        {
            meter.Add(interleaved);
        }
    }

    /// <summary>Adds a block of all channels to their digests; blocks have one length.</summary>
    public void Digest(ChannelBlocks blocks, int history)
    {
        for (int c = 0; c < _digests.Length; c++)
        {
            Digest(ref _digests[c], blocks.Plane(c)[history..]);
        }
    }

    /// <summary>The pairs.</summary>
    public IReadOnlyList<ChannelPair> Finish(IReadOnlyList<ChannelMeasures> channels)
    {
        var found = new List<ChannelPair>();
        foreach ((int first, int second, ChannelRelationMeter meter) in _pairs)
        {
            found.Add(new(first, second, meter.Measure()));
        }

        // Of a group of the same sound each is named once, beside the first of them.
        var told = new bool[channels.Count];
        for (int a = 0; a < _digests.Length; a++)
        {
            for (int b = a + 1; b < _digests.Length && !told[a] && !channels[a].IsSilent; b++)
            {
                if (_digests[a] == _digests[b] && channels[a].Samples.RmsDbov == channels[b].Samples.RmsDbov)
                {
                    told[b] = true;
                    if (b > a + 1)
                    {
                        found.Add(new(a, b, new ChannelRelation { Identical = true, Correlation = 1, DelaySamples = 0, DelayMs = 0, LevelDifferenceDb = 0 }));
                    }
                }
            }
        }

        return [.. found.OrderBy(p => p.First).ThenBy(p => p.Second)];
    }

    // A lane each of a multiplicative hash; blocks have one length, so the same samples give the same lanes. -0 counts as 0.
    private static void Digest(ref Vector<uint> digest, ReadOnlySpan<float> x)
    {
        Vector<uint> d = digest;
        foreach (Vector<float> v in MemoryMarshal.Cast<float, Vector<float>>(x))
        {
            d = (d * new Vector<uint>(0x9E3779B1)) ^ Vector.AsVectorUInt32(v + Vector<float>.Zero);
        }

        digest = d;
    }
}
