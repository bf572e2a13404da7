using System.Text.RegularExpressions;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>The car and the kit named in the form of a scene.</summary>
/// <param name="Car">The car; null when it was not understood, which then stands in the reading.</param>
/// <param name="IsNewCar">True for a car of a shape that the team does not keep yet.</param>
/// <param name="Kit">The kit; null when it was not understood.</param>
internal sealed partial record CarAndKit(Cabin? Car, bool IsNewCar, Kit? Kit)
{
    /// <summary>Reads the field: "Car: ..." and "Kit: ...", or the car in the first line and the kit in the second.</summary>
    /// <param name="reading">The entry.</param>
    /// <param name="field">Its field.</param>
    /// <param name="shelves">What the team keeps.</param>
    /// <param name="cars">Its cars.</param>
    /// <param name="kits">Its kits.</param>
    /// <param name="unchanged">The scene as kept when the field stands as it was shown; null otherwise.</param>
    public static CarAndKit Read(EntryReading reading, string field, Shelves shelves, IReadOnlyList<Cabin> cars, IReadOnlyList<Kit> kits, Scene? unchanged)
    {
        if (unchanged is not null && cars.FirstOrDefault(c => c.Name == unchanged.Cabin) is { } before)
        {
            return new CarAndKit(before, false, kits.FirstOrDefault(k => k.Name == unchanged.Kit) ?? new Kit { Name = unchanged.Kit });
        }

        string? car = null, kit = null;
        var rest = new List<string>();
        foreach (string line in reading.Lines(field).SelectMany(l => KitFollows().Split(l)).SelectMany(l => l.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)))
        {
            Match labelled = Labelled().Match(line);
            if (!labelled.Success)
            {
                rest.Add(line);
            }
            else if (labelled.Groups[1].Value.Equals("kit", StringComparison.OrdinalIgnoreCase))
            {
                kit ??= labelled.Groups[2].Value.Trim();
            }
            else
            {
                car ??= labelled.Groups[2].Value.Trim();
            }
        }

        foreach (string line in rest)
        {
            if (string.IsNullOrEmpty(car))
            {
                car = line;
            }
            else if (string.IsNullOrEmpty(kit))
            {
                kit = line;
            }
            else
            {
                reading.Problem(field, $"\"{line}\" is one line too many.", "Write the car in one line and the kit in another.");
            }
        }

        (Cabin? found, bool isNew) = FindCar(reading, field, shelves, cars, car ?? "");
        return new CarAndKit(found, isNew, FindKit(reading, field, shelves, kits, kit ?? ""));
    }

    private static (Cabin? Car, bool IsNew) FindCar(EntryReading reading, string field, Shelves shelves, IReadOnlyList<Cabin> cars, string said)
    {
        if (said.Length == 0)
        {
            reading.Problem(field, $"the car is missing. {ThingFinder.There(shelves.Cars, cars)} Or write a shape and a side, such as \"saloon, left-hand drive\".");
            return (null, false);
        }

        Found<Cabin> found = ThingFinder.Find(shelves.Cars, cars, said);
        bool exact = found.Thing is { } thing && (shelves.Cars.Shown(thing).Equals(said, StringComparison.OrdinalIgnoreCase) || shelves.Cars.IdOf(thing) == said || thing.Name == said);
        if (!exact && CarWords.Typical(said) is { } typical)
        {
            if (cars.FirstOrDefault(c => shelves.Cars.Bared(c).Equals(typical)) is { } alike)
            {
                return (alike, false);
            }

            reading.TakeAsUsual($"a new car \"{typical.DisplayName}\" with sizes typical for the shape, {Wordings.Engine(typical.EngineLayout)}, cloth seats");
            return (typical, true);
        }

        if (found.Thing is null)
        {
            bool halfSaid = CarWords.NamesShape(said);
            reading.Problem(field, halfSaid ? $"the car \"{said}\" needs its driver's side and nothing else, such as \"saloon, left-hand drive\"; or the name of a kept one. {ThingFinder.There(shelves.Cars, cars)}"
                : $"{found.Problem} Or write a shape and a side: {CarWords.Shapes}; left-hand drive or right-hand drive.");
        }

        return (found.Thing, false);
    }

    private static Kit? FindKit(EntryReading reading, string field, Shelves shelves, IReadOnlyList<Kit> kits, string said)
    {
        if (said.Length == 0)
        {
            reading.Problem(field, $"the kit is missing. {ThingFinder.There(shelves.Kits, kits)}");
            return null;
        }

        Found<Kit> found = ThingFinder.Find(shelves.Kits, kits, said);
        if (found.Thing is null)
        {
            reading.Problem(field, found.Problem);
        }

        return found.Thing;
    }

    [GeneratedRegex(@"^(car|kit)\s*[:=]\s*(.*)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Labelled();

    // "Car: x, Kit: y" in one line.
    [GeneratedRegex(@"[,;]?\s+(?=kit\s*[:=])", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex KitFollows();
}
