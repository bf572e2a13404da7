using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Everybody in the car as lines of a name, a seat and how they speak, both ways.</summary>
/// <param name="Talkers">Who talks.</param>
/// <param name="SilentSeatIds">Seats of those who do not.</param>
internal sealed record TalkersRead(IReadOnlyList<Talker> Talkers, IReadOnlyList<string> SilentSeatIds);

/// <summary>Reads and says who sits where and talks how.</summary>
internal static class TalkerLines
{
    private const string Right = "Write a name and a seat, such as \"Ann driver\" or \"Bo front passenger, loud\".";

    private static readonly (string, VocalEffort)[] Efforts = Table(
        (VocalEffort.Whisper, "whispering whispers whispered whisper"), (VocalEffort.Relaxed, "relaxed quietly quiet softly soft calm low"), (VocalEffort.Normal, "normally normal ordinary usual"),
        (VocalEffort.Raised, "raised"), (VocalEffort.Loud, "loudly loud"), (VocalEffort.Shout, "shouting shouts shouted shout yelling yells yell screaming screams"));

    private static readonly string[] NothingWorn = ["nothing worn", "no body worn", "no bodyworn", "no body mic", "no lavalier", "no lav", "no lavs", "nothing on the body"];
    private static readonly string[] Silent = ["does not talk", "not talking", "no lines", "silent", "silently", "mute", "says nothing", "extra"];
    private static readonly HashSet<string> Fillers = [.. "a an the in on at is sits sitting sit seat seats front side row voice talks talking talk speaks speaking who and with to".Split(' ')];

    /// <summary>One talker in a line.</summary>
    public static string Say(Talker t) => $"{Shown(t)}: {Wordings.Seat(t.SeatId)}, {Voice(t.VocalEffort)}{(t.NoBodyWorn ? ", nothing worn" : "")}";

    /// <summary>Everybody, a line each.</summary>
    public static string Say(Scene scene) => string.Join('\n', [.. scene.Talkers.Select(Say), .. scene.SilentSeatIds.Select(SaySilent)]);

    /// <summary>Reads the field; a line that stands as it was shown, and a name that is kept, keep the head poses.</summary>
    public static TalkersRead Read(EntryReading reading, string field, Scene? kept, SeatPicker seats)
    {
        var talkers = new List<Talker>();
        var silent = new List<string>();
        var takenBy = new Dictionary<string, string>();
        foreach (string line in reading.Lines(field))
        {
            if (kept?.Talkers.FirstOrDefault(t => FormText.Same(line, Say(t)) && talkers.All(o => o.Id != t.Id)) is { } same)
            {
                Seat(same.SeatId, Shown(same));
                talkers.Add(same.Clone());
            }
            else if (kept?.SilentSeatIds.FirstOrDefault(s => FormText.Same(line, SaySilent(s))) is { } silentSeat)
            {
                Seat(silentSeat, "somebody silent");
                silent.Add(silentSeat);
            }
            else
            {
                foreach (string piece in People(line))
                {
                    ReadOne(piece);
                }
            }
        }

        foreach (Talker added in talkers.Where(t => t.Id.Length == 0))
        {
            added.Id = NewIds.Free(NewIds.From(added.DisplayName, "talker"), id => talkers.Any(t => t.Id == id));
        }

        if (talkers.Count == 0 && reading.Good)
        {
            reading.Problem(field, "nobody talks.", Right);
        }

        return new TalkersRead(talkers, silent);

        void Seat(string seatId, string who)
        {
            if (!takenBy.TryAdd(seatId, who))
            {
                reading.Problem(field, $"{takenBy[seatId]} and {who} both sit on the {Wordings.Seat(seatId)} seat. Give each a seat of their own.");
            }
        }

        void ReadOne(string piece)
        {
            (string name, StrictWords words, SeatMention? mention) = Cut(piece);
            if (mention is null)
            {
                reading.Problem(field, $"there is no seat in \"{piece}\".", $"{Right} The seats are {seats.All}.");
                return;
            }

            bool quiet = Any(words, Silent), bare = Any(words, NothingWorn);
            bool saysEffort = words.TakeAny(Efforts, out VocalEffort effort);
            if (words.Left(Fillers) is { Length: > 0 } left)
            {
                reading.Problem(field, $"\"{left}\" in \"{piece}\" is not understood.", $"{Right} You can add quiet, raised, loud, shouting, whispering, silent or nothing worn.");
                return;
            }

            IReadOnlyList<Seat> meant = seats.Meant(mention);
            if (meant.Count != 1)
            {
                reading.Problem(field, meant.Count == 0 ? $"this car does not have the seat of \"{piece}\". It has {seats.All}." : $"which seat in \"{piece}\": {string.Join(" or ", meant.Select(s => Wordings.Seat(s.Id)))}?");
                return;
            }

            string seatId = meant[0].Id;
            string shown = name.Length > 0 ? name : Wordings.Capital(Wordings.Seat(seatId));
            Seat(seatId, shown);
            if (quiet)
            {
                silent.Add(seatId);
                return;
            }

            Talker? before = kept?.Talkers.FirstOrDefault(t => Shown(t).Equals(shown, StringComparison.OrdinalIgnoreCase) && talkers.All(o => o.Id != t.Id));
            var talker = new Talker { Id = before?.Id ?? "", DisplayName = before?.DisplayName ?? shown, SeatId = seatId, VocalEffort = saysEffort ? effort : VocalEffort.Normal, NoBodyWorn = bare };
            talker.HeadPoses.Add(before is { HeadPoses.Count: > 0 } ? before.HeadPoses.Clone() : [new HeadPose { ShareFraction = 1 }]);
            talkers.Add(talker);
            if (!saysEffort)
            {
                reading.TakeAsUsual($"ordinary voice for {shown}");
            }

            if (before is null)
            {
                reading.TakeAsUsual($"{shown} looks straight ahead");
            }
        }
    }

