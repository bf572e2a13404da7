namespace Quarterlight.Wire.Tests;

/// <summary>A field with a range, as the contract states it, and how to set it.</summary>
/// <typeparam name="T">What the field is in.</typeparam>
/// <param name="Field">Its path in a refusal.</param>
/// <param name="Min">Least value.</param>
/// <param name="Max">Greatest value.</param>
/// <param name="Set">Sets it.</param>
/// <param name="Whole">True for a whole number.</param>
public sealed record Ranged<T>(string Field, double Min, double Max, Action<T, double> Set, bool Whole = false)
{
    /// <summary>Spoilt ways by name: just outside at either end, and what is no number.</summary>
    public IEnumerable<KeyValuePair<string, (Action<T> Spoil, string Field)>> Outside()
    {
        double step = Whole ? 1 : 0.001;
        double[] values = Whole ? [Min - step, Max + step] : [Min - step, Max + step, double.NaN, double.PositiveInfinity, double.NegativeInfinity];
        return values.Select(v => KeyValuePair.Create($"{Field} = {v}", ((Action<T>)(t => Set(t, v)), Field)));
    }

    /// <summary>Good ways by name: the ends themselves.</summary>
    public IEnumerable<KeyValuePair<string, Action<T>>> Ends() =>
        new[] { Min, Max }.Select(v => KeyValuePair.Create($"{Field} = {v}", (Action<T>)(t => Set(t, v))));
}
