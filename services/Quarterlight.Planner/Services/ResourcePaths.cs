using System.Text.RegularExpressions;
using Google.Api;
using Microsoft.AspNetCore.Grpc.JsonTranscoding;
using Microsoft.AspNetCore.Mvc.ApiExplorer;

namespace Quarterlight.Planner.Services;

/// <summary>
/// Tells the OpenAPI page the real path of resource names: the generator reads {name=cabins/*} as {name} and then finds every
/// kind of resource on one path.
/// </summary>
internal sealed partial class ResourcePaths : IApiDescriptionProvider
{
    /// <summary>After the provider that describes gRPC methods.</summary>
    public int Order => int.MaxValue;

    /// <inheritdoc/>
    public void OnProvidersExecuting(ApiDescriptionProviderContext context)
    {
        // Nothing to do before the others have run.
    }

    /// <inheritdoc/>
    public void OnProvidersExecuted(ApiDescriptionProviderContext context)
    {
        foreach (ApiDescription description in context.Results)
        {
            GrpcJsonTranscodingMetadata? transcoding = description.ActionDescriptor.EndpointMetadata?.OfType<GrpcJsonTranscodingMetadata>().FirstOrDefault();
            if (transcoding is null || NamePattern().Match(PathOf(transcoding.HttpRule)) is not { Success: true } match)
            {
                continue;
            }

            string singular = match.Groups["plural"].Value.TrimEnd('s');
            description.RelativePath = $"v1/{match.Groups["plural"].Value}/{{{singular}}}";
            if (description.ParameterDescriptions.FirstOrDefault(p => p.Source.Id == "Path") is { } parameter)
            {
                parameter.Name = singular;
            }
        }
    }

    private static string PathOf(HttpRule rule) => rule.PatternCase switch
    {
        HttpRule.PatternOneofCase.Get => rule.Get,
        HttpRule.PatternOneofCase.Post => rule.Post,
        HttpRule.PatternOneofCase.Patch => rule.Patch,
        HttpRule.PatternOneofCase.Delete => rule.Delete,
        _ => rule.Put,
    };

    [GeneratedRegex(@"\{[a-z_.]+=(?<plural>[a-z]+)/\*\}")]
    private static partial Regex NamePattern();
}
