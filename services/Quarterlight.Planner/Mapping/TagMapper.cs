using Quarterlight.Clips.Tagging;

namespace Quarterlight.Planner.Mapping;

/// <summary>Tags and who heard them, to the contract.</summary>
internal static class TagMapper
{
    public static V1.TagReport ToContract(TagReport report)
    {
        var contract = new V1.TagReport();
        contract.Findings.AddRange(Enum.GetValues<ClipTag>().Select(tag => new V1.TagFinding
        {
            Tag = tag.ToContract<V1.ClipTag>(),
            State = report.States[tag].ToContract<V1.TagState>(),
            Chance = report.Overall[tag],
        }));
        contract.Seconds.AddRange(report.Seconds.Select(s => new V1.TaggedSecond
        {
            Stretch = new V1.ClipStretch { StartS = s.StartSeconds, EndS = s.EndSeconds },
            Chances = new V1.TagChances
            {
                Engine = s.Probabilities.Engine,
                Wind = s.Probabilities.Wind,
                AirConditioning = s.Probabilities.AirConditioning,
                Clean = s.Probabilities.Clean,
            },
        }));
        return contract;
    }

    public static V1.TaggerInfo ToContract(TaggerIdentity identity) =>
        new() { Name = identity.Name, Version = identity.Version, TrainingDataDigest = identity.TrainingDataDigest };
}
