using Quarterlight.Radio.Law;
using Quarterlight.Radio.Link;
using Quarterlight.Radio.Propagation;

namespace Quarterlight.Drawing.Tests;

/// <summary>Invented link reports: levels fall by a fixed number of decibels a decade, so that every figure is known in advance.</summary>
internal static class LinkReports
{
    public static LinkReport Fm => Analogue(60);

    public static LinkReport FmBeyondTheModel => Analogue(2500) with { AvailabilityFraction = 0, Headline = "At 2500 m nothing can be promised: the path model ends at 800 m" };

    public static LinkReport FmWithoutLawfulLevel => Fm with
    {
        LawfulLevelDbm = null,
        LawfulRange = null,
        Law = Law(LawStatus.NeedsLicence, null),
    };

    public static LinkReport FmHoldsNowhere => Fm with
    {
        Headline = "The link does not hold at any distance: another station is on 98.1 MHz; choose a quieter channel",
        Ranges = [.. Fm.Ranges.Select(r => r with { RangeM = 0 })],
        AskedRange = new(0.95, 0, false),
        LawfulRange = new(0.95, 0, false),
        NoiseDbm = -64,
        NeededLevelDbm = -52,
        MarginDb = -31,
        AvailabilityFraction = 0.0001,
        SnrDb = 3,
    };

    public static LinkReport Digital => Report(
        "2.4 GHz digital holds at 90 m for 99 % of the time and places; the lawful level is kept",
        90,
        distance => -37 - (30 * Math.Log10(distance / 5)),
        null,
        needed: -86,
        noise: -98,
        lawfulShift: 4,
        [new(0.5, 640, false), new(0.9, 330, false), new(0.95, 250, false), new(0.99, 120, false)],
        new(0.99, 120, false),
        new(0.99, 160, false),
        1500);

    public static LinkReport WithoutCurve => Digital with { Curve = [] };

    public static LinkReport HoldsToTheEnd => Digital with { Ranges = [new(0.5, 1500, true), new(0.9, 1500, true), new(0.95, 1500, true), new(0.99, 1500, true)], AskedRange = new(0.999, 1500, true) };

    public static LinkReport LongWinded => Fm with { Headline = string.Join(' ', Enumerable.Repeat("keep within three car lengths at the lights and closer in the narrow streets behind the market", 20)) };

    public static IReadOnlyList<LinkReport> All => [Fm, FmBeyondTheModel, FmWithoutLawfulLevel, FmHoldsNowhere, Digital, WithoutCurve, HoldsToTheEnd, LongWinded];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, 8)];

    // 98.1 MHz: -40 dBm at 5 m, 40 dB less a decade; -92 dBm needed, noise -104 dBm, the lawful level 70 dB lower.
    private static LinkReport Analogue(double gapM) => Report(
        "Fall back to 45 m at most: at 60 m the sound drops out too often, and the transmitter is 70 dB over what is allowed without a licence",
        gapM,
        distance => -40 - (40 * Math.Log10(distance / 5)),
        level => Math.Min(62, level + 132),
        needed: -92,
        noise: -104,
        lawfulShift: -70,
        [new(0.5, 100, false), new(0.9, 70, false), new(0.95, 60, false), new(0.99, 45, false)],
        new(0.95, 60, false),
        new(0.95, 1.1, false),
        800);

    private static LinkReport Report(string headline, double gapM, Func<double, double> levelAt, Func<double, double>? snrOf, double needed, double noise, double lawfulShift, LinkRange[] ranges, LinkRange asked, LinkRange lawful, double farthestM)
    {
        double level = levelAt(gapM);
        LinkPoint[] curve =
        [
            .. Enumerable.Range(0, 61).Select(i => 2 * Math.Pow(farthestM / 2, i / 60.0))
                .Select(d => new LinkPoint(d, levelAt(d), snrOf?.Invoke(levelAt(d)), Math.Clamp((levelAt(d) - needed) / 20, 0, 1))),
        ];
        return new()
        {
            Headline = headline,
            Ranges = ranges,
            AskedRange = asked,
            GapM = gapM,
            EirpDbm = 10,
            PathLossDb = 10 - level,
            FieldDbuvPerM = level + 117,
            LevelDbm = level,
            LevelUncertaintyDb = 8,
            NoiseDbm = noise,
            SnrDb = snrOf?.Invoke(level),
            NeededLevelDbm = needed,
            NeededFieldDbuvPerM = needed + 117,
            MarginDb = level - needed,
            FadeMarginDb = 12,
            AvailabilityFraction = 0.952,
            DropOutsPerMinute = 4,
            MeanDropOutMs = 60,
            DelayMs = null,
            Law = Law(lawfulShift < 0 ? LawStatus.OverExemptLimit : LawStatus.WithinExemptLimit, 10 + lawfulShift),
            LawfulRange = lawful,
            LawfulLevelDbm = level + lawfulShift,
            Path = new(PropagationModel.TwoRay, "The road is open.", 2, farthestM, []),
            Changes = [],
            Blocking = "Keep within three car lengths at lights.",
            Curve = curve,
            Advisories = [],
        };
    }

    private static LawVerdict Law(LawStatus status, double? lawfulDbm) => new()
    {
        Status = status,
        Words = "An invented verdict.",
        Country = null,
        LawfulEirpDbm = lawfulDbm,
        ExcessDb = 10 - lawfulDbm,
        CountryKnown = true,
        GoverningRule = null,
        LicensedAlternatives = [],
        ForbiddenBy = [],
        Authority = "The national authority",
        Advisories = [],
    };
}
