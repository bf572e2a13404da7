namespace Quarterlight.Architecture.Tests.Rules;

/// <summary>What a rule found.</summary>
internal static class Offences
{
    /// <summary>Fails with every offence in full.</summary>
    public static void None(IEnumerable<string> offences)
    {
        string[] found = [.. offences];
        Assert.True(found.Length == 0, string.Join(Environment.NewLine, found));
    }
}
