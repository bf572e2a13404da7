using Quarterlight.Quantities;
using Quarterlight.V1;

namespace Quarterlight.Planner.Mapping;

/// <summary>Points, directions, estimates and advisories.</summary>
internal static class GeometryMapper
{
    private static readonly ValidRange s_coordinate = new(-20, 20, "m");

    public static Vector3D ToDomain(Position? position, string field, FieldReader reader)
    {
        if (position is null)
        {
            reader.Add(field, "the position is missing", "Give x_m, y_m and z_m");
            return default;
        }

        s_coordinate.Check($"{field}.x_m", position.XM, reader.Violations);
        s_coordinate.Check($"{field}.y_m", position.YM, reader.Violations);
        s_coordinate.Check($"{field}.z_m", position.ZM, reader.Violations);
        return new Vector3D(position.XM, position.YM, position.ZM);
    }

    public static Position ToContract(Vector3D point) => new() { XM = point.X, YM = point.Y, ZM = point.Z };

    public static Direction ToDirection(Vector3D unit) => new() { AzimuthDeg = Angles.RadToDeg(unit.AzimuthRad), ElevationDeg = Angles.RadToDeg(unit.ElevationRad) };

    public static Estimate ToContract(Placement.Estimate estimate) => new() { Value = estimate.Value, PlusMinus = estimate.PlusMinus };

    public static V1.Advisory ToContract(Quantities.Advisory advisory) => new()
    {
        Code = advisory.Code,
        Message = advisory.Message,
        Severity = advisory.Severity.ToContract<V1.AdvisorySeverity>(),
    };
}
