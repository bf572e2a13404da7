using System.Text.RegularExpressions;
using Google.Protobuf.Reflection;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Tape measurements as lines of a name and a length, both ways. Lengths across and along stand in one field, heights in another.</summary>
internal static partial class MeasurementLines
{
    private static readonly (string Field, bool Height, string[] Names)[] Table =
    [
        ("shoulder_width_m", false, ["shoulder width", "width at the shoulders", "shoulders", "width"]),
        ("seat_spacing_m", false, ["seat spacing", "between seats", "seats apart", "between the front seats"]),
        ("dash_to_backrest_m", false, ["dash to backrest", "dash to seat", "dash to seat back"]),
        ("dash_depth_m", false, ["dash depth", "depth of the dash"]),
        ("row_spacing_m", false, ["row spacing", "rows apart", "between rows", "between the rows"]),
        ("behind_last_row_m", false, ["behind last row", "behind the last row", "behind rear seat", "behind the rear seat"]),
        ("front_height_m", true, ["front height", "height front", "height in front", "front roof"]),
        ("rear_height_m", true, ["rear height", "height rear", "back height", "height in the rear", "rear roof"]),
        ("dash_height_m", true, ["dash height", "dash top", "height of the dash"]),
        ("cushion_height_m", true, ["cushion height", "seat height", "cushion", "seat cushion"]),
        ("sill_height_m", true, ["sill height", "window sill", "sill", "lower edge of the window"]),
    ];

    /// <summary>Names of one field's measurements, for a hint.</summary>
    public static string Names(bool heights) => string.Join(", ", Table.Where(t => t.Height == heights).Select(t => t.Names[0]));

    /// <summary>The measurements of one field, a line each; empty when the car has typical sizes.</summary>
    public static string Say(CabinMeasurements? sizes, bool heights, UnitPreference units) => sizes is null ? "" :
        string.Join('\n', Table.Where(t => t.Height == heights).Select(t => $"{t.Names[0]} {LengthWords.Say(Get(sizes, t.Field), units)}"));

    /// <summary>Reads the lines of one field: lengths by field name of the contract.</summary>
    public static Dictionary<string, LengthSaid> Read(EntryReading reading, string field)
    {
        var read = new Dictionary<string, LengthSaid>();
        foreach (string piece in reading.Lines(field).SelectMany(FormText.Pieces))
        {
            Match match = NameAndLength().Match(piece);
            string name = match.Success ? match.Groups[1].Value.Trim().TrimEnd(':', '=', ' ') : piece;
            string? wanted = Table.FirstOrDefault(t => t.Names.Contains(name, StringComparer.OrdinalIgnoreCase)).Field;
            if (wanted is null)
            {
                reading.Problem(field, $"\"{piece}\" is not one of the measurements.", $"They are {string.Join(", ", Table.Select(t => t.Names[0]))}.");
            }
            else if (LengthWords.Read(match.Groups[2].Value.Trim()) is not { } length)
            {
                reading.Problem(field, $"the length in \"{piece}\" is not clear.", "Write a length with its unit, such as 145 cm or 4 ft 9 in.");
            }
            else if (!read.TryAdd(wanted, length))
            {
                reading.Problem(field, $"the {FieldWords.Of(wanted)[4..]} is there twice. Write it once.");
            }
        }

        return read;
    }

    /// <summary>
    /// The sizes of a car from what was measured: what was not is typical for the shape; a length that would be shown just as the
    /// kept one keeps the kept one's fractions. Null when nothing was measured.
    /// </summary>
    /// <param name="read">What was measured.</param>
    /// <param name="kept">Sizes kept before, or null.</param>
    /// <param name="typical">Sizes typical for the shape.</param>
    /// <param name="notMeasured">Takes the names of what was not measured.</param>
    public static CabinMeasurements? Merge(IReadOnlyDictionary<string, LengthSaid> read, CabinMeasurements? kept, CabinMeasurements typical, List<string> notMeasured)
    {
        if (read.Count == 0)
        {
            return null;
        }

        CabinMeasurements merged = typical.Clone();
        foreach ((string field, _, string[] names) in Table)
        {
            if (!read.TryGetValue(field, out LengthSaid length))
            {
                notMeasured.Add(names[0]);
                continue;
            }

            Set(merged, field, length.OrKept(kept is null ? null : Get(kept, field)));
        }

        return merged;
    }

    private static double Get(CabinMeasurements sizes, string field) => (double)Field(field).Accessor.GetValue(sizes);

    private static void Set(CabinMeasurements sizes, string field, double metres) => Field(field).Accessor.SetValue(sizes, metres);

    private static FieldDescriptor Field(string name) => CabinMeasurements.Descriptor.FindFieldByName(name);

    [GeneratedRegex(@"^(\D+?)(\d.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex NameAndLength();
}
