using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Reads what a car is: shape, driver's side, engine, seats, roof and airbags; and says it in the same words.</summary>
internal static class CarWords
{
    /// <summary>Shapes, in words that can be written.</summary>
    public const string Shapes = "small hatchback, saloon, estate, coupe, sport utility car, people carrier, pickup, panel van or bench-seat classic";

    private static readonly (string, BodyStyle)[] Bodies =
    [
        ("bench seat classic", BodyStyle.BenchSeatClassic), ("double cab pickup", BodyStyle.Pickup), ("double cab pick up", BodyStyle.Pickup), ("sport utility car", BodyStyle.Suv), ("sport utility", BodyStyle.Suv), ("people carrier", BodyStyle.PeopleCarrier), ("small hatchback", BodyStyle.SmallHatch),
        ("small hatch", BodyStyle.SmallHatch), ("station wagon", BodyStyle.Estate), ("panel van", BodyStyle.PanelVan), ("pick up", BodyStyle.Pickup), ("hatchback", BodyStyle.SmallHatch), ("hatch", BodyStyle.SmallHatch), ("saloon", BodyStyle.Saloon), ("sedan", BodyStyle.Saloon), ("estate", BodyStyle.Estate),
        ("wagon", BodyStyle.Estate), ("coupe", BodyStyle.Coupe), ("coupé", BodyStyle.Coupe), ("suv", BodyStyle.Suv), ("minivan", BodyStyle.PeopleCarrier), ("mpv", BodyStyle.PeopleCarrier), ("pickup", BodyStyle.Pickup), ("van", BodyStyle.PanelVan), ("classic", BodyStyle.BenchSeatClassic),
    ];

    private static readonly (string, DriveSide)[] Sides =
    [
        ("left hand drive", DriveSide.Left), ("right hand drive", DriveSide.Right), ("driver on the left", DriveSide.Left), ("driver on the right", DriveSide.Right), ("left hand", DriveSide.Left), ("right hand", DriveSide.Right),
        ("left drive", DriveSide.Left), ("right drive", DriveSide.Right), ("lhd", DriveSide.Left), ("rhd", DriveSide.Right), ("left", DriveSide.Left), ("right", DriveSide.Right),
    ];

    private static readonly (string, EngineLayout)[] Engines =
    [
        ("engine in the middle", EngineLayout.Middle), ("engine in the rear", EngineLayout.Rear), ("engine in the back", EngineLayout.Rear), ("engine in the front", EngineLayout.Front), ("engine in front", EngineLayout.Front), ("middle engine", EngineLayout.Middle), ("mid engine", EngineLayout.Middle),
        ("rear engine", EngineLayout.Rear), ("front engine", EngineLayout.Front), ("engine middle", EngineLayout.Middle), ("engine rear", EngineLayout.Rear), ("engine front", EngineLayout.Front), ("electric motor", EngineLayout.Electric), ("electric car", EngineLayout.Electric), ("electric", EngineLayout.Electric),
    ];

    private static readonly (string, AirbagFit)[] Airbags = [("no airbags", AirbagFit.None), ("without airbags", AirbagFit.None), ("airbags fitted", AirbagFit.Fitted), ("with airbags", AirbagFit.Fitted), ("airbags", AirbagFit.Fitted)];

    private static readonly (string, Upholstery)[] Covers =
    [
        ("leather seats", Upholstery.Leather), ("cloth seats", Upholstery.Cloth), ("leather", Upholstery.Leather), ("fabric", Upholstery.Cloth), ("cloth", Upholstery.Cloth), ("vinyl", Upholstery.Leather),
    ];

    private static readonly (string, bool)[] Roofs = [("no glass roof", false), ("metal roof", false), ("solid roof", false), ("panoramic roof", true), ("glass roof", true), ("glass sunroof", true)];

    private static readonly HashSet<string> Fillers = [.. "a an the with and car vehicle in of it is has".Split(' ')];

    /// <summary>A car from nothing but a shape and a driver's side, as in "saloon, left-hand drive"; null when the text says anything else or less.</summary>
    public static Cabin? Typical(string text)
    {
        var words = new StrictWords(text);
        if (!words.TakeAny(Bodies, out BodyStyle body) || !words.TakeAny(Sides, out DriveSide side))
        {
            return null;
        }

        bool electric = words.TakeAny(Engines, out EngineLayout engine);
        return words.Left(Fillers).Length > 0 ? null : new Cabin
        {
            DisplayName = Wordings.Capital($"{Wordings.Body(body)}, {Side(side)}{(electric ? ", " + Wordings.Engine(engine) : "")}"),
            BodyStyle = body,
            DriveSide = side,
            EngineLayout = electric ? engine : EngineLayout.Front,
            Upholstery = Upholstery.Cloth,
        };
    }

