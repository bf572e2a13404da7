using System.Globalization;

namespace Quarterlight.Quantities;

/// <summary>
/// The one statement of a limit: the check, the message and the boundary tests all use it. Both ends are inclusive and
/// NaN is never inside.
/// </summary>
/// <param name="Min">Smallest allowed value.</param>
/// <param name="Max">Largest allowed value.</param>
/// <param name="Unit">Unit for messages, such as "m" or "km/h"; empty for a pure number.</param>
public sealed record ValidRange(double Min, double Max, string Unit)
{
    /// <summary>True when the value is a number inside the range.</summary>
    public bool Contains(double value) => value >= Min && value <= Max;

    /// <summary>Adds a violation when the value is outside the range or not a number.</summary>
    public bool Check(string field, double value, ICollection<Violation> violations)
    {
        ArgumentNullException.ThrowIfNull(violations);
        if (Contains(value))
        {
            return true;
        }

        string unit = Unit.Length == 0 ? "" : " " + Unit;
        string shown = double.IsNaN(value) ? "not a number" : value.ToString("0.###", CultureInfo.InvariantCulture) + unit;
        violations.Add(new Violation(
            field,
            $"the value is {shown}",
            string.Create(CultureInfo.InvariantCulture, $"It must be between {Min:0.######} and {Max:0.######}{unit}")));
        return false;
    }
}
