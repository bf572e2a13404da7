namespace Quarterlight.Crew;

/// <summary>Resource names of the contract, such as scenes/{scene}.</summary>
internal static class ResourceName
{
    /// <summary>The id at the end of a resource name; a bare id is itself.</summary>
    public static string IdOf(string name) => name[(name.LastIndexOf('/') + 1)..];
}
