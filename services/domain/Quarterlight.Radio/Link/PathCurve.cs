using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Link;

/// <summary>Path loss against distance, obstacles included, on a grid even in the logarithm of distance.</summary>
internal sealed class PathCurve
{
    private const int SmoothPoints = 64, WavyPoints = 128;

    private readonly double[] _distanceM;
    private readonly double[] _lossDb;

    private PathCurve(double[] distanceM, double[] lossDb) => (_distanceM, _lossDb) = (distanceM, lossDb);

    /// <summary>Distances in metres, nearest first.</summary>
    public ReadOnlySpan<double> DistanceM => _distanceM;

    /// <summary>Loss in dB at each.</summary>
    public ReadOnlySpan<double> LossDb => _lossDb;

    /// <summary>Works the curve out.</summary>
    public static PathCurve Of(PathChoice choice, in PathInputs path, Surroundings surroundings, LinkSight sight)
    {
        // Direct and ground ray alternate near by; everything else is smooth, and straight between points on this grid.
        int count = choice.Model == PropagationModel.TwoRay ? WavyPoints : SmoothPoints;
        var distance = new double[count];
        var loss = new double[count];
        double ratio = Math.Pow(choice.FarthestM / choice.NearestM, 1.0 / (count - 1)), d = choice.NearestM;
        for (int i = 0; i < count; i++, d *= ratio)
        {
            distance[i] = d;
            loss[i] = At(choice.Model, path, surroundings, sight, d);
        }

        return new PathCurve(distance, loss);
    }

    /// <summary>Loss at one distance, obstacles included.</summary>
    public static double At(PropagationModel model, in PathInputs path, Surroundings surroundings, LinkSight sight, double distanceM) =>
        PathModels.LossDb(model, path, surroundings, distanceM) + PathModels.ObstacleLossDb(sight, path, distanceM);

    /// <summary>Distance in metres up to which the loss stays at or below a value; 0 when it is above from the start.</summary>
    public double HoldsToM(double mostLossDb, out bool beyond)
    {
        beyond = false;
        for (int i = 0; i < _lossDb.Length; i++)
        {
            if (_lossDb[i] > mostLossDb)
            {
                return i == 0 ? 0 : Between(i, mostLossDb);
            }
        }

        beyond = true;
        return _distanceM[^1];
    }

    /// <summary>Farthest distance in metres at which the loss is at or below a value, gaps on the way or not; 0 when it never is.</summary>
    public double LastHeldM(double mostLossDb)
    {
        for (int i = _lossDb.Length - 1; i >= 0; i--)
        {
            if (_lossDb[i] <= mostLossDb)
            {
                return i == _lossDb.Length - 1 ? _distanceM[i] : Between(i + 1, mostLossDb);
            }
        }

        return 0;
    }

    private double Between(int i, double lossDb)
    {
        double fraction = (lossDb - _lossDb[i - 1]) / (_lossDb[i] - _lossDb[i - 1]);
        return _distanceM[i - 1] * Math.Pow(_distanceM[i] / _distanceM[i - 1], fraction);
    }
}
