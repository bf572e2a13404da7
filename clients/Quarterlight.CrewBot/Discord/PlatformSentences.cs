using System.Globalization;
using Quarterlight.Crew;

namespace Quarterlight.CrewBot.Discord;

/// <summary>What the transport itself has to say. Everything about sound is said by the desk.</summary>
internal static class PlatformSentences
{
    public const string OnlyInServers = "Ask me in a server's channel: I do not answer private messages.";

    public const string Busy = "Too many questions at once: ask again in half a minute.";

    public const string Restarting = "I am being restarted: ask again in a minute.";

    public const string RestartedMeanwhile = "I was restarted in the middle of this: ask again.";

    public const string RestartedWhileSending = "I was restarted while this was being answered. If no answer stands above, ask again.";

    public const string TookTooLong = "Given up, as it took too long: ask again. If it was a clip, send a shorter piece.";

    public const string FormTookTooLong = "The form did not open in time: send the command again.";

    public const string FormCameLate = "It was too late to open the form: send the command again.";

    public const string NoFileInMessage = "That message has no file: choose one with a sound file, or send one with /clip.";

    public const string UnknownCommand = "That command is gone: type / to see what there is.";

    public const string UnknownForm = "That form is from another version of me: send the command again.";

    public const string Working = "Working on it…";

    public const string PictureNotAttached = "The picture could not be attached. In words:";

    public const string FileNotAttached = "The file could not be attached: too large for this server, or I may not attach files here.";

    public const string WholeAnswerInFile = "The whole answer is in answer.txt.";

    public const string CutShort = "Cut short: the rest does not fit here, and its file could not be attached. Ask for less at once.";

    public const string CouldNotBeShown = "The answer could not be shown here: ask again. If that does not help, tell whoever runs me.";

    public static string TooOften(TimeSpan wait, bool wholeTeam) => string.Create(CultureInfo.InvariantCulture,
        $"{(wholeTeam ? "This server has" : "You have")} asked a lot in a short time: ask again in {Math.Max(1, (int)Math.Ceiling(wait.TotalSeconds))} s.");

    public static string OldButton(string text) => text.Length == 0
        ? "This button is from another version of me: type your question with /ask."
        : $"This button's answer is not kept any more. Ask anew: /ask question: {text}";

    public static string Failed(string reference) => $"Something went wrong, not by you: ask again. If it stays, tell whoever runs me: reference {reference}.";

    public static string Reading(double fraction) => string.Create(CultureInfo.InvariantCulture, $"Reading the file… {Math.Clamp(fraction, 0, 1) * 100:0} %");

    public static CrewAnswer Answer(string sentence) => new() { Headline = sentence, Private = true, Outcome = CrewOutcome.Refused };
}
