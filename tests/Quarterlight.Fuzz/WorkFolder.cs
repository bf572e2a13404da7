using System.Security.Cryptography;

namespace Quarterlight.Fuzz;

/// <summary>Where a run leaves what it kept and what it found.</summary>
internal sealed class WorkFolder
{
    /// <summary>Makes the folders that are missing.</summary>
    public WorkFolder(string path)
    {
        (Path, Kept, Findings, Program) = (path, System.IO.Path.Combine(path, "kept"), System.IO.Path.Combine(path, "findings"), System.IO.Path.Combine(path, "program"));
        foreach (string folder in new[] { Kept, Findings, Program })
        {
            Directory.CreateDirectory(folder);
        }
    }

    /// <summary>The folder.</summary>
    public string Path { get; }

    /// <summary>Inputs that reached something new.</summary>
    public string Kept { get; }

    /// <summary>Inputs that broke a promise, each with a text beside it.</summary>
    public string Findings { get; }

    /// <summary>The instrumented copy.</summary>
    public string Program { get; }

    /// <summary>The file the two processes share.</summary>
    public string Flight => System.IO.Path.Combine(Path, "flight");

    /// <summary>Name of an input: the beginning of its SHA-256.</summary>
    public static string NameOf(ReadOnlySpan<byte> input) => Convert.ToHexStringLower(SHA256.HashData(input).AsSpan(0, 6));

    /// <summary>Writes a finding down, unless the same was found before.</summary>
    /// <param name="kind">Tells findings apart.</param>
    /// <param name="input">The input.</param>
    /// <param name="words">What happened.</param>
    /// <returns>True when it is new.</returns>
    public bool Report(string kind, byte[] input, string words)
    {
        string name = System.IO.Path.Combine(Findings, NameOf(System.Text.Encoding.UTF8.GetBytes(kind)));
        if (File.Exists(name + ".txt"))
        {
            return false;
        }

        File.WriteAllBytes(name + ".bin", input);
        File.WriteAllText(name + ".txt", words);
        return true;
    }
}
