namespace Quarterlight.Cabin;

/// <summary>Makes a head into something that cuts sight lines.</summary>
public static class HeadOccluder
{
    /// <summary>The ball that stands for a head.</summary>
    /// <param name="head">Head in its pose.</param>
    /// <param name="name">In words, such as "driver's head".</param>
    public static BallOccluder Of(SeatedHead head, string name) => new(name, head.Center, SeatedHead.RadiusM);
}