    // A piece without a seat belongs to the one before: "Bo passenger, loud" is one person.
    private static List<string> People(string line)
    {
        var people = new List<string>();
        foreach (string piece in FormText.Pieces(line))
        {
            (string name, StrictWords words, SeatMention? seat) = Cut(piece);
            bool adds = seat is null && people.Count > 0 && Remaining(words, name);
            if (adds)
            {
                people[^1] += " " + piece;
            }
            else
            {
                people.Add(piece);
            }
        }

        return people;

        static bool Remaining(StrictWords words, string name)
        {
            _ = (Any(words, Silent), Any(words, NothingWorn), words.TakeAny(Efforts, out _));
            return name.Length == 0 && words.Left(Fillers).Length == 0;
        }
    }

    // The name is what stands before a colon, or before the seat.
    private static (string Name, StrictWords Words, SeatMention? Seat) Cut(string piece)
    {
        int colon = piece.IndexOf(':', StringComparison.Ordinal);
        string name = colon > 0 ? piece[..colon].Trim() : "";
        string rest = colon >= 0 ? piece[(colon + 1)..] : piece;
        string[] written = rest.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (int first = 0; first < written.Length; first++)
        {
            var words = new StrictWords(string.Join(' ', written[first..]));
            if (SeatWords.Find(words.All) is { Count: > 0 } seats && (seats[0].Start == 0 || Fillers.Contains(words.All[0].Word)) && seats[0].Start == LeadingFillers(words.All, seats[0].Start))
            {
                words.Use(seats[0].Start, seats[0].Count);
                string before = string.Join(' ', written[..first]);
                return (colon > 0 ? name : before, colon > 0 && before.Length > 0 ? WithMore(words, before) : words, seats[0]);
            }
        }

        return (name, new StrictWords(rest), null);
    }

    // What stands between the colon and the seat has to be understood as well.
    private static StrictWords WithMore(StrictWords words, string before)
    {
        var all = new StrictWords(before + " " + string.Join(' ', words.All.Select(t => t.Word)));
        SeatMention seat = SeatWords.Find(all.All) is { Count: > 0 } seats ? seats[0] : new SeatMention(null, SeatPlace.Any, 0, 0);
        all.Use(seat.Start, seat.Count);
        return all;
    }

    private static int LeadingFillers(IReadOnlyList<Token> tokens, int before)
    {
        int count = 0;
        while (count < before && Fillers.Contains(tokens[count].Word))
        {
            count++;
        }

        return count;
    }

    private static bool Any(StrictWords words, string[] phrases) => phrases.Any(words.Take);

    private static string SaySilent(string seatId) => $"{Wordings.Seat(seatId)}: {Wordings.Seat(seatId)}, silent";

    private static string Shown(Talker t) => Wordings.Name(t.DisplayName, t.Id).Replace(':', ' ').Replace(',', ' ').Replace(';', ' ');

    private static string Voice(VocalEffort effort) => effort switch
    {
        VocalEffort.Shout => "shouting",
        VocalEffort.Whisper => "whispering",
        _ => $"{Wordings.Effort(effort)} voice",
    };

    private static (string, VocalEffort)[] Table(params (VocalEffort Effort, string Words)[] rows) => [.. rows.SelectMany(r => r.Words.Split(' ').Select(w => (w, r.Effort)))];
}
