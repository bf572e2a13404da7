namespace Quarterlight.Fuzz;

/// <summary>The target broke a promise without throwing.</summary>
/// <param name="promise">The promise; says the same for every input that breaks it.</param>
/// <param name="details">What happened this time.</param>
internal sealed class FindingException(string promise, string details) : Exception($"{promise}: {details}")
{
    /// <summary>The promise that was broken.</summary>
    public string Promise { get; } = promise;
}
