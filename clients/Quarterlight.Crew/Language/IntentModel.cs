using System.Text;

namespace Quarterlight.Crew.Language;

/// <summary>What a question asks, learnt from examples: multinomial logistic regression, weights in bytes. How it is trained stands in docs/models/crew-reading.md.</summary>
internal sealed class IntentModel
{
    private const string Resource = "Language.crew-intents.bin";
    private const uint Magic = 0x31_49_4C_51;

    private static readonly Lazy<IntentModel> LazyShipped = new(LoadShipped);

    private readonly Dictionary<uint, int> places;
    private readonly float[] bias;
    private readonly float[] scales;
    private readonly sbyte[] weights;

    private IntentModel(Dictionary<uint, int> places, float[] bias, float[] scales, sbyte[] weights) =>
        (this.places, this.bias, this.scales, this.weights) = (places, bias, scales, weights);

    /// <summary>How many intents there are; the number of an intent is its place.</summary>
    public static int Classes { get; } = Enum.GetValues<CrewIntent>().Length;

    /// <summary>The model this assembly ships.</summary>
    public static IntentModel Shipped => LazyShipped.Value;

    /// <summary>Probability of each intent.</summary>
    /// <param name="features">Features as <see cref="IntentFeatures"/> writes them.</param>
    /// <param name="into">Room for <see cref="Classes"/> probabilities.</param>
    public void Probabilities(ReadOnlySpan<IntentFeature> features, Span<float> into)
    {
        bias.CopyTo(into);
        foreach (IntentFeature feature in features)
        {
            if (!places.TryGetValue(feature.Hash, out int place))
            {
                continue;
            }

            float value = feature.Value * scales[place];
            ReadOnlySpan<sbyte> row = weights.AsSpan(place * bias.Length, bias.Length);
            for (int i = 0; i < row.Length; i++)
            {
                into[i] += value * row[i];
            }
        }

        Softmax(into[..bias.Length]);
    }

    /// <summary>Turns scores into probabilities.</summary>
    public static void Softmax(Span<float> scores)
    {
        float top = float.MinValue, sum = 0;
        foreach (float score in scores)
        {
            top = MathF.Max(top, score);
        }

        for (int i = 0; i < scores.Length; i++)
        {
            scores[i] = MathF.Exp(scores[i] - top);
            sum += scores[i];
        }

        for (int i = 0; i < scores.Length; i++)
        {
            scores[i] /= sum;
        }
    }

    /// <summary>Writes weights, a feature's row in bytes of a hundred-and-twenty-seventh of its largest weight.</summary>
    /// <param name="hashes">Hash of each feature, rising.</param>
    /// <param name="bias">What each intent has before anything is seen.</param>
    /// <param name="weights">For each feature one weight an intent.</param>
    /// <param name="to">Where it goes.</param>
    public static void Write(IReadOnlyList<uint> hashes, ReadOnlySpan<float> bias, ReadOnlySpan<float> weights, Stream to)
    {
        using var writer = new BinaryWriter(to, Encoding.UTF8, leaveOpen: true);
        writer.Write(Magic);
        writer.Write(bias.Length);
        foreach (CrewIntent intent in Enum.GetValues<CrewIntent>())
        {
            writer.Write(intent.ToString());
        }

        foreach (float b in bias)
        {
            writer.Write(b);
        }

        writer.Write(hashes.Count);
        for (int i = 0; i < hashes.Count; i++)
        {
            ReadOnlySpan<float> row = weights.Slice(i * bias.Length, bias.Length);
            float most = 1e-9f;
            foreach (float w in row)
            {
                most = MathF.Max(most, MathF.Abs(w));
            }

            writer.Write(hashes[i]);
            writer.Write(most / sbyte.MaxValue);
            foreach (float w in row)
            {
                writer.Write((sbyte)MathF.Round(w / most * sbyte.MaxValue));
            }
        }
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <exception cref="InvalidDataException">It is something else, or its intents are not those of this version.</exception>
    public static IntentModel Read(Stream from)
    {
        using var reader = new BinaryReader(from, Encoding.UTF8, leaveOpen: true);
        if (reader.ReadUInt32() != Magic || reader.ReadInt32() != Classes)
        {
            throw new InvalidDataException("Not weights for these intents: train again.");
        }

        foreach (CrewIntent intent in Enum.GetValues<CrewIntent>())
        {
            if (reader.ReadString() != intent.ToString())
            {
                throw new InvalidDataException($"The weights do not know {intent}: train again.");
            }
        }

        float[] bias = new float[Classes];
        for (int i = 0; i < bias.Length; i++)
        {
            bias[i] = reader.ReadSingle();
        }

        int count = reader.ReadInt32();
        var places = new Dictionary<uint, int>(count);
        float[] scales = new float[count];
        sbyte[] weights = new sbyte[count * Classes];
        for (int i = 0; i < count; i++)
        {
            places[reader.ReadUInt32()] = i;
            scales[i] = reader.ReadSingle();
            reader.BaseStream.ReadExactly(System.Runtime.InteropServices.MemoryMarshal.AsBytes(weights.AsSpan(i * Classes, Classes)));
        }

        return new IntentModel(places, bias, scales, weights);
    }

    private static IntentModel LoadShipped()
    {
        using Stream stream = EmbeddedFile.Open(Resource);
        return Read(stream);
    }
}
