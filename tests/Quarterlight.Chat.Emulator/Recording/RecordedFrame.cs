namespace Quarterlight.Chat.Emulator.Recording;

/// <summary>What happened on a gateway connection.</summary>
public enum FrameKind
{
    /// <summary>A client connected.</summary>
    Opened,

    /// <summary>The client sent a frame.</summary>
    Received,

    /// <summary>The client was sent a frame.</summary>
    Sent,

    /// <summary>The connection ended.</summary>
    Closed,
}

/// <summary>One event of a gateway connection.</summary>
public sealed record RecordedFrame
{
    /// <summary>Place in the order of everything recorded.</summary>
    public int Number { get; internal init; }

    /// <summary>Time since the platform was started.</summary>
    public TimeSpan At { get; internal init; }

    /// <summary>The connection, counted from 1.</summary>
    public required int Connection { get; init; }

    /// <summary>What happened.</summary>
    public required FrameKind Kind { get; init; }

    /// <summary>Opcode; null when there is none.</summary>
    public int? Op { get; init; }

    /// <summary>Name of the event (t); null for none.</summary>
    public string? Event { get; init; }

    /// <summary>Sequence number; null for none.</summary>
    public int? Sequence { get; init; }

    /// <summary>The frame, or the query of an opening; null for none.</summary>
    public string? Text { get; init; }

    /// <summary>Close code; null when the connection broke without one, or did not end.</summary>
    public int? CloseCode { get; init; }

    /// <summary>True when we ended it.</summary>
    public bool ByPlatform { get; init; }

    /// <inheritdoc/>
    public override string ToString() => $"#{Connection} {Kind} {Op}{Event}{CloseCode}";
}
