namespace Quarterlight.Endurance.Heat;

/// <summary>
/// A cabin as two nodes: Ca dTa/dt = qa - UA (Ta - To) + Ui (Tm - Ta), Cm dTm/dt = qm - Ui (Tm - Ta). One step with constant inputs is exact, by the
/// matrix exponential, so any step is stable.
/// </summary>
public sealed class CabinHeatModel
{
    private readonly double _e11, _e12, _e21, _e22, _perLoss, _perInterior;

    /// <summary>Prepares steps of one length.</summary>
    /// <param name="nodes">Sizes.</param>
    /// <param name="lossWPerK">UA: skin and leaks, W/K, above 0.</param>
    /// <param name="stepS">Step, seconds, above 0.</param>
    public CabinHeatModel(CabinNodes nodes, double lossWPerK, double stepS)
    {
        ArgumentNullException.ThrowIfNull(nodes);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lossWPerK);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stepS);
        LossWPerK = lossWPerK;
        (_perLoss, _perInterior) = (1 / lossWPerK, 1 / nodes.InteriorWPerK);
        InteriorWPerK = nodes.InteriorWPerK;
        double a11 = -(lossWPerK + nodes.InteriorWPerK) / nodes.AirJPerK, a12 = nodes.InteriorWPerK / nodes.AirJPerK;
        double a21 = nodes.InteriorWPerK / nodes.InteriorJPerK, a22 = -a21;

        // exp(A t) = e^(s t) (cosh(q t) I + sinh(q t)/q (A - s I)); q is real because exchange works both ways.
        double s = (a11 + a22) / 2, q = Math.Sqrt(((a11 - a22) * (a11 - a22) / 4) + (a12 * a21));
        double fade = Math.Exp(s * stepS), c = fade * Math.Cosh(q * stepS), k = fade * Math.Sinh(q * stepS) / q;
        (_e11, _e12, _e21, _e22) = (c + (k * (a11 - s)), k * a12, k * a21, c + (k * (a22 - s)));
        AirPerWatt = (1 - _e11 - _e12) / lossWPerK;
        InteriorPerWatt = (1 - _e21 - _e22) / lossWPerK;
    }

    /// <summary>UA, W/K.</summary>
    public double LossWPerK { get; }

    /// <summary>Ui, W/K.</summary>
    public double InteriorWPerK { get; }

    /// <summary>What one watt more into the air raises the air by in one step, K.</summary>
    public double AirPerWatt { get; }

    /// <summary>What one watt more into the air raises the interior by in one step, K.</summary>
    public double InteriorPerWatt { get; }

    /// <summary>One step.</summary>
    /// <param name="airC">Air, degrees Celsius; replaced.</param>
    /// <param name="interiorC">Interior, degrees Celsius; replaced.</param>
    /// <param name="outsideC">Outside, degrees Celsius.</param>
    /// <param name="airW">Heat into the air, watts.</param>
    /// <param name="interiorW">Heat into the interior, watts.</param>
    public void Step(ref double airC, ref double interiorC, double outsideC, double airW, double interiorW)
    {
        double steadyAir = outsideC + ((airW + interiorW) * _perLoss), steadyInterior = steadyAir + (interiorW * _perInterior);
        double a = airC - steadyAir, m = interiorC - steadyInterior;
        airC = steadyAir + (_e11 * a) + (_e12 * m);
        interiorC = steadyInterior + (_e21 * a) + (_e22 * m);
    }
}
