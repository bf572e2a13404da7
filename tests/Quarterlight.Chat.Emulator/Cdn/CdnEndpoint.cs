using Microsoft.AspNetCore.Http;
using Quarterlight.Chat.Emulator.Recording;
using Quarterlight.Chat.Emulator.Rest;

namespace Quarterlight.Chat.Emulator.Cdn;

/// <summary>Answers requests below /cdn.</summary>
internal sealed class CdnEndpoint(EmulatedPlatform platform)
{
    /// <summary>Where files are, below the address.</summary>
    public const string Prefix = "/cdn";

    /// <summary>Gives a file, or 404 for a link that is wrong or over.</summary>
    public async Task HandleAsync(HttpContext http)
    {
        RecordedRequest record = RestApi.Record(platform.Recording, http, out string path);
        record.Route = "GET /cdn/attachments/:channel/:id/:name";
        FaultRule? fault = platform.Faults.Choose(record.Method, path);
        record.Fault = fault?.Name;
        if (fault is not null && await FaultPlayer.BeforeAsync(fault, http, record).ConfigureAwait(false))
        {
            return;
        }

        IQueryCollection query = http.Request.Query;
        HostedFile? file = http.Request.Method is "GET" or "HEAD" ? platform.Files.Open(path[Prefix.Length..], query["ex"], query["is"], query["hm"]) : null;
        record.Status = http.Response.StatusCode = file is null ? 404 : 200;
        if (file is null)
        {
            await http.Response.WriteAsync("This content is no longer available.", http.RequestAborted).ConfigureAwait(false);
            return;
        }

        http.Response.ContentType = file.ContentType;
        http.Response.ContentLength = file.Bytes.Length;
        ReadOnlyMemory<byte> bytes = fault is { Kind: FaultKind.CutAfter } ? file.Bytes[..(file.Bytes.Length / 2)] : file.Bytes;
        await http.Response.Body.WriteAsync(bytes, http.RequestAborted).ConfigureAwait(false);
        if (fault is { Kind: FaultKind.CutAfter })
        {
            await http.Response.Body.FlushAsync(http.RequestAborted).ConfigureAwait(false);
            http.Abort();
        }
    }
}
