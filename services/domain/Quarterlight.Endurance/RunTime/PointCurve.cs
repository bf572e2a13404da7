namespace Quarterlight.Endurance.RunTime;

/// <summary>A curve given by points, straight between them and flat beyond the ends.</summary>
internal sealed class PointCurve
{
    private readonly (double X, double Y)[] _points;

    /// <summary>Makes it from points with rising x.</summary>
    public PointCurve(params (double X, double Y)[] points) => _points = points;

    public double At(double x)
    {
        if (x <= _points[0].X)
        {
            return _points[0].Y;
        }

        for (int i = 1; i < _points.Length; i++)
        {
            if (x <= _points[i].X)
            {
                (double x0, double y0) = _points[i - 1];
                (double x1, double y1) = _points[i];
                return y0 + ((y1 - y0) * (x - x0) / (x1 - x0));
            }
        }

        return _points[^1].Y;
    }
}
