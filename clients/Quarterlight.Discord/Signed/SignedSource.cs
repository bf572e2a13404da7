using System.Buffers;
using System.Net.Mime;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Primitives;

namespace Quarterlight.Discord.Signed;

/// <summary>
/// Interactions as signed HTTP requests, for a deployment without a lasting connection. The host maps <see cref="HandleAsync"/> as a POST. A request
/// that was taken is answered 202 without body: the interaction itself is answered over REST, like the gateway's.
/// </summary>
public sealed class SignedSource : IInteractionSource
{
    /// <summary>Largest body taken, bytes.</summary>
    public const int MostBodyBytes = 256 * 1024;

    private const string SignatureHeader = "X-Signature-Ed25519";
    private const string TimeHeader = "X-Signature-Timestamp";

    private static readonly ReadOnlyMemory<byte> Pong = "{\"type\":1}"u8.ToArray();

    private readonly InteractionSignature signature;
    private readonly TimeProvider time;
    private readonly ILogger logger;
    private Func<Interaction, bool>? receiver;

    /// <summary>A source that takes nothing yet.</summary>
    public SignedSource(InteractionSignature signature, TimeProvider time, ILogger<SignedSource> logger)
    {
        ArgumentNullException.ThrowIfNull(signature);
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(logger);
        this.signature = signature;
        this.time = time;
        this.logger = logger;
    }

    /// <inheritdoc/>
    public SourceHealth Health => Volatile.Read(ref receiver) is null ? new(false, "not taking requests", null) : new(true, "taking requests", null);

    /// <inheritdoc/>
    /// <exception cref="InvalidOperationException">It is running already.</exception>
    public async Task RunAsync(Func<Interaction, bool> receive, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(receive);
        if (Interlocked.CompareExchange(ref receiver, receive, null) is not null)
        {
            throw new InvalidOperationException("The source is running already.");
        }

        try
        {
            await Task.Delay(Timeout.InfiniteTimeSpan, time, cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            // As asked.
        }
        finally
        {
            Volatile.Write(ref receiver, null);
        }
    }

    /// <summary>Takes one request.</summary>
    public async Task HandleAsync(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        long received = time.GetTimestamp();
        if (context.Request.ContentLength > MostBodyBytes)
        {
            context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
            return;
        }

        // One byte more than may come: what fills it is too large and need not be read to its end.
        int most = (int)(context.Request.ContentLength ?? MostBodyBytes);
        byte[] body = ArrayPool<byte>.Shared.Rent(most + 1);
        try
        {
            int length = await context.Request.Body.ReadAtLeastAsync(body.AsMemory(0, most + 1), most + 1, throwOnEndOfStream: false, context.RequestAborted).ConfigureAwait(false);
            if (length > most)
            {
                context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
                return;
            }

            await AnswerAsync(context, body.AsMemory(0, length), received).ConfigureAwait(false);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(body, clearArray: true);
        }
    }

    private async Task AnswerAsync(HttpContext context, ReadOnlyMemory<byte> body, long received)
    {
        SignatureVerdict verdict = signature.Check(Only(context, SignatureHeader), Only(context, TimeHeader), body.Span);
        if (verdict != SignatureVerdict.Right)
        {
            // The same answer whatever was wrong: the platform sends wrong ones on purpose, and nobody else need learn more.
            logger.SignatureRefused(verdict);
            context.Response.StatusCode = StatusCodes.Status401Unauthorized;
            return;
        }

        if (!InteractionReader.TryRead(body, received, out Interaction? interaction, out InteractionFlaw flaw))
        {
            logger.InteractionUnreadable(flaw);
            DiscordTelemetry.Unreadable.Add(1, new KeyValuePair<string, object?>("reason", flaw.ToString()));
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            return;
        }

        if (interaction.Kind == InteractionKind.Ping)
        {
            context.Response.ContentType = MediaTypeNames.Application.Json;
            context.Response.ContentLength = Pong.Length;
            await context.Response.Body.WriteAsync(Pong, context.RequestAborted).ConfigureAwait(false);
            return;
        }

        context.Response.StatusCode = HandOn(interaction) ? StatusCodes.Status202Accepted : StatusCodes.Status503ServiceUnavailable;
    }

    private bool HandOn(Interaction interaction)
    {
        bool taken = false;
        try
        {
            taken = Volatile.Read(ref receiver)?.Invoke(interaction) ?? false;
        }
        catch (Exception failed)
        {
            logger.ReceiverFailed(failed.GetType().Name);
        }

        DiscordTelemetry.Interactions.Add(1, new("kind", interaction.Kind.ToString()), new("way", "signed"), new KeyValuePair<string, object?>("taken", taken));
        return taken;
    }

    private static string? Only(HttpContext context, string header) =>
        context.Request.Headers.TryGetValue(header, out StringValues values) && values.Count == 1 ? values[0] : null;
}
