using System.IO.Compression;
using Microsoft.Extensions.ObjectPool;
using Microsoft.ML;
using Microsoft.ML.Trainers.FastTree;
using Microsoft.ML.Trainers.LightGbm;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Tagger;

/// <summary>
/// The trained models behind the domain's port. May be called from several threads at once: a prediction engine serves one caller at a time,
/// so each call takes its own from a pool.
/// </summary>
public sealed class ModelTagger : ISoundTagger, IDisposable
{
    private static readonly ClipTag[] s_tags = Enum.GetValues<ClipTag>();
    private readonly TaggerDescription _description;
    private readonly ObjectPool<TagEngines> _pool;

    private ModelTagger(TaggerDescription description, MLContext context, ITransformer[][] models)
    {
        _description = description;
        _pool = new DefaultObjectPoolProvider().Create(new EnginePolicy(context, models, [.. s_tags.Select(t => description[t])]));
        Identity = new(description.Name, description.Version, description.TrainingDataDigest);
        UnsureBand Band(ClipTag tag) => new(description[tag].AbsentBelow, description[tag].PresentFrom);
        Thresholds = new(Band(ClipTag.Engine), Band(ClipTag.Wind), Band(ClipTag.AirConditioning), Band(ClipTag.Clean));
    }

    /// <inheritdoc/>
    public TaggerIdentity Identity { get; }

    /// <inheritdoc/>
    public TagThresholds Thresholds { get; }

    /// <summary>The description of the models.</summary>
    public TaggerDescription Description => _description;

    /// <summary>Loads the model that ships with this assembly.</summary>
    /// <exception cref="InvalidDataException">The model is missing or damaged.</exception>
    public static ModelTagger LoadShipped()
    {
        using Stream stream = typeof(ModelTagger).Assembly.GetManifestResourceStream("tagger.zip")
            ?? throw new InvalidDataException("The model is missing from the assembly; train it with quarterlight-training train.");
        return Load(stream);
    }

    /// <summary>Loads a model file. The stream is read to its end and not closed.</summary>
    /// <exception cref="InvalidDataException">The file is no model, or was trained with other features.</exception>
    public static ModelTagger Load(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var archive = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
        TaggerDescription description;
        using (Stream json = Entry(archive, TaggerDescription.EntryName))
        {
            description = TaggerDescription.Read(json);
        }

        var context = new MLContext(seed: 1);
        context.ComponentCatalog.RegisterAssembly(typeof(LightGbmBinaryModelParameters).Assembly);
        context.ComponentCatalog.RegisterAssembly(typeof(FastTreeBinaryModelParameters).Assembly);
        ITransformer[][] models = [.. s_tags.Select(tag => Enumerable.Range(0, description[tag].Weights.Count).Select(i => Model(archive, context, tag, i)).ToArray())];
        return new(description, context, models);
    }

    /// <inheritdoc/>
    public TagProbabilities Score(ReadOnlySpan<float> features)
    {
        if (features.Length != FeatureFrontEnd.Count)
        {
            throw new ArgumentException($"A row has {FeatureFrontEnd.Count} features, not {features.Length}.", nameof(features));
        }

        TagEngines engines = _pool.Get();
        try
        {
            return engines.Score(features);
        }
        finally
        {
            _pool.Return(engines);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => (_pool as IDisposable)?.Dispose();

    private static ITransformer Model(ZipArchive archive, MLContext context, ClipTag tag, int index)
    {
        using Stream packed = Entry(archive, TaggerDescription.ModelEntry(tag, index));
        using var whole = new MemoryStream();
        packed.CopyTo(whole);
        whole.Position = 0;
        try
        {
            return context.Model.Load(whole, out _);
        }
        catch (Exception e) when (e is FormatException or InvalidOperationException or ArgumentException)
        {
            throw new InvalidDataException($"The model of {tag} is damaged.", e);
        }
    }

    private static Stream Entry(ZipArchive archive, string name) =>
        archive.GetEntry(name)?.Open() ?? throw new InvalidDataException($"The model file holds no {name}.");

    private sealed class EnginePolicy(MLContext context, ITransformer[][] models, TagModel[] tags) : PooledObjectPolicy<TagEngines>
    {
        public override TagEngines Create() => new(context, models, tags);

        public override bool Return(TagEngines obj) => true;
    }
}
