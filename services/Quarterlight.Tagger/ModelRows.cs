using Microsoft.ML.Data;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Tagger;

/// <summary>A row as the models take it.</summary>
public sealed class FeatureRow
{
    /// <summary>The features.</summary>
    public float[] Features { get; set; } = [];

    /// <summary>Whether the tag holds; for training only.</summary>
    public bool Label { get; set; }

    /// <summary>How much the row counts; for training only.</summary>
    public float Weight { get; set; } = 1;

    /// <summary>The columns, with the number of features in their type.</summary>
    public static SchemaDefinition Schema()
    {
        SchemaDefinition schema = SchemaDefinition.Create(typeof(FeatureRow));
        schema[nameof(Features)].ColumnType = new VectorDataViewType(NumberDataViewType.Single, FeatureFrontEnd.Count);
        return schema;
    }
}

/// <summary>What the models give.</summary>
public sealed class ScoreRow
{
    /// <summary>The score, above 0 for yes.</summary>
    public float Score { get; set; }
}
