namespace Quarterlight.Wire.Tests;

/// <summary>A folder of the test's own, gone afterwards.</summary>
public sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("quarterlight-wire-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