    /// <summary>True when a text names a shape, so that it is meant as a car of that shape.</summary>
    public static bool NamesShape(string text) => new StrictWords(text).TakeAny(Bodies, out _);

    /// <summary>Shape and driver's side in words.</summary>
    public static string Shape(Cabin car) => $"{Wordings.Body(car.BodyStyle)}, {Side(car.DriveSide)}";

    /// <summary>Everything else that is not a size, in words.</summary>
    public static string Details(Cabin car)
    {
        List<string> parts = [Wordings.Engine(car.EngineLayout)];
        if (car.HasCylinderCount)
        {
            parts.Add(Wordings.Say($"{car.CylinderCount} cylinders"));
        }

        parts.Add(car.Upholstery == Upholstery.Leather ? "leather seats" : "cloth seats");
        if (car.GlassRoof)
        {
            parts.Add("glass roof");
        }

        if (car.AirbagFit != AirbagFit.Unspecified)
        {
            parts.Add(car.AirbagFit == AirbagFit.None ? "no airbags" : "airbags fitted");
        }

        return string.Join(", ", parts);
    }

    /// <summary>Reads shape and driver's side into a car.</summary>
    public static void ReadShape(EntryReading reading, string field, Cabin car)
    {
        var words = new StrictWords(reading.Line(field));
        if (words.TakeAny(Bodies, out BodyStyle body))
        {
            car.BodyStyle = body;
        }
        else
        {
            reading.Problem(field, $"no shape was found. Write {Shapes}.");
        }

        if (words.TakeAny(Sides, out DriveSide side))
        {
            car.DriveSide = side;
        }
        else
        {
            reading.Problem(field, "the driver's side is missing. Write left-hand drive or right-hand drive.");
        }

        ReadLeft(reading, field, words, "Write only the shape and the side, such as \"saloon, left-hand drive\"");
    }

    /// <summary>Reads engine, cylinders, seats, roof and airbags into a car; what is not said is as usual.</summary>
    public static void ReadDetails(EntryReading reading, string field, Cabin car)
    {
        var words = new StrictWords(reading.Line(field));
        bool saysEngine = words.TakeAny(Engines, out EngineLayout engine), saysCover = words.TakeAny(Covers, out Upholstery cover);
        car.EngineLayout = saysEngine ? engine : EngineLayout.Front;
        Upholstery wanted = saysCover ? cover : Upholstery.Cloth;
        car.Upholstery = wanted == Upholstery.Cloth && car.Upholstery == Upholstery.Unspecified && saysCover ? car.Upholstery : wanted;
        car.GlassRoof = words.TakeAny(Roofs, out bool glass) && glass;
        car.AirbagFit = words.TakeAny(Airbags, out AirbagFit airbags) ? airbags : AirbagFit.Unspecified;
        car.ClearCylinderCount();
        for (int i = 0; i + 1 < words.All.Count; i++)
        {
            if (words.All[i].Number is { } count && words.All[i + 1].Word is "cylinder" or "cylinders" or "cyl" && count == Math.Floor(count) && count < 1000)
            {
                car.CylinderCount = (int)count;
                words.Use(i, 2);
                break;
            }
        }

        Say(saysEngine, "engine in front");
        Say(saysCover, "cloth seats");
        Say(car.AirbagFit != AirbagFit.Unspecified, car.BodyStyle == BodyStyle.BenchSeatClassic ? "no airbags, as in old cars" : "airbags fitted");
        Say(car.HasCylinderCount || car.EngineLayout == EngineLayout.Electric, "four cylinders");
        ReadLeft(reading, field, words, "Write for example \"electric\", \"engine in front, 6 cylinders\", \"leather seats\", \"glass roof\", \"no airbags\"");

        void Say(bool said, string usual)
        {
            if (!said)
            {
                reading.TakeAsUsual(usual);
            }
        }
    }

    private static void ReadLeft(EntryReading reading, string field, StrictWords words, string right)
    {
        if (words.Left(Fillers) is { Length: > 0 } left)
        {
            reading.Problem(field, $"\"{left}\" is not understood.", right + ".");
        }
    }

    private static string Side(DriveSide side) => side == DriveSide.Right ? "right-hand drive" : "left-hand drive";
}
