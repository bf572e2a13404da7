using Quarterlight.Crew.Commands;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>The form of a car: what it is, and its tape measurements.</summary>
internal sealed class CarForm(PlannerClients planner) : IThingForm<Cabin>
{
    private const int Longest = 1000;

    /// <inheritdoc/>
    public Task<CrewForm> ShowAsync(string formId, Cabin? kept, CrewCommandCall? call, UnitPreference units, CancellationToken cancellation) => Task.FromResult(Show(formId, kept, units));

    /// <inheritdoc/>
    public async Task<FormResult<Cabin>?> ReadAsync(EntryReading reading, Cabin? kept, UnitPreference units, CancellationToken cancellation)
    {
        reading.CheckLengths();
        Cabin car = kept?.Clone() ?? new Cabin();
        CrewForm metric = Show("", kept, UnitPreference.Metric), imperial = Show("", kept, UnitPreference.Imperial);
        bool Changed(string field) => kept is null || !reading.Same(field, metric.Value(field), imperial.Value(field));
        if (Changed("name"))
        {
            car.DisplayName = reading.Line("name");
        }

        if (Changed("shape"))
        {
            CarWords.ReadShape(reading, "shape", car);
        }

        if (Changed("details"))
        {
            CarWords.ReadDetails(reading, "details", car);
        }

        if (Changed("lengths") || Changed("heights"))
        {
            await ReadSizesAsync(reading, car, kept, cancellation).ConfigureAwait(false);
        }
        else if (kept is null)
        {
            reading.TakeAsUsual("all sizes typical for the shape");
        }

        return reading.Good ? new FormResult<Cabin>(car, []) : null;
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Describe(Cabin car, UnitPreference units) =>
        [Wording.Wordings.Capital($"{CarWords.Shape(car)}, {CarWords.Details(car)}."), car.Measurements is null ? "Sizes: typical for the shape." : "Sizes: its own; the form shows them."];

    /// <inheritdoc/>
    public IReadOnlyList<string> FollowUps(Cabin car) => ["list cars"];

    private static CrewForm Show(string formId, Cabin? kept, UnitPreference units) => new(formId, kept is null ? "New car" : "Change a car",
    [
        new("name", "What you call it") { Hint = "Grey saloon of the picture crew", Required = true, Value = kept?.DisplayName ?? "", MostCharacters = 80 },
        new("shape", "Shape and driver's side") { Hint = "saloon, left-hand drive", Required = true, Value = kept is null ? "" : CarWords.Shape(kept), MostCharacters = 200 },
        new("details", "Engine, seats, roof, airbags") { Hint = "engine in front, 6 cylinders, leather seats, glass roof; empty takes the usual", Value = kept is null ? "" : CarWords.Details(kept), MostCharacters = 300 },
        new("lengths", "Tape: across and along") { Hint = "shoulder width 145 cm, seat spacing 74 cm, ... Empty takes sizes typical for the shape", Value = MeasurementLines.Say(kept?.Measurements, false, units), SeveralLines = true, MostCharacters = Longest },
        new("heights", "Tape: heights above the floor") { Hint = "front height 118 cm, dash height 75 cm, cushion height 27 cm, sill height 78 cm", Value = MeasurementLines.Say(kept?.Measurements, true, units), SeveralLines = true, MostCharacters = Longest },
    ]);

    private async Task ReadSizesAsync(EntryReading reading, Cabin car, Cabin? kept, CancellationToken cancellation)
    {
        Dictionary<string, LengthSaid> read = MeasurementLines.Read(reading, "lengths");
        foreach ((string field, LengthSaid length) in MeasurementLines.Read(reading, "heights"))
        {
            if (!read.TryAdd(field, length))
            {
                reading.Problem("heights", "a measurement stands in both fields. Write it once.");
            }
        }

        if (!reading.Good)
        {
            return;
        }

        // The planner knows what is typical of a shape; the engine and the seats do not matter for it.
        var shape = new Cabin { DisplayName = "typical", BodyStyle = car.BodyStyle, DriveSide = car.DriveSide, EngineLayout = EngineLayout.Front };
        ListMountSitesResponse typical = await planner.Placement.ListMountSitesAsync(new() { Cabin = shape }, planner.Options(cancellation)).ConfigureAwait(false);
        var notMeasured = new List<string>();
        car.Measurements = MeasurementLines.Merge(read, kept?.Measurements, typical.Measurements ?? new CabinMeasurements(), notMeasured);
        if (car.Measurements is null)
        {
            reading.TakeAsUsual("all sizes typical for the shape");
        }
        else if (notMeasured.Count > 0)
        {
            reading.TakeAsUsual($"typical for the shape, as not measured: {string.Join(", ", notMeasured)}");
        }
    }
}
