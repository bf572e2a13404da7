using Quarterlight.Crew.Language;

namespace Quarterlight.Training.Reading;

/// <summary>A question to learn from.</summary>
/// <param name="Features">What the model sees of it.</param>
/// <param name="Class">Number of the intent it has.</param>
internal readonly record struct ReadingRow(IntentFeature[] Features, int Class);
