using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Cameras as lines of a place, a lens and what they look at, both ways. A camera that is kept is "as placed".</summary>
internal static partial class ShotLines
{
    private const string Right = "Write a place (bonnet, hostess tray left or right, dash, back seat, rear window) and a lens, such as \"hostess tray left 50 mm at Ann\"; or \"none\".";
    private const int LongestId = 20;

    // A full frame of which 16 to 9 is recorded; and the width of four-perforation Super 35 film, from memory, cropped alike.
    private static readonly (double WidthMm, double HeightMm) FullFrame = (36, 20.25), Super35 = (24.89, 14);

    private static readonly (string, ShotPlace?)[] Places =
    [
        ("rear window", ShotPlace.RearWindow), ("back window", ShotPlace.RearWindow), ("rear glass", ShotPlace.RearWindow), ("back seat", ShotPlace.BackSeat), ("rear seat", ShotPlace.BackSeat), ("from the back", ShotPlace.BackSeat), ("from behind", ShotPlace.BackSeat),
        ("bonnet", ShotPlace.Bonnet), ("hood", ShotPlace.Bonnet), ("windscreen", ShotPlace.Bonnet), ("windshield", ShotPlace.Bonnet), ("dashboard", ShotPlace.Dash), ("dash", ShotPlace.Dash),
        ("hostess tray", null), ("hostess", null), ("door mount", null), ("side mount", null), ("side window", null), ("outside", null),
    ];

    private static readonly (string, bool)[] Sides =
    [
        ("driver side", true), ("drivers side", true), ("driver's side", true), ("passenger side", false), ("left", true), ("right", false),
    ];

    private static readonly (string, (double, double))[] Sensors = [("super 35", Super35), ("super35", Super35), ("s35", Super35), ("full frame", FullFrame), ("fullframe", FullFrame)];

    private static readonly string[] Toward = ["at", "on", "to", "towards", "toward"];

    private static readonly HashSet<string> Fillers = [.. "a an the camera cam shot lens one on in from through with of mounted mount tray side outside at over and mm millimetre millimetres to toward towards looking looks facing".Split(' ')];

    /// <summary>One camera in a line.</summary>
    public static string Say(Shot shot) => Wordings.Say($"{shot.Id}: as placed, {shot.FocalLengthMm:0.##} mm");

    /// <summary>All cameras, a line each; "none" for none.</summary>
    public static string Say(IReadOnlyList<Shot> shots) => shots.Count == 0 ? "none" : string.Join('\n', shots.Select(Say));

