using Quarterlight.Clips.Tagging;

namespace Quarterlight.Training.Data;

/// <summary>Which tags hold; nothing where nobody can say, which is neither trained nor scored.</summary>
/// <param name="Engine">A combustion engine is heard.</param>
/// <param name="Wind">Moving air is heard.</param>
/// <param name="AirConditioning">A fan is heard.</param>
/// <param name="Clean">Nothing but speech or room tone is heard.</param>
public readonly record struct Truth(bool? Engine, bool? Wind, bool? AirConditioning, bool? Clean)
{
    /// <summary>Nothing but speech or room tone.</summary>
    public static Truth JustClean { get; } = new(false, false, false, true);

    /// <summary>None of the four.</summary>
    public static Truth None { get; } = new(false, false, false, false);

    /// <summary>All tags, in order.</summary>
    public static IReadOnlyList<ClipTag> Tags { get; } = Enum.GetValues<ClipTag>();

    /// <summary>Whether one tag holds.</summary>
    public bool? this[ClipTag tag] => tag switch
    {
        ClipTag.Engine => Engine,
        ClipTag.Wind => Wind,
        ClipTag.AirConditioning => AirConditioning,
        _ => Clean,
    };

    /// <summary>One noise tag and no other.</summary>
    public static Truth Only(ClipTag tag) => None.With(tag, true);

    /// <summary>The same with one tag changed.</summary>
    public Truth With(ClipTag tag, bool? holds) => tag switch
    {
        ClipTag.Engine => this with { Engine = holds },
        ClipTag.Wind => this with { Wind = holds },
        ClipTag.AirConditioning => this with { AirConditioning = holds },
        _ => this with { Clean = holds },
    };

    /// <summary>Two sounds at once, neither far below the other: a tag holds when it holds for one; clean only when for both.</summary>
    public Truth And(Truth other) => new(
        Either(Engine, other.Engine), Either(Wind, other.Wind), Either(AirConditioning, other.AirConditioning),
        Clean == false || other.Clean == false ? false : Clean is null || other.Clean is null ? null : true);

    private static bool? Either(bool? a, bool? b) => a == true || b == true ? true : a is null || b is null ? null : false;
}
