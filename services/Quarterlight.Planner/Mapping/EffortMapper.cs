using Quarterlight.Acoustics;

namespace Quarterlight.Planner.Mapping;

/// <summary>Vocal efforts, both ways. The contract got the whisper later than the rest, so it is last there.</summary>
internal static class EffortMapper
{
    private static readonly (V1.VocalEffort Contract, VocalEffort Domain)[] s_pairs =
    [
        (V1.VocalEffort.Whisper, VocalEffort.Whisper),
        (V1.VocalEffort.Relaxed, VocalEffort.Relaxed),
        (V1.VocalEffort.Normal, VocalEffort.Normal),
        (V1.VocalEffort.Raised, VocalEffort.Raised),
        (V1.VocalEffort.Loud, VocalEffort.Loud),
        (V1.VocalEffort.Shout, VocalEffort.Shout),
    ];

    /// <summary>The domain's effort; notes a violation with the choices when it is not stated or unknown.</summary>
    public static VocalEffort ToDomain(V1.VocalEffort effort, string field, FieldReader reader)
    {
        foreach ((V1.VocalEffort contract, VocalEffort domain) in s_pairs)
        {
            if (contract == effort)
            {
                return domain;
            }
        }

        string problem = effort == V1.VocalEffort.Unspecified ? "nothing is chosen" : $"{(int)effort} is not one of the choices";
        reader.Add(field, problem, $"Choose one of: {string.Join(", ", s_pairs.Select(p => p.Contract))}");
        return VocalEffort.Normal;
    }

    public static V1.VocalEffort ToContract(VocalEffort effort) => s_pairs.First(p => p.Domain == effort).Contract;
}
