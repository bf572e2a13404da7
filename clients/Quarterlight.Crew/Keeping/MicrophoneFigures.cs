using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Figures written behind a microphone's name; what is not written is null.</summary>
internal sealed partial record MicrophoneFigures
{
    public PolarPattern? Pattern { get; private set; }

    private LengthSaid? tube, length, diameter;
    private double? sensitivity, selfNoise, maxLevel;
    private IReadOnlyList<Fixing>? fixings;

    /// <summary>True when nothing has to be taken as usual.</summary>
    public bool Complete => length is not null && diameter is not null && sensitivity is not null && selfNoise is not null && maxLevel is not null && fixings is not null;

    /// <summary>Reads what stands behind the colon.</summary>
    public static MicrophoneFigures Read(EntryReading reading, string field, string text)
    {
        var figures = new MicrophoneFigures();
        foreach (string piece in FormText.Pieces(text))
        {
            if (!figures.Take(piece))
            {
                reading.Problem(field, $"\"{piece}\" is not understood.", "Figures are written as 9 mV/Pa, self-noise 26 dB, up to 132 dB, 12 mm long, 5 mm thick, tube 10 cm, held by clip and tape.");
            }
        }

        return figures;
    }

    /// <summary>Puts what was written into a microphone; a length that would be shown as the kept one keeps its fractions.</summary>
    public void ApplyTo(Microphone microphone, Microphone? kept)
    {
        microphone.Pattern = Pattern ?? microphone.Pattern;
        microphone.SensitivityMvPerPa = sensitivity ?? microphone.SensitivityMvPerPa;
        microphone.SelfNoiseDba = selfNoise ?? microphone.SelfNoiseDba;
        microphone.MaxLevelDb = maxLevel ?? microphone.MaxLevelDb;
        microphone.BodyLengthM = Or(length, microphone.BodyLengthM, kept?.BodyLengthM);
        microphone.BodyDiameterM = Or(diameter, microphone.BodyDiameterM, kept?.BodyDiameterM);
        if (microphone.Pattern != PolarPattern.InterferenceTube)
        {
            microphone.ClearTubeLengthM();
        }
        else if (tube is { } long_)
        {
            microphone.TubeLengthM = Or(long_, 0, kept?.HasTubeLengthM == true ? kept.TubeLengthM : null);
        }

        if (fixings is not null)
        {
            microphone.Fixings.Clear();
            microphone.Fixings.Add(fixings);
        }
    }

    private static double Or(LengthSaid? said, double otherwise, double? kept) => said is not { } s ? otherwise
        : kept is { } before && MicrophoneLines.Small(before, s.Units) == MicrophoneLines.Small(s.Metres, s.Units) ? before : s.Metres;

    private bool Take(string piece)
    {
        if (Sensitivity().Match(piece) is { Success: true } mv)
        {
            sensitivity = Number(mv);
        }
        else if (SelfNoise().Match(piece) is { Success: true } noise)
        {
            selfNoise = Number(noise);
        }
        else if (Highest().Match(piece) is { Success: true } highest)
        {
            maxLevel = Number(highest);
        }
        else if (LongOrThick().Match(piece) is { Success: true } size && LengthWords.Read(size.Groups[1].Value.Trim()) is { } metres)
        {
            _ = size.Groups[2].Value.StartsWith("long", StringComparison.OrdinalIgnoreCase) ? length = metres : diameter = metres;
        }
        else if (Tube().Match(piece) is { Success: true } tubed && LengthWords.Read(tubed.Groups[1].Value.Trim()) is { } tubeLength)
        {
            tube = tubeLength;
        }
        else if (HeldBy().Match(piece) is { Success: true } held && held.Groups[1].Value.Split(" and ").Select(FixingWords.One).ToArray() is var all && all.All(f => f is not null))
        {
            fixings = [.. all.Select(f => f!.Value).Distinct()];
        }
        else if (MicrophoneKinds.PatternIn(piece) is { } pattern && piece.Split(' ').Length <= 3)
        {
            Pattern = pattern;
        }
        else
        {
            return false;
        }

        return true;
    }

    private static double Number(Match match) => double.Parse(match.Groups[1].Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?:sensitivity\s+)?(\d{1,6}(?:[.,]\d{1,6})?)\s*mV(?:\s*/\s*Pa)?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Sensitivity();

    [GeneratedRegex(@"^(?:self[- ])?noise\s+(\d{1,4}(?:[.,]\d{1,4})?)\s*dB(?:\s*\(?A\)?)?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex SelfNoise();

    [GeneratedRegex(@"^(?:up to|highest level|max(?:imum)?(?: level)?)\s+(\d{1,4}(?:[.,]\d{1,4})?)\s*dB(?:\s*SPL)?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Highest();

    [GeneratedRegex(@"^(\d.*?)\s*(long|thick|across|wide|diameter)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex LongOrThick();

    [GeneratedRegex(@"^tube\s+(.*)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Tube();

    [GeneratedRegex(@"^(?:held by|fixed by|on)\s+(.*)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex HeldBy();
}
