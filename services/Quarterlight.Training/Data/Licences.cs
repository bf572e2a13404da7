namespace Quarterlight.Training.Data;

/// <summary>What a licence, as the manifest words it, allows.</summary>
public static class Licences
{
    private static readonly string[] s_unconfirmed = ["from memory", "unconfirmed", "version not named"];

    /// <summary>False when the manifest says that the licence is not confirmed: such a clip may test but not train.</summary>
    public static bool IsConfirmed(string licence)
    {
        ArgumentNullException.ThrowIfNull(licence);
        return !Array.Exists(s_unconfirmed, w => licence.Contains(w, StringComparison.OrdinalIgnoreCase));
    }
}
