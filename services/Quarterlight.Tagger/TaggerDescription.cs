using System.Text.Json;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Tagger;

/// <summary>What stands beside the trained models in their file.</summary>
/// <param name="Name">Name of the model.</param>
/// <param name="Version">Version.</param>
/// <param name="TrainingDataDigest">SHA-256 over the recordings it was trained with.</param>
/// <param name="Features">Names of the features it was trained with, in order.</param>
/// <param name="Tags">One entry a tag, by the tag's name.</param>
public sealed record TaggerDescription(
    string Name, string Version, string TrainingDataDigest, IReadOnlyList<string> Features, IReadOnlyDictionary<string, TagModel> Tags)
{
    /// <summary>Name of the description in the file.</summary>
    public const string EntryName = "tagger.json";

    private static readonly JsonSerializerOptions s_options = new() { WriteIndented = true, PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    /// <summary>The entry of one tag.</summary>
    /// <exception cref="InvalidDataException">There is none.</exception>
    public TagModel this[ClipTag tag] => Tags.TryGetValue(tag.ToString(), out TagModel? model)
        ? model
        : throw new InvalidDataException($"The model says nothing of {tag}.");

    /// <summary>Name of a model in the file.</summary>
    public static string ModelEntry(ClipTag tag, int index) => FormattableString.Invariant($"{tag}-{index}.zip");

    /// <summary>Writes it as JSON.</summary>
    public void Write(Stream to) => JsonSerializer.Serialize(to, this, s_options);

    /// <summary>Reads it and checks that it fits this program.</summary>
    /// <exception cref="InvalidDataException">It is damaged, or was trained with other features.</exception>
    public static TaggerDescription Read(Stream from)
    {
        TaggerDescription description;
        try
        {
            description = JsonSerializer.Deserialize<TaggerDescription>(from, s_options) ?? throw new InvalidDataException("The model's description is empty.");
        }
        catch (JsonException e)
        {
            throw new InvalidDataException("The model's description is damaged.", e);
        }

        if (description.Features is null || !description.Features.SequenceEqual(FeatureFrontEnd.Names))
        {
            throw new InvalidDataException("The model was trained with other features; train it again.");
        }

        return description;
    }
}
