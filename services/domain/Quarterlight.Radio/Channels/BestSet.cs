namespace Quarterlight.Radio.Channels;

/// <summary>The largest clean set found so far.</summary>
internal sealed class BestSet(CoordinationProblem problem)
{
    private long[] _placedHz = [];
    private int[] _groups = [];

    /// <summary>Transmitters placed in it.</summary>
    public int Count => _placedHz.Length;

    /// <summary>True when every transmitter is placed.</summary>
    public bool Complete => Count == problem.TransmitterCount;

    /// <summary>Keeps a set when it is larger than the best.</summary>
    public void Offer(PlacedCarriers placed)
    {
        if (placed.Count > Count)
        {
            (_placedHz, _groups) = (placed.PlacedHz.ToArray(), placed.PlacedGroups.ToArray());
        }
    }

    /// <summary>Frequencies by transmitter; lowest frequency to the first name of a group.</summary>
    public Dictionary<string, long> ById()
    {
        var byId = new Dictionary<string, long>(StringComparer.Ordinal);
        for (int g = 0; g < problem.Groups.Length; g++)
        {
            long[] ofGroup = [.. _placedHz.Where((_, i) => _groups[i] == g).Order()];
            for (int k = 0; k < ofGroup.Length; k++)
            {
                byId[problem.Groups[g].Ids[k]] = ofGroup[k];
            }
        }

        return byId;
    }
}
