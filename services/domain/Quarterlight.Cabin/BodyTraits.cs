namespace Quarterlight.Cabin;

/// <summary>
/// What a body style decides beside its sizes. Rakes and glass runs are judgement: typical shapes, not any one car.
/// </summary>
internal sealed record BodyTraits
{
    public int Rows { get; init; } = 2;

    public bool FrontCentreSeat { get; init; }

    public bool RearCentreSeat { get; init; } = true;

    /// <summary>Windscreen above the horizontal, degrees.</summary>
    public double RakeDeg { get; init; } = 30;

    /// <summary>Horizontal run of the rear glass, metres: long in a saloon, short in an estate.</summary>
    public double RearGlassRunM { get; init; } = 0.1;

    public bool ParcelShelf { get; init; }

    /// <summary>Open load space behind the last row, with glass beside it.</summary>
    public bool LoadSpace { get; init; }

    public bool RearDoors { get; init; } = true;

    public bool Bulkhead { get; init; }

    public static BodyTraits Of(BodyStyle body) => body switch
    {
        BodyStyle.SmallHatch => new() { ParcelShelf = true, RearGlassRunM = 0.15 },
        BodyStyle.Saloon => new() { RakeDeg = 29, ParcelShelf = true, RearGlassRunM = 0.38 },
        BodyStyle.Estate => new() { RakeDeg = 29, LoadSpace = true, RearGlassRunM = 0.15 },
        BodyStyle.Coupe => new() { RakeDeg = 27, ParcelShelf = true, RearGlassRunM = 0.4, RearDoors = false, RearCentreSeat = false },
        BodyStyle.Suv => new() { RakeDeg = 35, LoadSpace = true, RearGlassRunM = 0.12 },
        BodyStyle.PeopleCarrier => new() { Rows = 3, RakeDeg = 28, LoadSpace = true },
        BodyStyle.Pickup => new() { RakeDeg = 37, RearGlassRunM = 0.05 },
        BodyStyle.PanelVan => new() { Rows = 1, RakeDeg = 42, FrontCentreSeat = true, RearCentreSeat = false, RearDoors = false, Bulkhead = true, RearGlassRunM = 0 },
        BodyStyle.BenchSeatClassic => new() { RakeDeg = 52, FrontCentreSeat = true, ParcelShelf = true, RearGlassRunM = 0.25 },
        _ => throw new ArgumentOutOfRangeException(nameof(body), body, "Unknown body style."),
    };
}
