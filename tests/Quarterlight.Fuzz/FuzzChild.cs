namespace Quarterlight.Fuzz;

/// <summary>The process that fuzzes: it runs from the instrumented copy and may die of what it finds.</summary>
internal static class FuzzChild
{
    /// <summary>Folder of the corpus this project adds to.</summary>
    public const string Own = "fuzz";

    /// <summary>Most bytes of the whole corpus; a test holds it to half a megabyte.</summary>
    public const long MostCorpusBytes = 400_000;

    /// <summary>Fuzzes, and then adds to the corpus when that is asked for.</summary>
    public static void Run(FuzzOptions options)
    {
        var folder = new WorkFolder(options.Work);
        using var flight = new Flight(folder.Flight);
        using var map = new CoverageMap();
        IFuzzTarget target = options.Planted ? new PlantedTarget() : new ReaderTarget(options.Ffmpeg);
        List<byte[]> seeds = options.Planted ? [PlantedTarget.Seed] : [.. Files(options.Corpus!).Concat(Files(Path.Combine(options.Corpus!, Own)))];
        // The readers turn every exception of a decoder into a fault; one that asked for more memory than there is must not hide in that.
        AppDomain.CurrentDomain.FirstChanceException += (_, thrown) =>
        {
            if (thrown.Exception is OutOfMemoryException)
            {
                _ = folder.Report("starved", flight.Input, thrown.Exception.ToString());
            }
        };
        new FuzzLoop(target, options, folder, map, flight).Run(seeds, [.. Files(folder.Kept)]);
        if (options.Keep && !options.Planted)
        {
            Keep(options.Corpus!, target, map, flight, seeds, [.. Files(folder.Kept)]);
        }

        flight.IsFinished = true;
    }

    private static void Keep(string corpus, IFuzzTarget target, CoverageMap map, Flight flight, List<byte[]> seeds, List<byte[]> kept)
    {
        bool Execute(byte[] input)
        {
            flight.Start(input);
            map.Begin();
            try
            {
                target.Take(input);
                return true;
            }
#pragma warning disable CA1031 // Findings were reported; they only must not get into the corpus by themselves.
            catch (Exception)
#pragma warning restore CA1031
            {
                return false;
            }
        }

        string own = Directory.CreateDirectory(Path.Combine(corpus, Own)).FullName;
        List<byte[]> picked = Harvest.Pick(Execute, map, seeds, kept, MostCorpusBytes - seeds.Sum(s => (long)s.Length));
        foreach (byte[] input in picked)
        {
            File.WriteAllBytes(Path.Combine(own, WorkFolder.NameOf(input) + ".bin"), input);
        }

        Console.WriteLine($"{picked.Count} files ({picked.Sum(p => p.Length)} bytes) put into the corpus");
    }

    private static IEnumerable<byte[]> Files(string folder) => Directory.Exists(folder)
        ? Directory.GetFiles(folder).Where(f => !f.EndsWith(".sh", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(File.ReadAllBytes)
        : [];
}
