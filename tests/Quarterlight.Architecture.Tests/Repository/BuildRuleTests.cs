using System.Diagnostics;

namespace Quarterlight.Architecture.Tests.Repository;

/// <summary>The build itself refuses a domain room that reaches out (target KeepDomainPure of Directory.Build.targets).</summary>
public sealed class BuildRuleTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("quarterlight-house-");

    public BuildRuleTests()
    {
        File.Copy(Path.Combine(House.Root, "Directory.Build.targets"), Path.Combine(_folder.FullName, "Directory.Build.targets"));
        Write("services/domain/Neighbor/Neighbor.csproj", "");
        Write("services/Foreign/Foreign.csproj", "");
    }

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task DomainRoom_NeighborAndNumericPackage_Pass()
    {
        (int code, string output) = await Check("""<ProjectReference Include="../Neighbor/Neighbor.csproj" /><PackageReference Include="MathNet.Numerics" Version="5.0.0" />""");
        Assert.True(code == 0, output);
    }

    [Fact]
    public async Task DomainRoom_ForeignPackage_IsRefused()
    {
        (int code, string output) = await Check("""<PackageReference Include="LiteDB" Version="5.0.21" />""");
        Assert.NotEqual(0, code);
        Assert.Contains("may not reference the package(s): LiteDB", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task DomainRoom_ForeignProject_IsRefused()
    {
        (int code, string output) = await Check("""<ProjectReference Include="../../Foreign/Foreign.csproj" />""");
        Assert.NotEqual(0, code);
        Assert.Contains("may not reference project(s) outside services/domain", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task OrdinaryBuild_ForeignProject_RunsTheCheck()
    {
        Write("services/domain/Room/Room.csproj", """<ProjectReference Include="../../Foreign/Foreign.csproj" />""");
        (int code, string output) = await Run("build", "services/domain/Room/Room.csproj", "--nologo", "-v:q");
        Assert.NotEqual(0, code);
        Assert.Contains("Room is a domain room", output, StringComparison.Ordinal);
    }

    private async Task<(int Code, string Output)> Check(string items)
    {
        Write("services/domain/Room/Room.csproj", items);
        return await Run("msbuild", "services/domain/Room/Room.csproj", "-t:KeepDomainPure", "-nologo");
    }

    private void Write(string path, string items)
    {
        string full = Path.Combine(_folder.FullName, path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllText(full, $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup><TargetFramework>net10.0</TargetFramework></PropertyGroup>
              <ItemGroup>{items}</ItemGroup>
            </Project>
            """);
    }

    private async Task<(int Code, string Output)> Run(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", arguments) { WorkingDirectory = _folder.FullName, RedirectStandardOutput = true, RedirectStandardError = true };

        // The server processes would outlive the test and keep its folder; what the outer build set is not for this one.
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["DOTNET_CLI_USE_MSBUILD_SERVER"] = "0";
        start.Environment["UseSharedCompilation"] = "false";
        start.Environment.Remove("MSBUILD_EXE_PATH");
        start.Environment.Remove("MSBuildSDKsPath");
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output + await error);
    }
}
