namespace Quarterlight.Telemetry;

/// <summary>Where traces, metrics and logs are sent, and of what.</summary>
public sealed record TelemetryOptions
{
    /// <summary>Variable with the address of the collector; set, it turns sending on.</summary>
    public const string EndpointVariable = "OTEL_EXPORTER_OTLP_ENDPOINT";

    /// <summary>The same for this program alone; it wins.</summary>
    public const string OwnEndpointVariable = "QUARTERLIGHT_OTLP_ENDPOINT";

    /// <summary>Variable with the protocol: http/protobuf, which is taken when it is not set, or grpc.</summary>
    public const string ProtocolVariable = "OTEL_EXPORTER_OTLP_PROTOCOL";

    /// <summary>Variable with headers for the collector: name=value, parted by commas. Their values are taken for secrets.</summary>
    public const string HeadersVariable = "OTEL_EXPORTER_OTLP_HEADERS";

    /// <summary>Name the collector files it under.</summary>
    public required string ServiceName { get; init; }

    /// <summary>Address of the collector, such as http://collector:4318.</summary>
    public required Uri Endpoint { get; init; }

    /// <summary>True sends over gRPC, false as HTTP posts.</summary>
    public bool Grpc { get; init; }

    /// <summary>Headers for the collector, as in <see cref="HeadersVariable"/>; null for none.</summary>
    public string? Headers { get; init; }

    /// <summary>Names of the sources whose spans are sent.</summary>
    public IReadOnlyList<string> Sources { get; init; } = [];

    /// <summary>Names of the meters whose metrics are sent.</summary>
    public IReadOnlyList<string> Meters { get; init; } = [];

    /// <summary>Reads the environment; null when it names no collector.</summary>
    /// <param name="serviceName">Name the collector files it under.</param>
    /// <param name="variable">Value of a variable of the environment, or null.</param>
    /// <exception cref="TelemetryOptionsException">The address or the protocol is not one.</exception>
    public static TelemetryOptions? FromEnvironment(string serviceName, Func<string, string?> variable)
    {
        ArgumentNullException.ThrowIfNull(variable);
        string name = string.IsNullOrWhiteSpace(variable(OwnEndpointVariable)) ? EndpointVariable : OwnEndpointVariable;
        if (variable(name) is not { } text || string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        // The text itself is not repeated: it may hold a password.
        if (!Uri.TryCreate(text, UriKind.Absolute, out Uri? endpoint) || endpoint.Scheme is not ("http" or "https") || endpoint.UserInfo.Length > 0)
        {
            throw new TelemetryOptionsException($"{name} is not the address of a collector: use http://host:port without a name or password, and {HeadersVariable} for a key.");
        }

        string protocol = variable(ProtocolVariable) is { Length: > 0 } said ? said : "http/protobuf";
        return new TelemetryOptions
        {
            ServiceName = serviceName,
            Endpoint = endpoint,
            Headers = variable(HeadersVariable),
            Grpc = protocol switch
            {
                "http/protobuf" => false,
                "grpc" => true,
                _ => throw new TelemetryOptionsException($"{ProtocolVariable} is not a protocol: use http/protobuf or grpc."),
            },
        };
    }
}

/// <summary>Telemetry cannot be set up as asked; the message says what to change.</summary>
public sealed class TelemetryOptionsException(string message) : Exception(message);
