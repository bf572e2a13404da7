using Quarterlight.Clips.Tagging;

namespace Quarterlight.Planner.Upload;

/// <summary>
/// The model that hears tags, loaded for the first clip so that a start takes no longer. Where it cannot be loaded, mostly for want of a system
/// library, clips are judged without tags.
/// </summary>
/// <param name="load">Loads it.</param>
/// <param name="logger">Hears once that it could not be.</param>
internal sealed class TaggerSource(Func<ISoundTagger> load, ILogger<TaggerSource> logger)
{
    private readonly Lock _gate = new();
    private ISoundTagger? _tagger;
    private bool _tried;

    /// <summary>The tagger; null where it cannot be loaded. The first call takes as long as loading does.</summary>
    public ISoundTagger? Get()
    {
        lock (_gate)
        {
            if (_tried)
            {
                return _tagger;
            }

            _tried = true;
            try
            {
                _tagger = load();
            }
            catch (Exception exception) when (exception is not OutOfMemoryException)
            {
                logger.TaggerMissing(exception);
            }

            return _tagger;
        }
    }
}
