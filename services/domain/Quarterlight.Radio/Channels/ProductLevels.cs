using Quarterlight.Quantities;

namespace Quarterlight.Radio.Channels;

/// <summary>What a transmitter puts out, as far as intermodulation asks.</summary>
/// <param name="PowerDbm">Conducted power in dBm, within <see cref="Power"/>.</param>
/// <param name="Oip3Dbm">Output third-order intercept point in dBm, within <see cref="Oip3"/>.</param>
public sealed record OutputStage(double PowerDbm, double Oip3Dbm)
{
    /// <summary>Conducted power, in dBm; a judgement: 1 uW to 100 W.</summary>
    public static ValidRange Power { get; } = new(-30, 50, "dBm");

    /// <summary>Output third-order intercept point, in dBm; a judgement.</summary>
    public static ValidRange Oip3 { get; } = new(-20, 80, "dBm");
}

/// <summary>A product's level where it is made.</summary>
/// <param name="MadeIn">Index of the transmitter whose output stage makes it.</param>
/// <param name="LevelDbm">Level at that transmitter's output in dBm: conducted, before its antenna.</param>
public readonly record struct ProductLevel(int MadeIn, double LevelDbm);

/// <summary>Levels of third-order products from what the transmitters put out and what couples between them, by the cubic law of
/// <see cref="IntermodLevels"/>.</summary>
public static class ProductLevels
{
    /// <summary>
    /// The levels a product has in the output stage of each of its members, strongest first. Empty for fifth order: its levels need a
    /// fifth-order intercept point.
    /// </summary>
    /// <param name="product">The product.</param>
    /// <param name="stages">Output stages, in the order of the carriers the product was made from.</param>
    /// <param name="couplingLossDb">Loss in dB from one transmitter (first index) into another's output (second index); see
    /// <see cref="IntermodLevels.CouplingLossDb"/>.</param>
    public static IReadOnlyList<ProductLevel> Of(IntermodProduct product, IReadOnlyList<OutputStage> stages, Func<int, int, double> couplingLossDb)
    {
        ArgumentNullException.ThrowIfNull(stages);
        ArgumentNullException.ThrowIfNull(couplingLossDb);
        if (product.Order != 3)
        {
            return [];
        }

        int[] members = product.SignalCount == 2 ? [product.A, product.B] : [product.A, product.B, product.C];
        double Arriving(int from, int at) => stages[from].PowerDbm - (from == at ? 0 : couplingLossDb(from, at));
        double LevelIn(int at) => product.SignalCount == 2
            ? IntermodLevels.TwoSignalDbm(Arriving(product.A, at), Arriving(product.B, at), stages[at].Oip3Dbm)
            : IntermodLevels.ThreeSignalDbm(Arriving(product.A, at), Arriving(product.B, at), Arriving(product.C, at), stages[at].Oip3Dbm);
        return [.. members.Select(m => new ProductLevel(m, LevelIn(m))).OrderByDescending(l => l.LevelDbm).ThenBy(l => l.MadeIn)];
    }
}
