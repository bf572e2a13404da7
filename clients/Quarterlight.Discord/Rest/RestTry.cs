using System.Net.Http.Headers;
using System.Net.Sockets;

namespace Quarterlight.Discord.Rest;

/// <summary>Sends a request once.</summary>
internal sealed class RestTry : IDisposable
{
    private const int MostAnswerBytes = 8 * 1024 * 1024;

    private readonly HttpClient http;
    private readonly string baseAddress;
    private readonly AuthenticationHeaderValue? bot;
    private readonly RestOptions options;
    private readonly TimeProvider time;

    public RestTry(RestOptions options, TimeProvider time, HttpMessageHandler handler)
    {
        this.options = options;
        this.time = time;
        baseAddress = options.BaseAddress.AbsoluteUri.TrimEnd('/');
        bot = options.BotToken is { } token ? new AuthenticationHeaderValue("Bot", token) : null;
        http = new HttpClient(handler, disposeHandler: true)
        {
            Timeout = Timeout.InfiniteTimeSpan,
            MaxResponseContentBufferSize = MostAnswerBytes,
        };
        // The form "DiscordBot (url, version)" is prescribed (API Reference, User Agent).
        http.DefaultRequestHeaders.TryAddWithoutValidation("User-Agent", $"DiscordBot ({options.ProductUrl}, {options.ProductVersion})");
    }

    /// <summary>
    /// The handler for all requests of the process. It carries no cookies and follows nothing, and its own traces are switched off: they would hold
    /// addresses, and the address of an interaction is a password.
    /// </summary>
    public static SocketsHttpHandler MakeHandler() => new()
    {
        AllowAutoRedirect = false,
        UseCookies = false,
        ConnectTimeout = TimeSpan.FromSeconds(5),
        PooledConnectionLifetime = TimeSpan.FromMinutes(5),
        PooledConnectionIdleTimeout = TimeSpan.FromMinutes(1),
        ActivityHeadersPropagator = null,
    };

    /// <summary>Longest time for a try of this call.</summary>
    public TimeSpan LimitFor(RestCall call) =>
        options.TryTimeout + TimeSpan.FromSeconds((call.Body?.Length ?? 0) / (double)options.SlowestUploadBytesPerSecond);

    /// <summary>Sends, and waits for the whole answer.</summary>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public async Task<RestOutcome> RunAsync(RestCall call, TimeSpan limit, CancellationToken cancellation)
    {
        using var end = new CancellationTokenSource(limit, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellation, end.Token);
        using var request = new HttpRequestMessage(call.Route.Method, new Uri(baseAddress + call.Route.Path)) { Content = call.Body?.Create() };
        if (call.Route.IsBot)
        {
            request.Headers.Authorization = bot ?? throw new InvalidOperationException("This request needs the bot's token, and none was given.");
        }

        try
        {
            using HttpResponseMessage response = await http.SendAsync(request, HttpCompletionOption.ResponseContentRead, either.Token).ConfigureAwait(false);
            byte[] body = await response.Content.ReadAsByteArrayAsync(either.Token).ConfigureAwait(false);
            return new RestOutcome(RestBreak.None, (int)response.StatusCode, body, LimitHeaders.Read(response.Headers));
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return new RestOutcome(RestBreak.TimedOut, 0, [], default);
        }
        catch (HttpRequestException e)
        {
            // The texts of these exceptions are the runtime's and not ours to vouch for: only the kind is kept.
            string detail = e.InnerException is SocketException socket ? socket.SocketErrorCode.ToString() : e.HttpRequestError.ToString();
            bool notSent = e.HttpRequestError is HttpRequestError.ConnectionError or HttpRequestError.NameResolutionError or HttpRequestError.SecureConnectionError;
            return new RestOutcome(notSent ? RestBreak.NotSent : RestBreak.Broken, 0, [], default, detail);
        }
        catch (IOException)
        {
            return new RestOutcome(RestBreak.Broken, 0, [], default);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => http.Dispose();
}
