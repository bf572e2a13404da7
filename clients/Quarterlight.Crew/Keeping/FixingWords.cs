using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Fixings with their counts, both ways.</summary>
internal static partial class FixingWords
{
    /// <summary>All fixings, in words that can be written.</summary>
    public const string Names = "spring clips, suction cups, articulated arms, paper tape, elastic ties, weighted bases, body mounts";

    private static readonly (string Phrase, Fixing Fixing)[] Table =
    [
        ("suction cup with tether", Fixing.SuctionCup), ("matt paper tape", Fixing.PaperTape), ("spring clips", Fixing.SpringClip), ("spring clip", Fixing.SpringClip), ("suction cups", Fixing.SuctionCup), ("suction cup", Fixing.SuctionCup), ("articulated arms", Fixing.ArticulatedArm),
        ("articulated arm", Fixing.ArticulatedArm), ("paper tape", Fixing.PaperTape), ("paper tapes", Fixing.PaperTape), ("elastic ties", Fixing.ElasticTie), ("elastic tie", Fixing.ElasticTie), ("weighted bases", Fixing.WeightedBase), ("weighted base", Fixing.WeightedBase), ("body mounts", Fixing.BodyMount),
        ("body mount", Fixing.BodyMount), ("clips", Fixing.SpringClip), ("clip", Fixing.SpringClip), ("suckers", Fixing.SuctionCup), ("cups", Fixing.SuctionCup), ("arms", Fixing.ArticulatedArm), ("arm", Fixing.ArticulatedArm), ("tape", Fixing.PaperTape), ("tapes", Fixing.PaperTape), ("elastics", Fixing.ElasticTie),
        ("ties", Fixing.ElasticTie), ("tie", Fixing.ElasticTie), ("bases", Fixing.WeightedBase), ("base", Fixing.WeightedBase),
    ];

    private static readonly HashSet<string> Fillers = [.. "a an the of with x matt".Split(' ')];

    /// <summary>A fixing's name; null when it is none.</summary>
    public static Fixing? One(string text)
    {
        var words = new StrictWords(text);
        return words.TakeAny(Table, out Fixing fixing) && words.Left(Fillers).Length == 0 ? fixing : null;
    }

    /// <summary>Fixings with their counts in words; "none" for none.</summary>
    public static string Say(IEnumerable<FixingStock> fixings)
    {
        string said = string.Join(", ", fixings.Select(f => Wordings.Say($"{f.Count} x {Wordings.Fixing(f.Fixing)}")));
        return said.Length == 0 ? "none" : said;
    }

    /// <summary>Reads a field of fixings.</summary>
    public static List<FixingStock> Read(EntryReading reading, string field)
    {
        var read = new List<FixingStock>();
        string[] pieces = [.. reading.Lines(field).SelectMany(FormText.Pieces)];
        if (pieces is [var only] && only.Equals("none", StringComparison.OrdinalIgnoreCase))
        {
            return read;
        }

        foreach (string piece in pieces)
        {
            Match counted = Counted().Match(piece);
            if (!counted.Success || One(counted.Groups[2].Value) is not { } fixing)
            {
                reading.Problem(field, $"\"{piece}\" is not understood.", $"Write a number and a fixing, such as \"4 spring clips\"; there are {Names}.");
            }
            else if (read.Any(f => f.Fixing == fixing))
            {
                reading.Problem(field, $"{Wordings.Fixing(fixing)} is there twice. Write it once with the whole number.");
            }
            else
            {
                read.Add(new FixingStock { Fixing = fixing, Count = int.Parse(counted.Groups[1].Value, CultureInfo.InvariantCulture) });
            }
        }

        return read;
    }

    [GeneratedRegex(@"^(\d{1,4})\s*(?:x\s+)?(\D+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Counted();
}
