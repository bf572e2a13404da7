using System.Globalization;

namespace Quarterlight.Fuzz;

/// <summary>What is asked for on the command line.</summary>
internal sealed record FuzzOptions
{
    /// <summary>How it is called.</summary>
    public const string Usage =
        "--corpus FOLDER  [--minutes 10] [--executions N] [--seed 1] [--keep] [--resume] [--ffmpeg PATH] [--work FOLDER]  |  --planted [--blind]  |  --replay FILE";

    /// <summary>Folder of the files it begins with.</summary>
    public string? Corpus { get; init; }

    /// <summary>Longest time in minutes.</summary>
    public double Minutes { get; init; } = 10;

    /// <summary>Most inputs.</summary>
    public long Executions { get; init; } = long.MaxValue;

    /// <summary>Seed of all that is drawn.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Puts small inputs that reach new edges into the corpus.</summary>
    public bool Keep { get; init; }

    /// <summary>Goes on with what an earlier run left in the folder to work in.</summary>
    public bool Resume { get; init; }

    /// <summary>Fuzzes the toy with the planted defect.</summary>
    public bool Planted { get; init; }

    /// <summary>Learns nothing from coverage: to see what the coverage is worth.</summary>
    public bool Blind { get; init; }

    /// <summary>Full path of an ffmpeg program; without it, files that need it are refused.</summary>
    public string? Ffmpeg { get; init; }

    /// <summary>Folder to work in.</summary>
    public string Work { get; init; } = Path.Combine(Path.GetTempPath(), "quarterlight-fuzz");

    /// <summary>One file to take, without instrumentation.</summary>
    public string? Replay { get; init; }

    /// <summary>True in the process that fuzzes.</summary>
    public bool IsChild { get; init; }

    /// <summary>Reads the command line.</summary>
    /// <exception cref="ArgumentException">It cannot be understood.</exception>
    public static FuzzOptions Parse(IReadOnlyList<string> words)
    {
        var options = new FuzzOptions();
        for (int i = 0; i < words.Count; i++)
        {
            string Next() => ++i < words.Count ? words[i] : throw new ArgumentException($"{words[i - 1]} wants a value");
            options = words[i] switch
            {
                "--corpus" => options with { Corpus = Path.GetFullPath(Next()) },
                "--minutes" => options with { Minutes = double.Parse(Next(), CultureInfo.InvariantCulture) },
                "--executions" => options with { Executions = long.Parse(Next(), CultureInfo.InvariantCulture) },
                "--seed" => options with { Seed = int.Parse(Next(), CultureInfo.InvariantCulture) },
                "--keep" => options with { Keep = true },
                "--resume" => options with { Resume = true },
                "--planted" => options with { Planted = true },
                "--blind" => options with { Blind = true },
                "--ffmpeg" => options with { Ffmpeg = Path.GetFullPath(Next()) },
                "--work" => options with { Work = Path.GetFullPath(Next()) },
                "--replay" => options with { Replay = Next() },
                "--child" => options with { IsChild = true },
                string other => throw new ArgumentException($"{other} is not known"),
            };
        }

        return options;
    }

    /// <summary>The command line that asks for the same of the process that fuzzes.</summary>
    public IEnumerable<string> ForChild(double minutes, long executions, int seed)
    {
        yield return "--child";
        foreach ((string name, string? value) in new[]
        {
            ("--corpus", Corpus), ("--minutes", minutes.ToString("R", CultureInfo.InvariantCulture)), ("--executions", executions.ToString(CultureInfo.InvariantCulture)),
            ("--seed", seed.ToString(CultureInfo.InvariantCulture)), ("--ffmpeg", Ffmpeg), ("--work", Work),
        })
        {
            if (value is not null)
            {
                yield return name;
                yield return value;
            }
        }

        foreach ((string name, bool wanted) in new[] { ("--keep", Keep), ("--planted", Planted), ("--blind", Blind) })
        {
            if (wanted)
            {
                yield return name;
            }
        }
    }
}
