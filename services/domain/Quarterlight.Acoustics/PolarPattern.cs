namespace Quarterlight.Acoustics;

/// <summary>
/// How a microphone hears by angle: A + B cos(theta) relative to on-axis, A + B = 1, optionally behind an interference tube.
/// </summary>
/// <remarks>Source: first-order family as in the handbook table of docs/models/polar-patterns.md.</remarks>
public sealed record PolarPattern
{
    private PolarPattern(string name, double a, double tubeLengthM)
    {
        Name = name;
        A = a;
        TubeLengthM = tubeLengthM;
    }

    /// <summary>Name as the trade says it, lower case.</summary>
    public string Name { get; }

    /// <summary>Share of the pressure component, 0 (figure-8) to 1 (omni).</summary>
    public double A { get; }

    /// <summary>Share of the gradient component, 1 - A.</summary>
    public double B => 1 - A;

    /// <summary>Length of the interference tube in metres; 0 for none.</summary>
    public double TubeLengthM { get; }

    /// <summary>True when the ten-sums method applies: a first-order capsule with no tube.</summary>
    public bool IsFirstOrder => TubeLengthM == 0;

    /// <summary>Hears alike from everywhere.</summary>
    public static PolarPattern Omni { get; } = new("omni", 1, 0);

    /// <summary>A = 0.7, the common convention.</summary>
    public static PolarPattern Subcardioid { get; } = new("subcardioid", 0.7, 0);

    /// <summary>Null straight behind.</summary>
    public static PolarPattern Cardioid { get; } = new("cardioid", 0.5, 0);

    /// <summary>Most front-to-rear energy of all first-order patterns: A = (sqrt 3 - 1)/2.</summary>
    public static PolarPattern Supercardioid { get; } = new("supercardioid", (Math.Sqrt(3) - 1) / 2, 0);

    /// <summary>Highest directivity index of all first-order patterns: A = 1/4.</summary>
    public static PolarPattern Hypercardioid { get; } = new("hypercardioid", 0.25, 0);

    /// <summary>Hears front and back alike, nothing from the sides.</summary>
    public static PolarPattern FigureEight { get; } = new("figure-8", 0, 0);

    /// <summary>A supercardioid capsule behind an interference tube of the given length in metres (0.05 to 0.6).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside its range.</exception>
    public static PolarPattern InterferenceTube(double tubeLengthM)
    {
        if (!(tubeLengthM >= 0.05 && tubeLengthM <= 0.6))
        {
            throw new ArgumentOutOfRangeException(nameof(tubeLengthM), tubeLengthM, "A tube is 0.05 to 0.6 m long.");
        }

        return new("interference tube", Supercardioid.A, tubeLengthM);
    }

    /// <summary>Any first-order pattern by its A, 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A is outside 0 to 1.</exception>
    public static PolarPattern FirstOrder(double a)
    {
        if (!(a >= 0 && a <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(a), a, "A is 0 to 1.");
        }

        return new("first order", a, 0);
    }
}
