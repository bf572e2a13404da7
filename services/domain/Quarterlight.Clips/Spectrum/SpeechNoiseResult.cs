namespace Quarterlight.Clips.Spectrum;

/// <summary>Turns gathered powers into the report: the noise at the time of the speech is taken off the active frames.</summary>
/// <remarks>
/// Uncertainty: 0.5 dB for the floor (judgement; the tests keep within 1 dB), the same carried through the subtraction, 4.34 dB / √(3 active
/// seconds) for the syllables heard, and up to 0.8 dB below 6 dB, where weak syllables drown (judgement).
/// </remarks>
internal static class SpeechNoiseResult
{
    private const double FloorDb = 0.5;

    public static SpeechNoiseReport Of(NoiseFloor floor, ReadOnlySpan<double> sums, long active, double hopSeconds, double halfRateHz, double noise, double offsetDb)
    {
        double seconds = active * hopSeconds;
        double share = active / (double)Math.Max(1, floor.Count);
        var noiseOctaves = new List<BandLevel>(ThirdOctaves.OctaveCount);
        var speechOctaves = new List<BandLevel>(ThirdOctaves.OctaveCount);
        double thenOverNow = floor.NoiseMinimum(NoiseFloor.AWeightedBand) > 0 && active > 0
            ? sums[NoiseFloor.Bands] / active / floor.NoiseMinimum(NoiseFloor.AWeightedBand)
            : 1;
        double noiseThen = noise * thenOverNow;
        double speech = active > 0 ? (sums[NoiseFloor.AWeightedBand] / active) - noiseThen : 0;
        bool heard = seconds >= SpeechToNoise.LeastActiveSeconds && speech > 0.1 * noiseThen;
        for (int b = 0; b < ThirdOctaves.OctaveCount && ThirdOctaves.CentreHz((3 * b) + 2) < halfRateHz; b++)
        {
            bool whole = ThirdOctaves.OctaveLowerHz(b + 1) <= halfRateHz;
            noiseOctaves.Add(new(ThirdOctaves.OctaveNominalHz(b), FullScale.Level(floor.Noise(b)) + offsetDb, whole));
            double inBand = heard ? (sums[b] / active) - (floor.Noise(b) * thenOverNow) : 0;
            if (inBand > 0.1 * floor.Noise(b))
            {
                speechOctaves.Add(new(ThirdOctaves.OctaveNominalHz(b), FullScale.Level(inBand) + offsetDb, whole));
            }
        }

        double noiseDb = FullScale.Level(noise) + offsetDb;
        if (!heard)
        {
            return new(noiseDb, FloorDb, noiseOctaves, null, [], null, null, 0, 0);
        }

        double speechDb = FullScale.Level(speech);
        double ratio = speechDb - FullScale.Level(noiseThen);
        double subtracted = FloorDb * noiseThen / speech;
        double syllables = 10 / Math.Log(10) / Math.Sqrt(3 * seconds);
        double drowned = 0.8 * Ramp.Up(6 - ratio, 0, 6);
        double uncertainty = Math.Sqrt((FloorDb * FloorDb) + (subtracted * subtracted) + (syllables * syllables) + (drowned * drowned));
        return new(noiseDb, FloorDb, noiseOctaves, speechDb + offsetDb, speechOctaves, ratio, uncertainty, seconds, share);
    }
}
