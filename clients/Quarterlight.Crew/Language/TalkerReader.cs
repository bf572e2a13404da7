using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>A talker as said.</summary>
/// <param name="TalkerId">Id within the scene.</param>
/// <param name="Start">First word that says so.</param>
/// <param name="Count">Words that say so.</param>
public sealed record TalkerMention(string TalkerId, int Start, int Count);

/// <summary>Finds who a question is about.</summary>
public static class TalkerReader
{
    private static readonly HashSet<string> Weak = Lexicon.Words("the a an of in on at and to front rear back left right seat first second third one");

    // What people call each other for what the scene calls them.
    private static readonly string[][] SameRole =
    [
        ["child", "kid", "kids", "kiddo", "son", "daughter", "boy", "girl", "toddler", "youngster", "schoolkid", "teen", "teenager", "baby"],
        ["parent", "mum", "mom", "mother", "mam", "mummy", "mommy", "dad", "father", "daddy"],
        ["instructor", "teacher", "tutor", "examiner"],
        ["learner", "student", "pupil", "trainee"],
        ["trucker", "lorrydriver"],
        ["neighbour", "neighbor"],
        ["sleeper", "sleeping"],
    ];

    /// <summary>Every talker said, by role or by seat, in order.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="scene">Scene the talkers are in.</param>
    /// <param name="driverOnLeft">True in a left-hand-drive car.</param>
    public static IReadOnlyList<TalkerMention> Find(IReadOnlyList<Token> tokens, Scene scene, bool driverOnLeft)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(scene);
        var found = new List<TalkerMention>();
        for (int i = 0; i < tokens.Count; i++)
        {
            if (ByRole(tokens[i], scene) is { } talker)
            {
                found.Add(new TalkerMention(talker.Id, i, 1));
            }
        }

        foreach (SeatMention seat in SeatWords.Find(tokens))
        {
            // A role at the same word is the better reading: "the front passenger" may be called so.
            if (found.Any(f => f.Start >= seat.Start && f.Start < seat.Start + seat.Count))
            {
                continue;
            }

            string[] seated = [.. seat.SeatIds(driverOnLeft).Where(id => scene.Talkers.Any(t => t.SeatId == id))];
            if (seated.Length > 0)
            {
                found.Add(new TalkerMention(scene.Talkers.First(t => t.SeatId == seated[0]).Id, seat.Start, seat.Count));
            }
        }

        return [.. found.OrderBy(f => f.Start)];
    }

    /// <summary>The one other scene that has a talker of the name said, when the scene itself has none; null otherwise.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="scene">Scene talked about.</param>
    /// <param name="scenes">All scenes of the team.</param>
    public static Scene? SceneOfRole(IReadOnlyList<Token> tokens, Scene scene, IReadOnlyList<Scene> scenes)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(scenes);
        bool Has(Scene s) => s.Talkers.Any(t => tokens.Any(w => w.Number is null && !Weak.Contains(w.Word) && Names(t, w.Word)));
        if (Has(scene) || tokens.Any(t => ByRole(t, scene) is not null))
        {
            return null;
        }

        Scene[] having = [.. scenes.Where(s => s.Name != scene.Name && Has(s)).Take(2)];
        return having.Length == 1 ? having[0] : null;
    }

    // "Singer" and "the singer's" name the singer; "driver" and the like are seats.
    private static bool Names(Talker talker, string word) =>
        !SeatWords.All.Contains(word) && (NameWords.Of(talker.DisplayName).Contains(word) || NameWords.Of(talker.Id).Contains(word));

    /// <summary>The one a question about a place is for: named after "for", or with a microphone, or apart from the place.</summary>
    public static string? For(IReadOnlyList<Token> tokens, IReadOnlyList<TalkerMention> talkers, SiteMention? site)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(talkers);
        TalkerMention? chosen = talkers.LastOrDefault(t => Before(tokens, t.Start) is "for")
            ?? talkers.FirstOrDefault(t => t.Start + t.Count < tokens.Count && tokens[t.Start + t.Count].IsAny(Lexicon.Microphones))
            ?? talkers.FirstOrDefault(t => site?.Seat is not { } seat || t.Start < seat.Start || t.Start >= seat.Start + seat.Count)
            ?? (talkers.Count > 0 ? talkers[0] : null);
        return chosen?.TalkerId;
    }

    private static string? Before(IReadOnlyList<Token> tokens, int start)
    {
        int i = start - 1;
        while (i >= 0 && tokens[i].Word is "the" or "our" or "a" or "my")
        {
            i--;
        }

        return i >= 0 ? tokens[i].Word : null;
    }

    // A word of the role that no other talker of the scene shares.
    private static Talker? ByRole(Token token, Scene scene)
    {
        if (token.Number is not null || Weak.Contains(token.Word))
        {
            return null;
        }

        Talker[] named = [.. scene.Talkers.Where(t => NameWords.Of(t.DisplayName).Contains(token.Word) || NameWords.Of(t.Id).Contains(token.Word))];
        if (named.Length > 0)
        {
            return named.Length == 1 ? named[0] : null;
        }

        string[]? same = SameRole.FirstOrDefault(r => r.Contains(token.Word));
        Talker[] alike = same is null ? [] : [.. scene.Talkers.Where(t => NameWords.Of(t.DisplayName).Concat(NameWords.Of(t.Id)).Any(same.Contains))];
        return alike.Length == 1 ? alike[0] : null;
    }
}
