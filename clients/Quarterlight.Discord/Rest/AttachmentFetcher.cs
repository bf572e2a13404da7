using Microsoft.Extensions.Logging;

namespace Quarterlight.Discord.Rest;

/// <summary>
/// Fetches files of interactions, from the platform's own file hosts and nowhere else: an address is text that came from outside, and must not be
/// able to send this process to a machine of its own network. It has a connection of its own, without credentials, cookies, proxy or redirects.
/// </summary>
public sealed class AttachmentFetcher : IDisposable
{
    private const int Tries = 2;

    // API Reference, Image Base URL and Signed Attachment CDN URLs; the second host stands in the notes on stickers there.
    private static readonly string[] Hosts = ["cdn.discordapp.com", "media.discordapp.net"];

    private readonly AttachmentOptions options;
    private readonly TimeProvider time;
    private readonly ILogger logger;
    private readonly HttpClient http;

    /// <summary>A fetcher; one for the process.</summary>
    /// <param name="options">Limits.</param>
    /// <param name="time">Clock for time-outs.</param>
    /// <param name="logger">Where it logs.</param>
    /// <exception cref="ArgumentException">The test host is not on this machine.</exception>
    public AttachmentFetcher(AttachmentOptions options, TimeProvider time, ILogger<AttachmentFetcher> logger)
        : this(options, time, logger, MakeHandler())
    {
    }

    internal AttachmentFetcher(AttachmentOptions options, TimeProvider time, ILogger logger, HttpMessageHandler handler)
    {
        if (options.LoopbackTestHost is { } host && !(host.IsAbsoluteUri && host.IsLoopback && host.UserInfo.Length == 0))
        {
            throw new ArgumentException("The test host must be on this machine.", nameof(options));
        }

        this.options = options;
        this.time = time;
        this.logger = logger;
        http = new HttpClient(handler, disposeHandler: true) { Timeout = Timeout.InfiniteTimeSpan };
    }

    /// <summary>Opens a file. What is read comes straight from the connection.</summary>
    /// <param name="attachment">As named by the interaction.</param>
    /// <param name="mostBytes">Largest size taken.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="DiscordException">See <see cref="IInteractionResponder.OpenAttachmentAsync"/>.</exception>
    public async Task<Stream> OpenAsync(DiscordAttachment attachment, long mostBytes, CancellationToken cancellation)
    {
        if (attachment.ByteCount > mostBytes)
        {
            throw Fault(DiscordFault.TooLarge, attachment, $"{attachment.ByteCount} bytes, {mostBytes} are taken");
        }

        if (AddressOf(attachment.Url) is not { } address)
        {
            throw Fault(DiscordFault.Refused, attachment, "its address is not on the platform's file hosts");
        }

        for (int attempt = 1; ; attempt++)
        {
            try
            {
                return await OpenOnceAsync(attachment, address, mostBytes, cancellation).ConfigureAwait(false);
            }
            catch (DiscordException e) when (e.Fault == DiscordFault.Unavailable && e.Code is null or >= 500 && attempt < Tries)
            {
                // Nothing was handed on yet, so it can be tried again.
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose() => http.Dispose();

    /// <summary>The address to fetch from; null when it is not allowed.</summary>
    internal Uri? AddressOf(string url)
    {
        // The beginning is compared as it is written, before anything is decoded; then what was made of it is held against the same rules.
        if (!Uri.TryCreate(url, UriKind.Absolute, out Uri? address) || url.Any(c => c is <= ' ' or >= '\u007f' or '\\') || address.UserInfo.Length > 0)
        {
            return null;
        }

        bool own = address.Scheme == Uri.UriSchemeHttps && address.IsDefaultPort
            && Array.Exists(Hosts, h => address.Host == h && url.StartsWith($"https://{h}/", StringComparison.Ordinal));
        bool test = options.LoopbackTestHost is { } host && address.Scheme == host.Scheme && address.Host == host.Host && address.Port == host.Port
            && url.StartsWith($"{host.Scheme}://{host.Authority}/", StringComparison.Ordinal);
        return own || test ? address : null;
    }

    private async Task<Stream> OpenOnceAsync(DiscordAttachment attachment, Uri address, long mostBytes, CancellationToken cancellation)
    {
        using var end = new CancellationTokenSource(options.FirstByte, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellation, end.Token);
        using var request = new HttpRequestMessage(HttpMethod.Get, address);
        HttpResponseMessage? response = null;
        try
        {
            response = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, either.Token).ConfigureAwait(false);
            Check(attachment, response, mostBytes);
            Stream inner = await response.Content.ReadAsStreamAsync(either.Token).ConfigureAwait(false);
            var stream = new AttachmentStream(response, inner, attachment, mostBytes, options, time);
            response = null;
            return stream;
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            throw Fault(DiscordFault.Unavailable, attachment, "the file host did not answer in time");
        }
        catch (Exception e) when (e is HttpRequestException or IOException)
        {
            throw Fault(DiscordFault.Unavailable, attachment, "the file host could not be reached");
        }
        finally
        {
            response?.Dispose();
        }
    }

    private void Check(DiscordAttachment attachment, HttpResponseMessage response, long mostBytes)
    {
        int status = (int)response.StatusCode;
        if (status != 200)
        {
            throw status switch
            {
                401 or 403 or 404 or 410 => Fault(DiscordFault.NotFound, attachment, $"the file host says {status}: expired or gone", status),
                >= 300 and < 400 => Fault(DiscordFault.Refused, attachment, "the file host points elsewhere", status),
                _ => Fault(DiscordFault.Unavailable, attachment, $"the file host says {status}", status),
            };
        }

        if (response.Content.Headers.ContentLength is { } length && (length > mostBytes || length > attachment.ByteCount))
        {
            throw Fault(DiscordFault.TooLarge, attachment, $"{length} bytes, {Math.Min(mostBytes, attachment.ByteCount)} are taken");
        }
    }

    private DiscordException Fault(DiscordFault fault, DiscordAttachment attachment, string why, int? status = null)
    {
        string what = $"{attachment}: {why}";
        logger.RestFileRefused(what);
        return new DiscordException(fault, what, status);
    }

    private static SocketsHttpHandler MakeHandler() => new()
    {
        AllowAutoRedirect = false,
        UseCookies = false,
        UseProxy = false,
        Credentials = null,
        ConnectTimeout = TimeSpan.FromSeconds(5),
        PooledConnectionLifetime = TimeSpan.FromMinutes(2),
        ActivityHeadersPropagator = null,
    };
}
