namespace Quarterlight.Radio.Propagation;

/// <summary>How a path loss is computed.</summary>
public enum PropagationModel
{
    /// <summary>Free space, ITU-R P.525.</summary>
    FreeSpace,

    /// <summary>Direct and ground ray with the Fresnel reflection coefficient, averaged along the road.</summary>
    TwoRay,

    /// <summary>Plane earth with least effective heights for antennas near the ground.</summary>
    NearGround,

    /// <summary>Line of sight in a street, 300 MHz to 3 GHz, ITU-R P.1411.</summary>
    StreetUhf,

    /// <summary>Street canyon, 0.8 GHz and up, ITU-R P.1411.</summary>
    StreetCanyon,

    /// <summary>Both ends near street level, out of sight, ITU-R P.1411.</summary>
    StreetCorner,

    /// <summary>Road tunnel as a waveguide.</summary>
    Tunnel,
}

/// <summary>A model that was considered and not used.</summary>
/// <param name="Model">Which.</param>
/// <param name="Reason">Why not, in one sentence.</param>
public sealed record PropagationRefusal(PropagationModel Model, string Reason);

/// <summary>The model used for a path.</summary>
/// <param name="Model">Which.</param>
/// <param name="Reason">Why, in one sentence.</param>
/// <param name="NearestM">Least distance it holds for, in metres: the far field, or the model's own.</param>
/// <param name="FarthestM">Greatest distance it holds for, in metres.</param>
/// <param name="Refused">Those not used, with reasons.</param>
public sealed record PathChoice(PropagationModel Model, string Reason, double NearestM, double FarthestM, IReadOnlyList<PropagationRefusal> Refused);
