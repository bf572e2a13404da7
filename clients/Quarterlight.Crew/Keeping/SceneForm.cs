using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>The form of a scene: its name, car and kit, who talks, cameras and driving. Head poses, measured positions, the follow car, the day and the route stay as they are.</summary>
internal sealed class SceneForm(PlannerClients planner, Shelves shelves) : IThingForm<Scene>
{
    /// <inheritdoc/>
    public async Task<CrewForm> ShowAsync(string formId, Scene? kept, CrewCommandCall? call, UnitPreference units, CancellationToken cancellation)
    {
        IReadOnlyList<Cabin> cars = await planner.AllCabinsAsync(cancellation).ConfigureAwait(false);
        IReadOnlyList<Kit> kits = await planner.AllKitsAsync(cancellation).ConfigureAwait(false);
        string car = kept is not null ? ThingFinder.NameFor(shelves.Cars, cars, kept.Cabin) : call?.Values.GetValueOrDefault("car") is { Length: > 0 } saidCar ? saidCar : cars is [var onlyCar] ? shelves.Cars.Shown(onlyCar) : "";
        string kit = kept is not null ? ThingFinder.NameFor(shelves.Kits, kits, kept.Kit) : call?.Values.GetValueOrDefault("kit") is { Length: > 0 } saidKit ? saidKit : kits is [var onlyKit] ? shelves.Kits.Shown(onlyKit) : "";
        return Show(formId, kept, units, car, kit);
    }

