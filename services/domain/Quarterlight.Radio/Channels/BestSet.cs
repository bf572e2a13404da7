namespace Quarterlight.Radio.Channels;

/// <summary>The largest clean set found so far.</summary>
internal sealed class BestSet(CoordinationProblem problem)
{
    private long[] _placedHz = [];
    private int[] _counts = new int[problem.Groups.Length];

    /// <summary>Transmitters placed in it.</summary>
    public int Count => _placedHz.Length;

    /// <summary>True when every transmitter is placed.</summary>
    public bool Complete => Count == problem.TransmitterCount;

    /// <summary>Keeps a set when it is larger than the best.</summary>
    /// <param name="placed">The set, group after group.</param>
    /// <param name="counts">How many of each group it holds.</param>
    public void Offer(PlacedCarriers placed, int[] counts)
    {
        if (placed.Count > Count)
        {
            _placedHz = placed.PlacedHz.ToArray();
            _counts = [.. counts];
        }
    }

    /// <summary>Frequencies by transmitter; lowest frequency to the first name of a group.</summary>
    public Dictionary<string, long> ById()
    {
        var byId = new Dictionary<string, long>(StringComparer.Ordinal);
        int at = 0;
        for (int g = 0; g < _counts.Length; g++)
        {
            long[] ofGroup = [.. _placedHz.Skip(at).Take(_counts[g]).Order()];
            at += _counts[g];
            for (int k = 0; k < ofGroup.Length; k++)
            {
                byId[problem.Groups[g].Ids[k]] = ofGroup[k];
            }
        }

        return byId;
    }
}
