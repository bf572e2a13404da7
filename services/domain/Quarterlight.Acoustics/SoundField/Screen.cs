using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.SoundField;

/// <summary>
/// Something in the cabin that sound has to go round: a backrest (upright panel standing on the floor) or a head (ball).
/// </summary>
/// <remarks>
/// Each free edge passes the energy of a knife edge: J(v) = 6.9 + 20 lg(sqrt((v-0.1)^2 + 1) + v - 0.1) dB,
/// Recommendation ITU-R P.526, single knife-edge approximation, with v = 2 sqrt(detour / wavelength). It is the Fresnel
/// integral of any wave at a straight edge, so sound may use it. Edges add by energy.
/// </remarks>
public readonly struct Screen
{
    private readonly Vector256<double> _min;
    private readonly Vector256<double> _max;
    private readonly Box3D _box;
    private readonly Vector3D _center;
    private readonly double _radiusM;

    private Screen(Box3D box, Vector3D center, double radiusM, int owner)
    {
        _box = box;
        _min = Vector256.Create(box.Min.X, box.Min.Y, box.Min.Z, -1e9);
        _max = Vector256.Create(box.Max.X, box.Max.Y, box.Max.Z, 1e9);
        _center = center;
        _radiusM = radiusM;
        Owner = owner;
    }

    /// <summary>Number of the talker whose own head this is, or -1: nobody's own voice is screened by the own head, which the voice directivity holds already.</summary>
    public int Owner { get; }

    /// <summary>An upright panel such as a backrest: sound passes over it and round both sides, not under it.</summary>
    public static Screen Panel(Box3D box) => new(box, box.Center, 0, -1);

    /// <summary>A head.</summary>
    public static Screen Head(Vector3D center, double radiusM, int owner) => new(Box3D.Around(center, 2 * radiusM, 2 * radiusM, 2 * radiusM), center, radiusM, owner);

    /// <summary>Knife-edge loss in dB for v at or above -0.78 (ITU-R P.526); 0 below.</summary>
    public static double KnifeEdgeLossDb(double v)
    {
        if (v <= -0.78)
        {
            return 0;
        }

        double u = v - 0.1;
        return 6.9 + (20 * Math.Log10(Math.Sqrt((u * u) + 1) + u));
    }

    /// <summary>
    /// Detours in metres round the free edges when a straight ray meets the screen; false when it does not, or when one of
    /// its ends lies inside.
    /// </summary>
    internal bool TryDetours(in ScreenRay ray, out double first, out double second, out double third)
    {
        first = second = third = 0;
        if (!ray.Meets(_min, _max, out double enter, out double leave))
        {
            return false;
        }

        Vector3D from = ray.From, to = ray.To;
        if (_radiusM > 0)
        {
            return TryBall(from, to, ref first, ref second, ref third);
        }

        if (_box.Contains(from) || _box.Contains(to))
        {
            return false;
        }

        Vector3D crossing = from + (0.5 * (enter + leave) * (to - from));
        double straight = from.DistanceTo(to);
        bool thinInX = _box.Size.X <= _box.Size.Y;
        first = Detour(from, crossing with { Z = _box.Max.Z }, to, straight);
        second = Detour(from, thinInX ? crossing with { Y = _box.Max.Y } : crossing with { X = _box.Max.X }, to, straight);
        third = Detour(from, thinInX ? crossing with { Y = _box.Min.Y } : crossing with { X = _box.Min.X }, to, straight);
        return true;
    }

    private static double Detour(Vector3D from, Vector3D edge, Vector3D to, double straight) =>
        Math.Max(0, from.DistanceTo(edge) + edge.DistanceTo(to) - straight);

    private bool TryBall(Vector3D from, Vector3D to, ref double first, ref double second, ref double third)
    {
        Vector3D d = to - from;
        double straight = d.Length;
        if (straight < 1e-6)
        {
            return false;
        }

        double t = (_center - from).Dot(d) / d.LengthSquared;
        if (t <= 0 || t >= 1)
        {
            return false;
        }

        Vector3D foot = from + (t * d);
        double h = foot.DistanceTo(_center);
        if (h >= _radiusM)
        {
            return false;
        }

        // The ball stands as a disc across the line: near rim, far rim, and the rims at the sides (alike, counted once each).
        double a = t * straight, b = straight - a;
        first = Over(a, b, _radiusM - h);
        second = Over(a, b, _radiusM + h);
        third = Over(a, b, Math.Sqrt((_radiusM * _radiusM) - (h * h)));
        return true;
    }

    private static double Over(double a, double b, double height) =>
        Math.Sqrt((a * a) + (height * height)) + Math.Sqrt((b * b) + (height * height)) - a - b;

    /// <summary>Share of the energy that passes, by octave band, 0 to 1, for the detours round three edges.</summary>
    internal static BandVector Passing(double first, double second, double third, double speedOfSoundMps)
    {
        Span<double> lanes = stackalloc double[BandVector.Lanes];
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            double perMetre = OctaveBands.CentresHz[b] / speedOfSoundMps;
            double sum = EdgeEnergy(first * perMetre) + EdgeEnergy(second * perMetre) + EdgeEnergy(third * perMetre);
            lanes[b] = Math.Min(1, sum);
        }

        return BandVector.Load(lanes);
    }

    // 10^(-J(v)/10) without logarithms: J = 6.9 + 20 lg g, so the energy is 10^-0.69 / g^2.
    private static double EdgeEnergy(double detourInWavelengths)
    {
        double u = (2 * Math.Sqrt(detourInWavelengths)) - 0.1;
        double g = Math.Sqrt((u * u) + 1) + u;
        return 0.20417379446695297 / (g * g);
    }
}

/// <summary>A straight piece of a sound path, prepared to be tried against many boxes.</summary>
internal readonly struct ScreenRay
{
    private readonly Vector256<double> _origin;
    private readonly Vector256<double> _inverse;

    public ScreenRay(Vector3D from, Vector3D to)
    {
        From = from;
        To = to;
        _origin = Vector256.Create(from.X, from.Y, from.Z, 0);
        _inverse = Vector256.Create(Inverse(to.X - from.X), Inverse(to.Y - from.Y), Inverse(to.Z - from.Z), 1);
    }

    public Vector3D From { get; }

    public Vector3D To { get; }

    /// <summary>Slab test of all three axes at once; where the ray enters and leaves, as fractions of its length.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool Meets(Vector256<double> min, Vector256<double> max, out double enter, out double leave)
    {
        Vector256<double> a = (min - _origin) * _inverse, b = (max - _origin) * _inverse;
        Vector256<double> near = Vector256.Min(a, b), far = Vector256.Max(a, b);
        enter = Math.Max(Math.Max(Math.Max(near.GetElement(0), near.GetElement(1)), near.GetElement(2)), 0);
        leave = Math.Min(Math.Min(Math.Min(far.GetElement(0), far.GetElement(1)), far.GetElement(2)), 1);
        return enter <= leave;
    }

    // A ray along an axis never crosses the slabs across it: a huge inverse keeps the arithmetic finite.
    private static double Inverse(double d) => Math.Abs(d) > 1e-12 ? 1 / d : 1e12;
}