    /// <inheritdoc/>
    public async Task<FormResult<Scene>?> ReadAsync(EntryReading reading, Scene? kept, UnitPreference units, CancellationToken cancellation)
    {
        reading.CheckLengths();
        IReadOnlyList<Cabin> cars = await planner.AllCabinsAsync(cancellation).ConfigureAwait(false);
        IReadOnlyList<Kit> kits = await planner.AllKitsAsync(cancellation).ConfigureAwait(false);
        Scene scene = kept?.Clone() ?? new Scene();
        CrewForm metric = await ShowAsync("", kept, null, UnitPreference.Metric, cancellation).ConfigureAwait(false), imperial = await ShowAsync("", kept, null, UnitPreference.Imperial, cancellation).ConfigureAwait(false);
        bool Changed(string field) => kept is null || !reading.Same(field, metric.Value(field), imperial.Value(field));
        if (Changed("name"))
        {
            scene.DisplayName = reading.Line("name");
        }

        CarAndKit chosen = CarAndKit.Read(reading, "car-and-kit", shelves, cars, kits, Changed("car-and-kit") ? null : kept);
        if (chosen.Car is not { } car)
        {
            // Without the car no seat can be told from another, but what can be read is.
            return null;
        }

        (scene.Cabin, scene.Kit) = (chosen.IsNewCar ? "" : car.Name, chosen.Kit?.Name ?? "");
        bool driverOnLeft = car.DriveSide != DriveSide.Right;
        ListMountSitesResponse built = await planner.Placement.ListMountSitesAsync(new() { Cabin = car }, planner.Options(cancellation)).ConfigureAwait(false);
        var seats = new SeatPicker([.. built.Seats], driverOnLeft);
        if (Changed("talkers"))
        {
            TalkersRead people = TalkerLines.Read(reading, "talkers", kept, seats);
            scene.Talkers.Clear();
            scene.Talkers.Add(people.Talkers);
            scene.SilentSeatIds.Clear();
            scene.SilentSeatIds.Add(people.SilentSeatIds);
        }

        if (Changed("cameras"))
        {
            List<Shot> shots = ShotLines.Read(reading, "cameras", kept, [.. scene.Talkers], seats, built, driverOnLeft);
            scene.Shots.Clear();
            scene.Shots.Add(shots);
        }

        if (Changed("drive"))
        {
            string[] panes = [.. built.Sites.Where(s => s.OnMovingGlass).Select(s => s.SeatId).Distinct()];
            scene.DriveConditions = DriveWords.Read(reading, "drive", kept?.DriveConditions, driverOnLeft, WindowPanes(panes, driverOnLeft), units);
        }

        return reading.Good ? new FormResult<Scene>(scene, Remarks(scene, kept)) { Before = chosen.IsNewCar ? (s, c) => KeepCarAsync(s, car, cars, c) : null } : null;
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Describe(Scene scene, UnitPreference units) =>
    [
        $"Talkers: {string.Join("; ", scene.Talkers.Select(t => TalkerLines.Say(t).Replace(": ", ", ", StringComparison.Ordinal)))}{(scene.SilentSeatIds.Count > 0 ? Wordings.Say($"; {scene.SilentSeatIds.Count} silent") : "")}.",
        scene.Shots.Count == 0 ? "No cameras." : Wordings.Say($"Cameras: {string.Join(", ", scene.Shots.Select(s => Wordings.Say($"{s.Id} {s.FocalLengthMm:0.##} mm")))}."),
        $"Driving: {DriveText.Whole(scene.DriveConditions, units)}.",
    ];

    /// <inheritdoc/>
    public IReadOnlyList<string> FollowUps(Scene scene) => ["where do the mics go?", "show the scene"];

    private static CrewForm Show(string formId, Scene? kept, UnitPreference units, string car, string kit) => new(formId, kept is null ? "New scene" : "Change a scene",
    [
        new("name", "What you call it") { Hint = "Scene 12, the argument", Required = true, Value = kept?.DisplayName ?? "", MostCharacters = 80 },
        new("car-and-kit", "Car and kit, a line each") { Hint = "Car: its name, or \"saloon, left-hand drive\". Kit: its name", Required = true, SeveralLines = true, Value = $"Car: {car}\nKit: {kit}", MostCharacters = 300 },
        new("talkers", "Who talks, and where they sit") { Hint = "Ann driver, Bo front passenger loud, kid back left quiet", Required = true, SeveralLines = true, Value = kept is null ? "" : TalkerLines.Say(kept), MostCharacters = 1500 },
        new("cameras", "Cameras") { Hint = "bonnet 35 mm, hostess tray left 50 mm at Ann; or none", SeveralLines = true, Value = kept is null ? "" : ShotLines.Say([.. kept.Shots]), MostCharacters = 1500 },
        new("drive", "How the car is driven") { Hint = "40 mph, windows shut, fan off; empty: standing, engine running", SeveralLines = true, Value = kept is null ? "" : DriveWords.Say(kept.DriveConditions, units), MostCharacters = 500 },
    ]);

    private static List<string> Remarks(Scene scene, Scene? kept)
    {
        var remarks = new List<string>();
        if (kept is not null && kept.Cabin != scene.Cabin && scene.Shots.Any(s => kept.Shots.Contains(s)))
        {
            remarks.Add("The cameras kept their places from the other car: check them, or write them anew.");
        }

        if (kept is not null && Rest(kept) is { Length: > 0 } rest)
        {
            remarks.Add($"Kept as it was, as the form does not show it: {rest}.");
        }

        return remarks;
    }

    private static string Rest(Scene scene)
    {
        var parts = new List<string> { "head poses" };
        if (scene.DriveConditions?.NoiseCorrection is not null)
        {
            parts.Add("the noise measured in a clip");
        }

        if (scene.FollowCar is not null)
        {
            parts.Add("the follow car");
        }

        if (scene.ShootDay is not null)
        {
            parts.Add("the shoot day");
        }

        if (scene.Route.Count > 0)
        {
            parts.Add("the route");
        }

        return Wordings.Join(parts);
    }

    private static List<string> WindowPanes(IReadOnlyList<string> seatIds, bool driverOnLeft)
    {
        string near = driverOnLeft ? "left" : "right", far = driverOnLeft ? "right" : "left";
        return [.. seatIds.Select(s => s switch { "driver" => $"front-{near}", "front-passenger" => $"front-{far}", _ => s }).Where(p => p is "front-left" or "front-right" or "rear-left" or "rear-right")];
    }

    private async Task<Func<Task>> KeepCarAsync(Scene scene, Cabin car, IReadOnlyList<Cabin> cars, CancellationToken cancellation)
    {
        Cabin keptCar = await NewIds.CreateAsync(shelves.Cars, NewIds.From(car.DisplayName, "car"), car, cars, cancellation).ConfigureAwait(false);
        scene.Cabin = keptCar.Name;
        return () => shelves.Cars.DeleteAsync(keptCar.Name, CancellationToken.None);
    }
}
