using System.Text.RegularExpressions;
using Quarterlight.Planner.Errors;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Mapping;

/// <summary>Reads a request field by field and remembers what is wrong, so that a caller hears everything at once.</summary>
internal sealed partial class FieldReader
{
    private static readonly ValidRange s_nameLength = new(1, 80, "characters");

    private readonly List<Violation> _violations = [];

    /// <summary>What is wrong so far.</summary>
    public List<Violation> Violations => _violations;

    /// <summary>Refuses the request when anything is wrong.</summary>
    public void ThrowIfAny()
    {
        if (_violations.Count > 0)
        {
            throw Refusals.Invalid(_violations);
        }
    }

    /// <summary>Notes a violation.</summary>
    public void Add(string field, string problem, string remedy) => _violations.Add(new Violation(field, problem, remedy));

    /// <summary>An id: 1 to 63 of a-z, 0-9 and dashes, starting with a letter.</summary>
    public void Id(string field, string value)
    {
        if (!IsId(value))
        {
            Add(field, value.Length == 0 ? "the id is missing" : "this is not an id", "An id is 1 to 63 of a-z, 0-9 and dashes, starting with a letter");
        }
    }

    /// <summary>True for 1 to 63 of a-z, 0-9 and dashes, starting with a letter.</summary>
    public static bool IsId(string value) => IdPattern().IsMatch(value);

    /// <summary>A name for people: 1 to 80 characters, none of them control characters.</summary>
    public void DisplayName(string field, string value)
    {
        if (!s_nameLength.Contains(value.Length) || value.Any(char.IsControl))
        {
            Add(field, value.Length == 0 ? "the name is missing" : "this name is too long or has control characters", "A name has 1 to 80 characters");
        }
    }

    /// <summary>Words that are printed as they are: no control characters.</summary>
    public void NoControls(string field, string value)
    {
        if (value.Any(char.IsControl))
        {
            Add(field, "there are control characters in it", "Use letters, digits, spaces and signs");
        }
    }

    /// <summary>
    /// An enum of the domain from the contract's: the contract counts from 1 and has 0 for "not stated". Falls back when not
    /// stated, or notes a violation when there is no fallback or the value is unknown.
    /// </summary>
    public TDomain Enum<TDomain>(string field, System.Enum value, TDomain? fallback = null)
        where TDomain : struct, System.Enum
    {
        int number = Convert.ToInt32(value, System.Globalization.CultureInfo.InvariantCulture);
        if (number == 0 && fallback is { } f)
        {
            return f;
        }

        var domain = (TDomain)System.Enum.ToObject(typeof(TDomain), number - 1);
        if (!System.Enum.IsDefined(domain))
        {
            string choices = string.Join(", ", System.Enum.GetNames(value.GetType()).Where(n => n != "Unspecified"));
            Add(field, number == 0 ? "nothing is chosen" : $"{number} is not one of the choices", $"Choose one of: {choices}");
            return default;
        }

        return domain;
    }

    /// <summary>The same where "not stated" is an answer of its own: null.</summary>
    public TDomain? EnumIfStated<TDomain>(string field, System.Enum value)
        where TDomain : struct, System.Enum =>
        Convert.ToInt32(value, System.Globalization.CultureInfo.InvariantCulture) == 0 ? null : Enum<TDomain>(field, value);

    /// <summary>Takes over what a room found wrong, leaving out fields of which something has been said: what could not even be read is said once.</summary>
    public void AddUnsaid(IEnumerable<Violation> violations)
    {
        HashSet<string> said = [.. _violations.Select(v => v.Field)];
        _violations.AddRange(violations.Where(v => !said.Contains(v.Field)));
    }

    [GeneratedRegex(@"^[a-z][a-z0-9-]{0,62}\z")]
    private static partial Regex IdPattern();
}

/// <summary>The way back: enums of the contract from the domain's.</summary>
internal static class ContractEnums
{
    /// <summary>The contract's value of a domain enum.</summary>
    public static TContract ToContract<TContract>(this System.Enum value)
        where TContract : struct, System.Enum =>
        (TContract)System.Enum.ToObject(typeof(TContract), Convert.ToInt32(value, System.Globalization.CultureInfo.InvariantCulture) + 1);
}
