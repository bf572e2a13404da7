using Quarterlight.Planner.Services;

namespace Quarterlight.Planner.Upload;

/// <summary>
/// The gate of clips. A clip holds a core for one block of samples and not while it waits for bytes, so a slow upload is in nobody's way.
/// </summary>
internal sealed class ClipGate : WorkGate
{
    /// <summary>Makes it for <see cref="PlannerHostOptions.MostClips"/>.</summary>
    public ClipGate(PlannerHostOptions options)
        : base(options.MostClips, "clips")
    {
        // A decoder that pulls (Vorbis) waits for bytes on a thread of the pool, which is slow to make new ones: slow uploads must not hold up all else.
        ThreadPool.GetMinThreads(out int workers, out int completions);
        ThreadPool.SetMinThreads(Math.Max(workers, Environment.ProcessorCount + options.MostClips), completions);
    }
}
