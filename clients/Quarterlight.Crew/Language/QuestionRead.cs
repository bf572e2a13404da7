namespace Quarterlight.Crew.Language;

/// <summary>A question as the rules read it, with all that was read on the way.</summary>
/// <param name="Rules">What the rules make of it.</param>
/// <param name="Request">Slots read, before anything was decided.</param>
/// <param name="Said">Words and what they name.</param>
/// <param name="CabinNamed">Car named, the scene's own among them, by resource name, or null.</param>
/// <param name="Forecast">What it says about heat, run time, levels and noise.</param>
/// <param name="Radio">What it says about the radio.</param>
/// <param name="Seen">What the model may look at.</param>
/// <param name="Attached">True when a clip came with it.</param>
internal sealed record QuestionRead(CrewRequest Rules, CrewRequest Request, SaidThings Said, string? CabinNamed, ForecastSaid Forecast, RadioSaid Radio, IntentSeen Seen, bool Attached);
