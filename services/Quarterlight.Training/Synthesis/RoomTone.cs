using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Synthesis;

/// <summary>The tone of a quiet room or parked car, made: faint noise of air, distant rumble, hum and electronics.</summary>
/// <remarks>Level -80 to -46 dBFS and shape are judgement.</remarks>
public static class RoomTone
{
    /// <summary>Makes one.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="seconds">Length, s.</param>
    /// <returns>Samples at 16 kHz.</returns>
    public static float[] Make(int seed, double seconds)
    {
        var source = new NoiseSource(seed);
        double tilt = source.Between(0, 1), hum = source.Chance(0.4) ? source.LogBetween(0.01, 0.5) : 0, mains = source.Chance(0.5) ? 50 : 60;
        double rumble = source.Chance(0.6) ? source.LogBetween(0.3, 8) : 0, slowDb = source.LogBetween(0.1, 1.5);
        Biquad low = Biquad.HighPass(source.LogBetween(15, 100)), bell = Biquad.Bell(source.LogBetween(60, 1000), 1, source.Between(-4, 8));
        Biquad deep = Biquad.LowPass(source.LogBetween(40, 200), 0.6);
        var sound = new double[(int)(seconds * 16000)];
        double[] wander = source.Wander((sound.Length / 160) + 2, 0.01, 1);
        for (int i = 0; i < sound.Length; i++)
        {
            double pink = source.Pink(), beat = Math.Sin(2 * Math.PI * mains * i / 16000) + (0.4 * Math.Sin(6 * Math.PI * mains * i / 16000));
            double x = bell.Next(low.Next((tilt * pink) + ((1 - tilt) * source.Normal()) + (rumble * deep.Next(pink)) + (hum * beat)));
            sound[i] = x * Math.Pow(10, slowDb * wander[i / 160] / 20);
        }

        Rooms.Perhaps(source, sound, 0.5);
        return NoiseSource.AtLevel(sound, source.Between(-80, -46));
    }
}
