namespace Quarterlight.Crew.Language;

/// <summary>What the model may look at.</summary>
/// <param name="Text">The question, cleaned.</param>
/// <param name="Tokens">Its words, spelling corrected and phrases joined.</param>
/// <param name="Names">Classes of the team's own words.</param>
/// <param name="Slots">What was read from it.</param>
/// <param name="Topic">What is talked about: none, attached, remembered, heat, runtime, levels, noise or radio.</param>
/// <param name="Votes">What each reader of intents alone makes of it: forecasts, clips, radio, the plan.</param>
internal readonly record struct IntentSeen(string Text, IReadOnlyList<Token> Tokens, ExampleNames Names, SlotsRead Slots, string Topic, IReadOnlyList<CrewIntent> Votes);
