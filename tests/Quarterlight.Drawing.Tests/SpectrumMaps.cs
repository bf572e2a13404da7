namespace Quarterlight.Drawing.Tests;

/// <summary>Invented sets of transmitters with the products worked out by going through all of them.</summary>
internal static class SpectrumMaps
{
    private const double GuardMHz = 0.1;
    private const double NarrowGuardMHz = 0.01;

    /// <summary>Eight own carriers that miss each other's products, two neighbours and a block.</summary>
    public static SpectrumMap Eight => Of(
        "Eight transmitters fit between 518 and 534 MHz, free of third-order products with a guard of 100 kHz",
        470,
        608,
        [518.2, 518.7, 519.9, 521.8, 525.3, 528.0, 532.7, 533.6],
        [523.4, 541],
        fifths: false) with
    {
        Excluded = [new(526, 527.5, "a television channel"), new(560, 568, "another television channel")],
    };

    /// <summary>Six evenly spaced carriers: nearly every product falls on one.</summary>
    public static SpectrumMap EvenlySpaced => Of("Evenly spaced carriers hit each other: move all but two", 863, 865, [863.2, 863.5, 863.8, 864.1, 864.4, 864.7], [], fifths: true);

    public static SpectrumMap One => Of("One transmitter on 98.1 MHz has nobody to disturb", 87.5, 108, [98.1], [], fifths: true);

    /// <summary>Forty carriers in two clusters of a range 500 MHz wide.</summary>
    public static SpectrumMap Forty => Of(
        "Forty transmitters in two clusters: the list names those that a two-signal product hits",
        470,
        970,
        [.. Enumerable.Range(0, 40).Select(i => Math.Round((i < 25 ? 606 : 640) + (0.35 * i) + (0.025 * (i * i % 11)), 3))],
        [],
        fifths: false,
        threeSignals: false) with
    {
        Excluded = [new(620, 628, "a television channel"), new(655.2, 655.4, "the stage next door"), new(700, 790, "mobile telephones")],
    };

    public static SpectrumMap Nothing => new() { Headline = "Nothing was asked for", LowMHz = 470, HighMHz = 608, GuardKHz = 100, Channels = [] };

    public static SpectrumMap OnlyNeighbours => Of("Two neighbours and nobody else", 470, 608, [], [500, 501], fifths: false);

    public static SpectrumMap LongNames => Eight with
    {
        Channels = [.. Eight.Channels.Select((c, i) => c with { Label = $"Transmitter of the second grandmother in the back row, spare {i}" })],
        Excluded = [.. Enumerable.Range(0, 30).Select(i => new ExcludedBlock(510 + i, 510.3 + i, $"reason number {i} with a good many words to it, more than anybody would read"))],
    };

    public static SpectrumMap SameFrequency => Of("Two transmitters on one frequency", 470, 608, [500, 500], [500], fifths: false);

    public static IReadOnlyList<SpectrumMap> All => [Eight, EvenlySpaced, One, Forty, Nothing, OnlyNeighbours, LongNames, SameFrequency];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, 8)];

    private static SpectrumMap Of(string headline, double lowMHz, double highMHz, double[] own, double[] neighbours, bool fifths, bool threeSignals = true)
    {
        List<(double MHz, int Order)> products = [];
        for (int a = 0; a < own.Length; a++)
        {
            for (int b = 0; b < own.Length; b++)
            {
                if (a == b)
                {
                    continue;
                }

                products.Add(((2 * own[a]) - own[b], 3));
                if (fifths)
                {
                    products.Add(((3 * own[a]) - (2 * own[b]), 5));
                }

                for (int c = b + 1; c < own.Length; c++)
                {
                    if (c != a && threeSignals)
                    {
                        products.Add((own[b] + own[c] - own[a], 3));
                    }
                }
            }
        }

        double guardMHz = threeSignals ? GuardMHz : NarrowGuardMHz;
        double[] all = [.. own, .. neighbours];
        bool Near(double f, double mHz) => Math.Abs(f - mHz) < guardMHz - 1e-9;
        return new()
        {
            Headline = headline,
            LowMHz = lowMHz,
            HighMHz = highMHz,
            GuardKHz = 1000 * guardMHz,
            Channels =
            [
                .. own.Select((f, i) => new SpectrumChannel($"TX {i + 1}", f, !products.Any(p => Near(f, p.MHz)), false)),
                .. neighbours.Select((f, i) => new SpectrumChannel($"Unit {(char)('B' + i)}", f, !products.Any(p => Near(f, p.MHz)), true)),
            ],
            Products = [.. products.Where(p => p.MHz > 0).Select((p, i) => new SpectrumProduct(p.MHz, p.Order, p.Order == 3 ? -80 - (i % 3 * 6) : -100, all.Any(f => Near(f, p.MHz))))],
        };
    }
}
