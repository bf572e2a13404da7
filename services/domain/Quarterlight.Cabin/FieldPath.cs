namespace Quarterlight.Cabin;

/// <summary>Joins field names the way the contract writes them.</summary>
internal static class FieldPath
{
    public static string Join(string prefix, string name) => prefix.Length == 0 ? name : prefix + "." + name;
}
