using Quarterlight.Crew.Keeping;

namespace Quarterlight.Crew;

/// <summary>What the crew asks, with what is remembered of the conversation.</summary>
public sealed record CrewQuestion
{
    /// <summary>What was typed, in plain words. Any text is safe: it is cleaned and capped before use.</summary>
    public required string Text { get; init; }

    /// <summary>Scene it is about unless the text names another: id, resource name or name; null leaves it to text and memory.</summary>
    public string? Scene { get; init; }

    /// <summary>Units asked for with this question; null takes the remembered ones, else the team's, else metric.</summary>
    public UnitPreference? Units { get; init; }

    /// <summary>What the team settled on, for what neither question nor conversation says.</summary>
    public TeamSettings Team { get; init; } = TeamSettings.None;

    /// <summary>Units of the answer: the question's, else the conversation's, else the team's, else metric.</summary>
    internal UnitPreference UnitsInForce => Units ?? Memory.Units ?? Team.Units ?? UnitPreference.Metric;

    /// <summary>What the last answer left behind.</summary>
    public CrewMemory Memory { get; init; } = CrewMemory.Empty;

    /// <summary>A sound file that comes with the question; null when none does. The question is then about it.</summary>
    public CrewAttachment? Attachment { get; init; }

    /// <summary>Told how far the reading of the attachment is; null when nobody looks.</summary>
    public IProgress<CrewClipProgress>? Progress { get; init; }

    /// <summary>True draws a picture where the answer has one.</summary>
    public bool IncludePicture { get; init; } = true;
}

/// <summary>Units in which answers are given.</summary>
public enum UnitPreference
{
    /// <summary>Centimetres, metres, km/h.</summary>
    Metric,

    /// <summary>Inches, feet, mph.</summary>
    Imperial,
}
