using Microsoft.Extensions.Logging;
using Quarterlight.Clips.Tagging;
using Quarterlight.Planner.Upload;

namespace Quarterlight.Wire.Tests;

/// <summary>The tagger is loaded when it is first needed, once, and a planner without it goes on.</summary>
public sealed class TaggerSourceTests
{
    [Fact]
    public void Get_LibraryMissing_NullAndSaidOnce()
    {
        var log = new LogBook();
        int loads = 0;
        TaggerSource source = Source(log, () =>
        {
            loads++;
            throw new DllNotFoundException("libgomp.so.1");
        });
        Assert.Equal(0, loads);
        Assert.Null(source.Get());
        Assert.Null(source.Get());
        Assert.Equal(1, loads);
        (LogLevel level, _, string text) = Assert.Single(log.Lines);
        Assert.Equal(LogLevel.Warning, level);
        Assert.Contains("libgomp1", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_ManyAtOnce_LoadedOnce()
    {
        var log = new LogBook();
        int loads = 0;
        TaggerSource source = Source(log, () =>
        {
            Interlocked.Increment(ref loads);
            return new Deaf();
        });
        ISoundTagger?[] taggers = await Task.WhenAll(Enumerable.Range(0, 16).Select(_ => Task.Run(source.Get)));
        Assert.Equal(1, loads);
        Assert.All(taggers, t => Assert.Same(taggers[0], t));
        Assert.Empty(log.Lines);
    }

    private static TaggerSource Source(LogBook log, Func<ISoundTagger> load)
    {
        ILoggerFactory factory = LoggerFactory.Create(b => b.AddProvider(log));
        return new TaggerSource(load, factory.CreateLogger<TaggerSource>());
    }

    private sealed class Deaf : ISoundTagger
    {
        public TaggerIdentity Identity { get; } = new("deaf", "1", "");

        public TagThresholds Thresholds => throw new NotSupportedException();

        public TagProbabilities Score(ReadOnlySpan<float> features) => default;
    }
}
