using System.Globalization;
using Quarterlight.Crew;

namespace Quarterlight.CrewBot.Discord;

/// <summary>What the transport itself has to say. Everything about sound is said by the desk.</summary>
internal static class PlatformSentences
{
    public const string OnlyInServers = "I work in a server's channels, where the whole crew sees the answers: ask me there.";

    public const string Busy = "Too much is being asked at once: please ask again in half a minute.";

    public const string Restarting = "I am being restarted: please ask again in a minute.";

    public const string RestartedMeanwhile = "I was restarted in the middle of this; please ask again.";

    public const string RestartedWhileSending = "I was restarted while this was being answered. If no answer stands above, please ask again.";

    public const string TookTooLong = "This took too long and was given up: please ask again, about a shorter clip if it was one.";

    public const string FormTookTooLong = "The form could not be opened in time: please send the command again.";

    public const string FormCameLate = "This opens a form, and the time for that was over: please send the command again.";

    public const string NoFileInMessage = "That message has no file: choose one with a sound file in it, or send one with /clip.";

    public const string UnknownCommand = "That command is not known here any more: type / to see the ones that are.";

    public const string UnknownForm = "That form is from another version of me: please send the command again.";

    public const string Working = "Working on it…";

    public const string PictureNotAttached = "The picture could not be attached. In words:";

    public const string FileNotAttached = "The file could not be attached: it is too large for this server, or I may not attach files here.";

    public const string WholeAnswerInFile = "The whole answer is in answer.txt.";

    public const string CutShort = "The answer is longer than fits here, and its file could not be attached: ask for less at once.";

    public const string CouldNotBeShown = "The answer could not be shown here: please ask again, and tell whoever runs me if that does not help.";

    public static string TooOften(TimeSpan wait, bool wholeTeam) => string.Create(CultureInfo.InvariantCulture,
        $"{(wholeTeam ? "This server has" : "You have")} asked a lot in a short time: please ask again in {Math.Max(1, (int)Math.Ceiling(wait.TotalSeconds))} s.");

    public static string OldButton(string text) => text.Length == 0
        ? "This button is from another version of me: please type your question with /ask."
        : $"What this button goes on from is not kept any more. Ask it anew: /ask question: {text}";

    public static string Failed(string reference) => $"Something went wrong here that is not your doing. Please ask again; if it stays, tell whoever runs me the reference {reference}.";

    public static string Reading(double fraction) => string.Create(CultureInfo.InvariantCulture, $"Reading the file… {Math.Clamp(fraction, 0, 1) * 100:0} %");

    public static CrewAnswer Answer(string sentence) => new() { Headline = sentence, Private = true, Outcome = CrewOutcome.Refused };
}
