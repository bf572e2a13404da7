using Microsoft.OpenApi.Models;
using Quarterlight.Planner.Upload;
using Quarterlight.V1;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace Quarterlight.Planner.Services;

/// <summary>Puts the upload of a clip, which is no gRPC method on the JSON side, on the OpenAPI page.</summary>
internal sealed class ClipUploadDocument : IDocumentFilter
{
    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        var operation = new OpenApiOperation
        {
            Tags = [new OpenApiTag { Name = nameof(ClipService) }],
            Summary = "Judges a clip: the body is the file, up to 200 MiB; the answer is a JudgedClip. A refusal looks as everywhere.",
            OperationId = "ClipService_JudgeClip",
            Parameters = [.. ClipQuery.Parameters.Select(p => Parameter(p.Name, p.Kind, p.Words))],
            RequestBody = new OpenApiRequestBody
            {
                Required = true,
                Content = { ["application/octet-stream"] = new OpenApiMediaType { Schema = new OpenApiSchema { Type = "string", Format = "binary" } } },
            },
            Responses = new OpenApiResponses
            {
                ["200"] = new OpenApiResponse
                {
                    Description = "The clip, judged.",
                    Content = { ["application/json"] = new OpenApiMediaType { Schema = context.SchemaGenerator.GenerateSchema(typeof(JudgedClip), context.SchemaRepository) } },
                },
            },
        };
        swaggerDoc.Paths.Add(ClipEndpoint.Path, new OpenApiPathItem { Operations = { [OperationType.Post] = operation } });
    }

    private static OpenApiParameter Parameter(string name, string kind, string words) => new()
    {
        Name = name,
        In = ParameterLocation.Query,
        Description = words,
        Schema = new OpenApiSchema { Type = kind },
    };
}