    /// <summary>Reads the field.</summary>
    public static List<Shot> Read(EntryReading reading, string field, Scene? kept, IReadOnlyList<Talker> talkers, SeatPicker seats, ListMountSitesResponse car, bool driverOnLeft)
    {
        var read = new List<Shot>();
        string[] lines = [.. reading.Lines(field)];
        if (lines.Length == 0 || (lines is [var only] && only.TrimEnd('.') is var bare && (bare.Equals("none", StringComparison.OrdinalIgnoreCase) || bare.Equals("no cameras", StringComparison.OrdinalIgnoreCase))))
        {
            if (lines.Length == 0)
            {
                reading.TakeAsUsual("no cameras");
            }

            return read;
        }

        var places = new ShotPlaces(car);
        foreach (string line in lines)
        {
            if (kept?.Shots.FirstOrDefault(s => FormText.Same(line, Say(s)) && read.All(o => o.Id != s.Id)) is { } same)
            {
                read.Add(same.Clone());
                continue;
            }

            foreach (string piece in Cameras(line))
            {
                if (One(piece) is { } shot)
                {
                    read.Add(shot);
                }
            }
        }

        return read;

        Shot? One(string piece)
        {
            int colon = piece.IndexOf(':', StringComparison.Ordinal);
            string label = colon > 0 ? piece[..colon].Trim() : "";
            var words = new StrictWords(colon >= 0 ? piece[(colon + 1)..] : piece);
            double? lens = Lens(words);
            bool saysSensor = words.TakeAny(Sensors, out (double WidthMm, double HeightMm) sensor);
            Shot? before = kept?.Shots.FirstOrDefault(s => s.Id.Equals(label, StringComparison.OrdinalIgnoreCase) && read.All(o => o.Id != s.Id));
            Shot shot;
            if (words.Take("as placed"))
            {
                if (before is null)
                {
                    reading.Problem(field, $"there is no camera \"{label}\" that stands already.", Right);
                    return null;
                }

                shot = before.Clone();
            }
            else if (Placed(words, piece) is { } placed)
            {
                shot = placed;
                shot.Id = Id(label.Length > 0 ? label : placed.Id);
            }
            else
            {
                return null;
            }

            if (words.Left(Fillers) is { Length: > 0 } left)
            {
                reading.Problem(field, $"\"{left}\" in \"{piece}\" is not understood.", Right);
                return null;
            }

            if (saysSensor || before is null)
            {
                (shot.SensorWidthMm, shot.SensorHeightMm) = saysSensor ? sensor : FullFrame;
            }

            Usual(!saysSensor && before is null, "a full-frame sensor, 16 to 9");
            Usual(lens is null && before is null, $"a 35 mm lens for {shot.Id}");
            bool sameLens = before is not null && (lens is null || Wordings.Say($"{before.FocalLengthMm:0.##}") == Wordings.Say($"{lens:0.##}"));
            shot.FocalLengthMm = sameLens ? before!.FocalLengthMm : lens ?? 35;
            return shot;
        }

        void Usual(bool taken, string words)
        {
            if (taken)
            {
                reading.TakeAsUsual(words);
            }
        }

        string Id(string label)
        {
            string letters = new([.. label.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-').Take(LongestId)]);
            string id = letters.Trim('-');
            return NewIds.Free(id.Length == 0 ? "camera" : id, i => read.Any(s => s.Id == i), LongestId);
        }

        Shot? Placed(StrictWords words, string piece)
        {
            if (!words.TakeAny(Places, out ShotPlace? place))
            {
                reading.Problem(field, $"there is no place in \"{piece}\".", Right);
                return null;
            }

            (Position Aim, string Words)? at = LookedAt(words, piece);
            if (place is null)
            {
                bool drivers = words.All.Any(t => t.Word is "driver" or "drivers"), passengers = words.All.Any(t => t.Word == "passenger");
                if (!words.TakeAny(Sides, out bool left))
                {
                    reading.Problem(field, $"which side in \"{piece}\": left or right?");
                    return null;
                }

                bool onLeft = drivers || passengers ? left == driverOnLeft : left;
                place = onLeft ? ShotPlace.HostessLeft : ShotPlace.HostessRight;
            }

            (Position aim, string look) = at ?? places.Look(place.Value);
            string id = place switch { ShotPlace.Bonnet => "bonnet", ShotPlace.HostessLeft => "hostess-left", ShotPlace.HostessRight => "hostess-right", ShotPlace.Dash => "dash", ShotPlace.BackSeat => "back-seat", _ => "rear-window" };
            reading.TakeAsUsual("cameras where they usually stand in such a car, at eye height");
            reading.TakeAsUsual($"{id} looks {look}");
            return new Shot { Id = id, Position = places.Stand(place.Value), AimPoint = aim };
        }

        // "at Ann", "on the driver".
        (Position, string)? LookedAt(StrictWords words, string piece)
        {
            foreach (Talker talker in talkers)
            {
                string name = string.Join(' ', new StrictWords(talker.DisplayName).All.Select(t => t.Word));
                if (name.Length > 0 && Toward.Any(w => words.Take($"{w} {name}") || words.Take($"{w} the {name}")) && seats.Find(talker.SeatId) is { } theirs)
                {
                    return (ShotPlaces.Head(theirs), $"at {Wordings.Name(talker.DisplayName)}");
                }
            }

            foreach (SeatMention mention in SeatWords.Find(words.All).Where(m => m.Start > 0 && words.Open.Contains(words.All[m.Start]) && words.All.Take(m.Start).Where(t => t.Word != "the").LastOrDefault()?.Word is "at" or "towards" or "toward"))
            {
                if (seats.Meant(mention) is [var seat])
                {
                    words.Use(mention.Start, mention.Count);
                    return (ShotPlaces.Head(seat), $"at the {Wordings.Seat(seat.Id)} seat");
                }
            }

            return null;
        }
    }

    // A piece without a place belongs to the camera before it: "bonnet, 35 mm" is one camera.
    private static List<string> Cameras(string line)
    {
        var cameras = new List<string>();
        foreach (string piece in FormText.Pieces(line))
        {
            var words = new StrictWords(piece[(piece.IndexOf(':', StringComparison.Ordinal) + 1)..]);
            bool starts = words.Take("as placed") || words.TakeAny(Places, out _) || piece.Contains(':', StringComparison.Ordinal);
            if (starts || cameras.Count == 0)
            {
                cameras.Add(piece);
            }
            else
            {
                cameras[^1] += " " + piece;
            }
        }

        return cameras;
    }

    private static double? Lens(StrictWords words)
    {
        for (int i = 0; i < words.All.Count; i++)
        {
            bool unit = i + 1 < words.All.Count && words.All[i + 1].Word is "mm" or "millimetre" or "millimetres" or "mil";
            if (words.All[i].Number is { } number && unit)
            {
                words.Use(i, 2);
                return number;
            }

            if (Joined().Match(words.All[i].Word) is { Success: true } joined)
            {
                words.Use(i, 1);
                return double.Parse(joined.Groups[1].Value, CultureInfo.InvariantCulture);
            }
        }

        return null;
    }

    [GeneratedRegex(@"^(\d{1,4})mm$", RegexOptions.CultureInvariant)]
    private static partial Regex Joined();
}
