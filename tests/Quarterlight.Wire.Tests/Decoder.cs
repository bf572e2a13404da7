using Grpc.Core;

namespace Quarterlight.Wire.Tests;

/// <summary>Where the ffmpeg program is not installed, its files must be refused with the way out instead of being read.</summary>
internal static class Decoder
{
    public static bool IsInstalled { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Any(folder => File.Exists(Path.Combine(folder, "ffmpeg")) || File.Exists(Path.Combine(folder, "ffmpeg.exe")));

    public static async Task MissingAsync(Func<Task> send)
    {
        RpcException refused = await Assert.ThrowsAnyAsync<RpcException>(send);
        Assert.Equal(StatusCode.FailedPrecondition, refused.StatusCode);
        Assert.Contains("ffmpeg", refused.Status.Detail, StringComparison.OrdinalIgnoreCase);
    }
}
