using System.Diagnostics;
using Microsoft.Extensions.Logging;

namespace Quarterlight.Discord.Rest;

/// <summary>
/// The platform's REST API: one for the process, because limits are learned here and forgetting them gets an address shut out. Whoever sends waits
/// for its turn in the bucket, in order, and a request is sent again where that is safe and there is time.
/// </summary>
public sealed class RestClient : IDisposable
{
    /// <summary>Name of the meter with the figures of this client.</summary>
    public const string MeterName = RestMetrics.MeterName;

    /// <summary>Name of the source of its traces: route templates, statuses and tries, no address.</summary>
    public const string ActivitySourceName = "Quarterlight.Discord.Rest";

    // The platform drops an interaction 3 s after it was sent; a second try of the first answer must begin before this.
    internal static readonly TimeSpan LastFirstAnswer = TimeSpan.FromSeconds(2.5);

    // Below this a first answer is small, and its first try is cut short so that a second still fits. A picture on a slow line gets the whole time.
    private const long SmallBytes = 16 * 1024;
    private const int MostTries = 3;
    private const int AlreadyAnswered = 40060;
    private const int UnknownInteraction = 10062;
    internal const int UnknownMessage = 10008;

    private readonly ActivitySource source = new(ActivitySourceName);
    private readonly RestMetrics metrics = new();
    private readonly GoneTokens gone = new();
    private readonly RestClock clock;
    private readonly RestTurns turns;
    private readonly RestTry tries;
    private readonly RestPauses pauses;
    private readonly RefusalGuard guard;
    private readonly ILogger logger;
    private readonly TimeSpan longestWait;
    private volatile bool badToken;

    /// <summary>A client; give it to everybody who talks to the platform.</summary>
    /// <param name="options">How the API is reached.</param>
    /// <param name="time">Clock for limits and time-outs.</param>
    /// <param name="logger">Where it logs.</param>
    public RestClient(RestOptions options, TimeProvider time, ILogger<RestClient> logger)
        : this(options, time, logger, RestTry.MakeHandler())
    {
    }

    internal RestClient(RestOptions options, TimeProvider time, ILogger logger, HttpMessageHandler handler)
    {
        this.logger = logger;
        longestWait = options.LongestWait;
        clock = new RestClock(time);
        turns = new RestTurns(clock, options, metrics);
        tries = new RestTry(options, time, handler);
        pauses = new RestPauses(options.JitterSeed);
        guard = new RefusalGuard(clock, options.RefusedRequestsLimit);
    }

    /// <summary>Buckets in memory.</summary>
    internal int BucketCount => turns.BucketCount;

    internal ILogger Logger => logger;

    internal TimeProvider Time => clock.Time;

    /// <summary>Sends a request, as often as it takes and is allowed.</summary>
    /// <exception cref="DiscordException">It was refused, or could not be done in time.</exception>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    internal async Task<RestAnswer> SendAsync(RestCall call, CancellationToken cancellation)
    {
        using Activity? activity = source.StartActivity(call.Route.ToString(), ActivityKind.Client);
        activity?.SetTag("http.request.method", call.Route.Method.Method).SetTag("url.template", call.Route.Template);
        try
        {
            return await SendAsync(call, activity, cancellation).ConfigureAwait(false);
        }
        catch (DiscordException e)
        {
            activity?.SetStatus(ActivityStatusCode.Error, e.Fault.ToString());
            throw;
        }
    }

