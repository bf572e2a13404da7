using Quarterlight.Crew;

namespace Quarterlight.CrewBot.Discord;

/// <summary>What is noted about one interaction while it goes on: no content, no names, no tokens.</summary>
internal sealed class InteractionRecord(TimeProvider time, long receivedTimestamp)
{
    /// <summary>Name of the command as in the catalogue, "button", "form" or "unknown".</summary>
    public string What { get; set; } = "unknown";

    /// <summary>The team's id; empty outside servers.</summary>
    public string Team { get; set; } = "";

    /// <summary>How it ended.</summary>
    public InteractionEnd End { get; set; }

    /// <summary>What was asked for, as understood.</summary>
    public CrewIntent Intent { get; set; }

    /// <summary>From receipt to the first answer the platform took; null when it took none.</summary>
    public TimeSpan? FirstAnswer { get; private set; }

    /// <summary>Time spent waiting for the planner.</summary>
    public PlannerTime Planner { get; } = new(time);

    /// <summary>True when a file was read, which takes as long as the file is.</summary>
    public bool WithFile { get; set; }

    /// <summary>Time since receipt.</summary>
    public TimeSpan Elapsed => time.GetElapsedTime(receivedTimestamp);

    /// <summary>Notes that the platform took an answer.</summary>
    public void Taken() => FirstAnswer ??= Elapsed;
}
