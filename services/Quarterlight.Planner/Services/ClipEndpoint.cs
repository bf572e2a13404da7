using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Grpc.Core;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core.Features;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Upload;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>JudgeClip for callers without gRPC: the file is the body, the header is the query, the answer is JSON.</summary>
internal sealed class ClipEndpoint(CallGuard guard, ClipGate gate, ClipAskReader asks, ClipDesk desk)
{
    /// <summary>Path of it.</summary>
    public const string Path = "/v1/clips:judge";

    // As the JSON side of gRPC prints: fields at their default too, and the details of a refusal.
    private static readonly JsonFormatter s_json = new(JsonFormatter.Settings.Default
        .WithFormatDefaultValues(true)
        .WithTypeRegistry(TypeRegistry.FromMessages(BadRequest.Descriptor, ErrorInfo.Descriptor)));

    /// <summary>Answers one upload.</summary>
    public async Task HandleAsync(HttpContext http)
    {
        try
        {
            IHeaderDictionary headers = http.Request.Headers;
            JudgedClip judged = await guard.RunAsync(Path, headers[TeamDirectory.KeyHeader], headers[TeamDirectory.TeamHeader], team => JudgeAsync(team, http), http.RequestAborted).ConfigureAwait(false);
            await WriteAsync(http, StatusCodes.Status200OK, judged).ConfigureAwait(false);
        }
        catch (RpcException refusal)
        {
            if (!http.RequestAborted.IsCancellationRequested)
            {
                await WriteAsync(http, HttpCode(refusal.StatusCode), refusal.GetRpcStatus() ?? new Google.Rpc.Status { Code = (int)refusal.StatusCode, Message = refusal.Status.Detail })
                    .ConfigureAwait(false);
            }
        }
    }

    private static Task WriteAsync(HttpContext http, int code, IMessage message)
    {
        http.Response.StatusCode = code;
        http.Response.ContentType = "application/json";
        return http.Response.WriteAsync(s_json.Format(message), http.RequestAborted);
    }

    private async Task<JudgedClip> JudgeAsync(string team, HttpContext http)
    {
        // The readers have limits of their own for size and for a source that falls silent, with better words than the server's.
        http.Features.GetRequiredFeature<IHttpMaxRequestBodySizeFeature>().MaxRequestBodySize = null;
        if (http.Features.Get<IHttpMinRequestBodyDataRateFeature>() is { } rate)
        {
            rate.MinDataRate = null;
        }

        using WorkGate.Pass pass = gate.Enter();
        if (http.Request.HasFormContentType)
        {
            throw Refusals.Invalid("piece", "the body is a form", "Send the bytes of the file as they are: curl --data-binary @clip.wav -H 'content-type: audio/wav'");
        }

        ClipHeader header = ClipQuery.Read(http.Request.Query);
        if (http.Request.ContentLength is > 0 and { } length)
        {
            header.ByteCount = length;
        }

        ClipAsk ask = await asks.ReadAsync(team, header, "", http.RequestAborted).ConfigureAwait(false);
        var bytes = new BodyStream(http.Request.BodyReader);
        await using (bytes.ConfigureAwait(false))
        {
            return await desk.JudgeAsync(ask, bytes, null, http.RequestAborted).ConfigureAwait(false);
        }
    }

    // As google.rpc.Code says of each.
    private static int HttpCode(StatusCode code) => code switch
    {
        StatusCode.InvalidArgument or StatusCode.FailedPrecondition => StatusCodes.Status400BadRequest,
        StatusCode.Unauthenticated => StatusCodes.Status401Unauthorized,
        StatusCode.PermissionDenied => StatusCodes.Status403Forbidden,
        StatusCode.NotFound => StatusCodes.Status404NotFound,
        StatusCode.Aborted => StatusCodes.Status409Conflict,
        StatusCode.ResourceExhausted => StatusCodes.Status429TooManyRequests,
        StatusCode.Cancelled => StatusCodes.Status499ClientClosedRequest,
        StatusCode.DeadlineExceeded => StatusCodes.Status504GatewayTimeout,
        _ => StatusCodes.Status500InternalServerError,
    };
}
