using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads how strong a transmitter is.</summary>
public static partial class PowerReader
{
    /// <summary>The strength said, or null.</summary>
    /// <param name="text">The question as typed, for the sign of a level.</param>
    /// <param name="tokens">Its words.</param>
    public static PowerSaid? Read(string text, IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tokens);
        TransmitPowerBasis? basis = tokens.Any(t => t.Is("eirp")) ? TransmitPowerBasis.Eirp : tokens.Any(t => t.Is("erp")) ? TransmitPowerBasis.Erp
            : tokens.Any(t => t.Word is "conducted" or "output") ? TransmitPowerBasis.Conducted : null;
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            double? said = tokens[i].Number ?? Part(tokens, i);
            if (said is not { } number)
            {
                continue;
            }

            switch (tokens[i + 1].Word)
            {
                case "mw" or "milliwatt" or "milliwatts":
                    return new PowerSaid(number, basis);
                case "w" or "watt" or "watts":
                    return new PowerSaid(number * 1000, basis);
                case "nw" or "nanowatt" or "nanowatts":
                    return new PowerSaid(number * 1e-6, basis);
                case "uw" or "µw" or "μw" or "microwatt" or "microwatts":
                    return new PowerSaid(number * 1e-3, basis);
                case "uv" or "µv" or "μv" or "microvolts" or "microvolt":
                    return new PowerSaid(number, TransmitPowerBasis.Field, FieldDistance(tokens, i + 2));
            }
        }

        // dBm to mW by the definition of the decibel.
        Match level = Dbm().Match(text);
        return level.Success ? new PowerSaid(Math.Pow(10, (level.Groups[1].Success ? -1 : 1) * double.Parse(level.Groups[2].Value, CultureInfo.InvariantCulture) / 10), basis) : null;
    }

    // "Half a watt", "a quarter watt", "a watt": the word before the unit.
    private static double? Part(IReadOnlyList<Token> tokens, int i)
    {
        bool article = tokens[i].Word is "a" or "one";
        string part = article && i > 0 ? tokens[i - 1].Word : tokens[i].Word;
        bool watts = tokens[i + 1].Word is "watt" or "watts" or "milliwatt";
        return !watts ? null : part switch { "half" => 0.5, "quarter" => 0.25, _ => article ? 1 : null };
    }

    // "250 uV/m at 3 m"; limits are stated at 3 m as a rule.
    private static double FieldDistance(IReadOnlyList<Token> tokens, int from)
    {
        for (int i = from; i + 1 < tokens.Count; i++)
        {
            if (tokens[i].Number is { } metres && tokens[i + 1].Word is "m" or "metres" or "meters")
            {
                return metres;
            }
        }

        return 3;
    }

    [GeneratedRegex(@"(?<![\w.])([-−–]|minus )?\s?(\d{1,3}(?:\.\d{1,3})?) ?dBm(?!\w)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Dbm();
}
