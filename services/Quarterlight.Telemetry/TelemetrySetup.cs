using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using OpenTelemetry;
using OpenTelemetry.Exporter;
using OpenTelemetry.Logs;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace Quarterlight.Telemetry;

/// <summary>
/// Sets up what is told about a process: spans, metrics and logs to a collector, when there is one, and no secret in any of them nor in any other log.
/// </summary>
public static class TelemetrySetup
{
    // Spans of HTTP calls made, and figures of the runtime, both by the base library itself.
    private const string HttpSource = "System.Net.Http";
    private const string RuntimeMeter = "System.Runtime";

    private const int ExportLimitMilliseconds = 5_000;

    /// <summary>Adds it. To be called last: it stands before those logger providers that are there.</summary>
    /// <param name="services">Services of the process.</param>
    /// <param name="logging">Its logging, with its providers.</param>
    /// <param name="options">Where to send what; null sends nothing and keeps secrets out of the logs all the same.</param>
    /// <param name="redactor">Takes the secrets out; whoever learns one registers it there.</param>
    public static void Add(IServiceCollection services, ILoggingBuilder logging, TelemetryOptions? options, SecretRedactor redactor)
    {
        ArgumentNullException.ThrowIfNull(services);
        ArgumentNullException.ThrowIfNull(logging);
        ArgumentNullException.ThrowIfNull(redactor);
        if (options is not null)
        {
            RegisterHeaders(options.Headers, redactor);
            AddExport(services, logging, options, redactor);
        }

        StandBeforeProviders(services, redactor);
    }

    /// <summary>Starts sending in a process without a host; a host does it by itself. Disposing the services sends what is left.</summary>
    public static void Start(IServiceProvider services)
    {
        services.GetService<TracerProvider>();
        services.GetService<MeterProvider>();
    }

    private static void AddExport(IServiceCollection services, ILoggingBuilder logging, TelemetryOptions options, SecretRedactor redactor)
    {
        services.AddOpenTelemetry()
            .ConfigureResource(r => r.AddService(options.ServiceName))
            .WithTracing(tracing => tracing
                .AddSource([.. options.Sources, HttpSource])
                .AddProcessor(new RedactingSpanProcessor(redactor))
                .AddOtlpExporter(o => To(o, options, "v1/traces")))
            .WithMetrics(metrics => metrics
                .AddMeter([.. options.Meters, RuntimeMeter])
                .AddOtlpExporter(o => To(o, options, "v1/metrics")));
        logging.AddOpenTelemetry(o =>
        {
            o.SetResourceBuilder(ResourceBuilder.CreateDefault().AddService(options.ServiceName));
            o.IncludeFormattedMessage = true;
            o.IncludeScopes = true;
            o.AddOtlpExporter(e => To(e, options, "v1/logs"));
        });
    }

    // Said in full: the exporter's own reading of the environment is left to no chance.
    private static void To(OtlpExporterOptions exporter, TelemetryOptions options, string path)
    {
        exporter.Protocol = options.Grpc ? OtlpExportProtocol.Grpc : OtlpExportProtocol.HttpProtobuf;
        exporter.Endpoint = options.Grpc ? options.Endpoint : new Uri(options.Endpoint.AbsoluteUri.TrimEnd('/') + "/" + path);
        exporter.Headers = options.Headers;
        exporter.TimeoutMilliseconds = ExportLimitMilliseconds;
    }

    private static void RegisterHeaders(string? headers, SecretRedactor redactor)
    {
        foreach (string header in (headers ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries))
        {
            string value = header[(header.IndexOf('=', StringComparison.Ordinal) + 1)..].Trim();
            foreach (string form in new[] { value, Uri.UnescapeDataString(value) }.Where(f => f.Length >= SecretRedactor.ShortestSecret))
            {
                redactor.Register(form);
            }
        }
    }

    private static void StandBeforeProviders(IServiceCollection services, SecretRedactor redactor)
    {
        for (int i = 0; i < services.Count; i++)
        {
            if (services[i].ServiceType == typeof(ILoggerProvider) && !services[i].IsKeyedService)
            {
                ServiceDescriptor inner = services[i];
                services[i] = ServiceDescriptor.Describe(typeof(ILoggerProvider), s => RedactingLoggerProvider.Around(Make(inner, s), redactor), inner.Lifetime);
            }
        }
    }

    private static ILoggerProvider Make(ServiceDescriptor descriptor, IServiceProvider services) => (ILoggerProvider)(
        descriptor.ImplementationInstance
        ?? descriptor.ImplementationFactory?.Invoke(services)
        ?? ActivatorUtilities.CreateInstance(services, descriptor.ImplementationType!));
}
