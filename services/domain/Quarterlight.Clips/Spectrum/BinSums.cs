namespace Quarterlight.Clips.Spectrum;

/// <summary>Power between two frequencies from the bins of a spectrum: a bin reaches half a bin to each side and counts by the part inside.</summary>
internal static class BinSums
{
    public static double Between(ReadOnlySpan<double> power, double binHz, double lowerHz, double upperHz)
    {
        double low = (lowerHz / binHz) + 0.5;
        double high = Math.Min((upperHz / binHz) + 0.5, power.Length);
        if (high <= low)
        {
            return 0;
        }

        int first = (int)low;
        int last = Math.Min((int)high, power.Length - 1);
        if (first == last)
        {
            return power[first] * (high - low);
        }

        double sum = power[first] * (first + 1 - low);
        for (int k = first + 1; k < last; k++)
        {
            sum += power[k];
        }

        return sum + (power[last] * (high - last));
    }
}