    private async Task<RestAnswer> SendAsync(RestCall call, Activity? activity, CancellationToken cancellation)
    {
        RestRoute route = call.Route;
        using RestTurns.RestTurn turn = turns.Begin(call);
        for (int attempt = 1; ; attempt++)
        {
            ThrowIfHopeless(route);
            await turn.WaitAsync(cancellation).ConfigureAwait(false);
            ThrowIfHopeless(route);
            TimeSpan started = clock.Now;
            RestOutcome outcome;
            try
            {
                outcome = await tries.RunAsync(call, LimitFor(call, attempt), cancellation).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                turn.Lost();
                throw;
            }

            double milliseconds = (clock.Now - started).TotalMilliseconds;
            metrics.Tried(route, outcome.Status);
            activity?.SetTag("http.response.status_code", outcome.Status).SetTag("http.request.resend_count", attempt - 1);
            (string Scope, TimeSpan Wait)? limited = turn.Learn(outcome, pauses.Lengthen);
            Note(route, outcome, limited);
            if (outcome.IsSuccess)
            {
                logger.RestAnswered(route.ToString(), outcome.Status, milliseconds);
                return new RestAnswer(outcome.Status, outcome.Body);
            }

            if (route.Repeat == RestRepeat.FirstAnswer && attempt > 1 && outcome.Error.Code == AlreadyAnswered)
            {
                logger.RestArrivedBefore();
                return new RestAnswer(outcome.Status, outcome.Body);
            }

            TimeSpan? pause = attempt < (route.Repeat == RestRepeat.FirstAnswer ? 2 : MostTries) ? PauseBefore(route, outcome, limited, attempt) : null;
            if (pause is not { } wait || wait > longestWait || clock.Now + wait > LastStart(call))
            {
                throw Refused(call, outcome, milliseconds);
            }

            metrics.Repeated(route);
            logger.RestRepeats(outcome.Describe(route), attempt + 1, (wait + (limited?.Wait ?? TimeSpan.Zero)).TotalMilliseconds);
            await clock.WaitAsync(wait, cancellation).ConfigureAwait(false);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        tries.Dispose();
        metrics.Dispose();
        source.Dispose();
    }

    private void ThrowIfHopeless(RestRoute route)
    {
        if (route.IsBot && badToken)
        {
            throw new DiscordException(DiscordFault.BadToken, $"{route}: not sent, the bot's token was refused before", 401);
        }

        if (guard.IsShut)
        {
            throw new DiscordException(DiscordFault.RateLimited, $"{route}: not sent, too many requests were refused in the last 10 minutes");
        }

        // Before its first answer the platform knows no webhook of an interaction: that one was not found says nothing against a first answer.
        if (route.IsInteraction && gone.Find(route.Top) is { } fault && (route.Repeat != RestRepeat.FirstAnswer || fault != DiscordFault.NotFound))
        {
            throw new DiscordException(fault, $"{route}: not sent, the interaction is known to be over");
        }
    }

    private TimeSpan LimitFor(RestCall call, int attempt)
    {
        TimeSpan limit = tries.LimitFor(call);
        if (call.Route.Repeat != RestRepeat.FirstAnswer || attempt > 1 || call.Body?.Length > SmallBytes || call.LastStart is not { } last)
        {
            return limit;
        }

        TimeSpan half = (clock.At(last) - clock.Now) / 2;
        return half > TimeSpan.Zero && half < limit ? half : limit;
    }

    // What an answer means for requests that come after this one.
    private void Note(RestRoute route, RestOutcome outcome, (string Scope, TimeSpan Wait)? limited)
    {
        if (limited is var (scope, wait))
        {
            metrics.Limited(scope);
            logger.RestLimited(route.ToString(), scope, wait.TotalMilliseconds);
        }

        if ((outcome.Status is 401 or 403 || (outcome.Status == 429 && limited?.Scope != "shared")) && guard.Add())
        {
            logger.RestShut(guard.Count);
        }

        if (outcome.Status == 401 && route.IsBot && !badToken)
        {
            badToken = true;
            logger.RestBadToken();
        }

        if (route.IsInteraction && (outcome.Status == 401 || (outcome.Status == 404 && outcome.Error.Code != UnknownMessage)))
        {
            gone.Add(route.Top, outcome.Fault(route));
        }

        if (route.Repeat == RestRepeat.FirstAnswer && (outcome.IsSuccess || outcome.Error.Code == AlreadyAnswered))
        {
            gone.Remove(route.Top);
        }
    }

    // How long to wait before the request goes out again; null when it must not.
    private TimeSpan? PauseBefore(RestRoute route, RestOutcome outcome, (string Scope, TimeSpan Wait)? limited, int attempt)
    {
        if (limited is not null)
        {
            return TimeSpan.Zero;
        }

        if (!outcome.MayPass || (route.Repeat == RestRepeat.Unsafe && outcome.Break != RestBreak.NotSent))
        {
            return null;
        }

        return route.Repeat == RestRepeat.FirstAnswer ? pauses.Short() : pauses.Next(attempt, outcome.Limits.RetryAfter);
    }

    private TimeSpan LastStart(RestCall call) => call.LastStart is { } last ? clock.At(last) : TimeSpan.MaxValue;

    private DiscordException Refused(RestCall call, RestOutcome outcome, double milliseconds)
    {
        string what = outcome.Describe(call.Route);
        logger.RestRefused(what, milliseconds);
        if (outcome.Error.Code == UnknownInteraction && call.Route.Repeat == RestRepeat.FirstAnswer)
        {
            logger.RestTooLate((clock.Now - LastStart(call) + LastFirstAnswer).TotalMilliseconds);
        }

        return new DiscordException(outcome.Fault(call.Route), what, outcome.Error.Code ?? (outcome.Status > 0 ? outcome.Status : null));
    }
}
