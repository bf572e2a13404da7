namespace Quarterlight.Clips.Tagging;

/// <summary>What is said about a tag.</summary>
public enum TagState
{
    /// <summary>It does not hold.</summary>
    Absent,

    /// <summary>It cannot be told.</summary>
    Unsure,

    /// <summary>It holds.</summary>
    Present,
}
