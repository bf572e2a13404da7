namespace Quarterlight.Training.Synthesis;

/// <summary>What a room, duct or cabin does to a made sound: reflections that die away, so that its spectrum ripples as a recorded one does.</summary>
/// <remarks>Reverberation of 0.05 s (cabin) to 0.6 s (room) and the strength of the reflections are judgement.</remarks>
internal static class Rooms
{
    private const int Rate = 16000;
    private const int Reflections = 90;

    /// <summary>Adds a room with a probability, in place.</summary>
    public static void Perhaps(NoiseSource source, double[] sound, double probability)
    {
        if (!source.Chance(probability))
        {
            return;
        }

        double seconds = source.LogBetween(0.05, 0.6), share = source.LogBetween(0.2, 2);
        var places = new int[Reflections];
        var sizes = new double[Reflections];
        double power = 0;
        for (int r = 0; r < Reflections; r++)
        {
            // -60 dB after the reverberation time; early ones lie closer together than late ones.
            double t = seconds * Math.Pow(source.Random.NextDouble(), 1.5);
            (places[r], sizes[r]) = (1 + (int)(t * Rate), Math.Pow(10, -3 * t / seconds) * source.Normal());
            power += sizes[r] * sizes[r];
        }

        double[] dry = [.. sound];
        double scale = share / Math.Sqrt(power);
        for (int r = 0; r < Reflections; r++)
        {
            double gain = sizes[r] * scale;
            for (int i = places[r]; i < sound.Length; i++)
            {
                sound[i] += gain * dry[i - places[r]];
            }
        }
    }
}
