namespace Quarterlight.Chat.Emulator.Recording;

/// <summary>One HTTP request, as it came and as it was answered.</summary>
public sealed class RecordedRequest
{
    /// <summary>Place in the order of everything recorded.</summary>
    public int Number { get; internal init; }

    /// <summary>Time since the platform was started.</summary>
    public TimeSpan At { get; internal init; }

    /// <summary>Method.</summary>
    public required string Method { get; init; }

    /// <summary>Path as written, tokens and all.</summary>
    public required string Path { get; init; }

    /// <summary>Query as written, without question mark; empty for none.</summary>
    public required string Query { get; init; }

    /// <summary>Headers as they came.</summary>
    public required IReadOnlyDictionary<string, string> Headers { get; init; }

    /// <summary>Pattern of the route, such as POST /webhooks/:app/:token; null when there is none.</summary>
    public string? Route { get; internal set; }

    /// <summary>Parts of a multipart body.</summary>
    public IReadOnlyList<RecordedPart> Parts { get; internal set; } = [];

    /// <summary>The JSON of the body or of payload_json; null for none.</summary>
    public string? Json { get; internal set; }

    /// <summary>Kind of that JSON in the schema check; null for none.</summary>
    public string? JsonKind { get; internal set; }

    /// <summary>HTTP status of the answer; 0 when the connection was cut or still hangs.</summary>
    public int Status { get; internal set; }

    /// <summary>The platform's own error code; null for none.</summary>
    public int? ErrorCode { get; internal set; }

    /// <summary>Body of the answer; null for none.</summary>
    public string? Answer { get; internal set; }

    /// <summary>Name of the fault that was played; null for none.</summary>
    public string? Fault { get; internal set; }

    /// <inheritdoc/>
    public override string ToString() => $"{Method} {Route ?? Path} -> {Status}{(ErrorCode is { } code ? $" ({code})" : "")}{(Fault is null ? "" : $" [{Fault}]")}";
}

/// <summary>A part of a multipart body.</summary>
/// <param name="Name">Its name.</param>
/// <param name="FileName">Its file name; null for none.</param>
/// <param name="ContentType">Its media type; null when not told.</param>
/// <param name="Disposition">Its Content-Disposition as written.</param>
/// <param name="ByteCount">Its size, bytes.</param>
public sealed record RecordedPart(string Name, string? FileName, string? ContentType, string Disposition, int ByteCount);
