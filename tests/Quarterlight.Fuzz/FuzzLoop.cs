using System.Diagnostics;

namespace Quarterlight.Fuzz;

/// <summary>
/// Damages what it has, keeps what reaches something new, and reports what breaks a promise. Everything is drawn from one seed; on
/// what the seed cannot rule see docs/models/audio-files.md.
/// </summary>
internal sealed class FuzzLoop(IFuzzTarget target, FuzzOptions options, WorkFolder folder, CoverageMap map, Flight flight)
{
    private const int SlowMs = 10_000;
    private const int MostCuts = 24;
    private readonly Random _random = new(options.Seed);
    private readonly List<byte[]> _kept = [];
    private readonly Stopwatch _time = Stopwatch.StartNew();
    private long _executions;
    private bool _found;

    /// <summary>Runs until the time or the number of inputs is used up.</summary>
    /// <param name="seeds">What it begins with.</param>
    /// <param name="before">What an earlier process of the same run kept.</param>
    public void Run(IReadOnlyList<byte[]> seeds, IReadOnlyList<byte[]> before)
    {
        foreach (byte[] seed in seeds)
        {
            _ = Execute(seed);
            map.Keep();
            _kept.Add(seed);
        }

        flight.EdgesAtStart = map.Edges;
        flight.Edges = map.Edges;
        foreach (byte[] input in before)
        {
            Try(input);
        }

        var mutator = new Mutator(_random);
        // The toy has one defect only: once it is found, all is shown.
        while (!(options.Planted && _found) && _executions < options.Executions && _time.Elapsed.TotalMinutes < options.Minutes)
        {
            Try(mutator.Mutate(Choose(), _kept[_random.Next(_kept.Count)]));
        }
    }

    // The smallest of a few: small inputs run fast and are hit where it counts; every fourth time any one, or large ones would wait for good.
    private byte[] Choose()
    {
        byte[] chosen = _kept[_random.Next(_kept.Count)];
        for (int more = _random.Next(4) == 0 ? 0 : 2; more > 0; more--)
        {
            byte[] other = _kept[_random.Next(_kept.Count)];
            chosen = other.Length < chosen.Length ? other : chosen;
        }

        return chosen;
    }

    private void Try(byte[] input)
    {
        if (!Execute(input) || map.News() is not { } news || options.Blind)
        {
            return;
        }

        // Twice the same, or it was chance: one-time set-up, or two threads.
        if (!Execute(input) || !map.Reached(news))
        {
            _ = Execute(input);
            map.Keep();
            return;
        }

        byte[] small = Cut(input, news);
        if (!Execute(small))
        {
            return;
        }

        map.Keep();
        _kept.Add(small);
        flight.Kept++;
        flight.Edges = map.Edges;
        File.WriteAllBytes(Path.Combine(folder.Kept, WorkFolder.NameOf(small)), small);
        _ = Guarded(small, target.TakeAgain);
    }

    // Leaves out pieces, from the end on, as long as the same is reached.
    private byte[] Cut(byte[] input, List<(int Entry, byte Bit)> news)
    {
        int cuts = 0;
        for (int piece = input.Length / 2; piece >= 4 && cuts < MostCuts; piece /= 2)
        {
            for (int at = input.Length - piece; at >= 0 && cuts < MostCuts; at -= piece, cuts++)
            {
                byte[] shorter = [.. input[..at], .. input[(at + piece)..]];
                shorter = FileParts.IsOgg(shorter) ? Mending.OggPages(shorter, renumber: false) : shorter;
                if (shorter.Length < input.Length && Execute(shorter) && map.Reached(news))
                {
                    input = shorter;
                    at = Math.Min(at, input.Length);
                }
            }
        }

        return input;
    }

    private bool Execute(byte[] input)
    {
        _executions++;
        return Guarded(input, target.Take);
    }

    // False when the input is a finding: those are reported once and never kept.
    private bool Guarded(byte[] input, Action<byte[]> take)
    {
        flight.Start(input);
        long begun = Stopwatch.GetTimestamp();
        map.Begin();
        try
        {
            take(input);
            long tookMs = (long)Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
            flight.SlowestMs = Math.Max(flight.SlowestMs, tookMs);
            flight.MostAllocated = Math.Max(flight.MostAllocated, target is ReaderTarget reader ? reader.AllocatedBytes : 0);
            return tookMs < SlowMs || !folder.Report("slow", input, $"It took {tookMs} ms.");
        }
#pragma warning disable CA1031 // Any exception is a finding; that is what this is for.
        catch (Exception finding)
#pragma warning restore CA1031
        {
            _found = true;
            _ = folder.Report(KindOf(finding), input, finding.ToString());
            return false;
        }
    }

    private static string KindOf(Exception finding) => finding is FindingException broken
        ? broken.Promise
        : $"{finding.GetType().Name} {new StackTrace(finding).GetFrame(0)?.GetMethod()?.DeclaringType} {new StackTrace(finding).GetFrame(0)?.GetMethod()?.Name}";
}
