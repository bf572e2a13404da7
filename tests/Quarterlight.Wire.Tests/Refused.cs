using Google.Rpc;
using Grpc.Core;

namespace Quarterlight.Wire.Tests;

/// <summary>What a refused call said.</summary>
public sealed record Refused(StatusCode Code, string Message, ErrorInfo Info, IReadOnlyList<BadRequest.Types.FieldViolation> Fields)
{
    /// <summary>Makes a call that must be refused, and checks what every refusal has.</summary>
    public static Task<Refused> ByAsync<T>(AsyncUnaryCall<T> call) => ByAsync(() => call.ResponseAsync);

    /// <summary>Makes a call that must be refused, and checks what every refusal has.</summary>
    public static async Task<Refused> ByAsync(Func<Task> call)
    {
        RpcException exception = await Assert.ThrowsAsync<RpcException>(call);
        Google.Rpc.Status? status = exception.GetRpcStatus();
        Assert.True(status is not null, $"no rich error: {exception.StatusCode} {exception.Status.Detail}");
        ErrorInfo? info = status.GetDetail<ErrorInfo>();
        Assert.NotNull(info);
        Assert.Equal("quarterlight", info.Domain);
        var refused = new Refused(exception.StatusCode, status.Message, info, status.GetDetail<BadRequest>()?.FieldViolations ?? []);
        VerifyForPeople(refused.Message);
        foreach (BadRequest.Types.FieldViolation field in refused.Fields)
        {
            Assert.NotEqual("", field.Field);
            VerifyForPeople(field.Description);
            Assert.EndsWith(".", field.Description, StringComparison.Ordinal);
        }

        return refused;
    }

    /// <summary>Makes a call that must be refused for its fields.</summary>
    public static Task<Refused> ForFieldsAsync<T>(AsyncUnaryCall<T> call) => ForFieldsAsync(() => call.ResponseAsync);

    /// <summary>Makes a call that must be refused for its fields.</summary>
    public static async Task<Refused> ForFieldsAsync(Func<Task> call)
    {
        Refused refused = await ByAsync(call);
        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.Equal("INVALID_FIELDS", refused.Info.Reason);
        Assert.NotEmpty(refused.Fields);
        return refused;
    }

    /// <summary>Checks that one of the fields named is this one.</summary>
    public void Names(string field) => Assert.Contains(field, Fields.Select(f => f.Field));

    private static void VerifyForPeople(string text)
    {
        Assert.NotEqual("", text);
        Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter '", text, StringComparison.Ordinal);
    }
}
