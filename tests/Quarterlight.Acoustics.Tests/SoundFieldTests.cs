using CsCheck;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class SoundFieldTests
{
    private static readonly Box3D s_box = new(Vector3D.Zero, new Vector3D(2.4, 1.45, 1.15));
    private static readonly Vector3D s_source = new(0.9, 0.4, 0.75);
    private static readonly Vector3D s_microphone = new(0.55, 0.72, 1.10);

    // Kuttruff, Room Acoustics, eq. 9.23: 1 + (2/3)(2N^3 + 3N^2 + 4N) images up to order N, the source included.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 7)]
    [InlineData(2, 25)]
    [InlineData(3, 63)]
    [InlineData(8, 833)]
    public void Count_ByOrder_MatchesTheClosedForm(int order, int images) => Assert.Equal(images, new ImageLattice(Room(0.3), order).Count);

    // tests/vectors/soundfield/ism_cabin.source.md: distances and gains of all 25 paths up to order 2, by an independent library.
    [Fact]
    public void Trace_EveryPathOfTheIndependentLibrary_AgreesInDistanceAndEnergy()
    {
        Arrival[] arrivals = [.. Omni(Room(0.3), 2).OrderBy(a => a.DistanceM)];
        Dictionary<string, string>[] rows = [.. Vectors.Read("ism_cabin").Where(r => r["quantity"].StartsWith("image ", StringComparison.Ordinal))];
        Assert.Equal(25, rows.Length);
        for (int i = 0; i < rows.Length; i++)
        {
            double gain = double.Parse(rows[i]["detail"].Split("gain/d ")[1].Split(',')[0], System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal(Vectors.Number(rows[i]["value"]), arrivals[i].DistanceM, 1e-5);
            Assert.Equal(20 * Math.Log10(gain), 10 * Math.Log10(arrivals[i].Energy[3]), 0.001);
        }
    }

    // Same source: sums of energy up to orders 1, 2, 3.
    [Theory]
    [InlineData(1, 5.7421)]
    [InlineData(2, 7.3876)]
    [InlineData(3, 8.51735)]
    public void Trace_EnergySum_AgreesWithTheIndependentLibrary(int order, double sum) =>
        Assert.Equal(sum, Omni(Room(0.3), order).Sum(a => a.Energy[3]), 0.0001);

    // Same source: direct-to-reverberant ratio with 295,361 images is -4.573 dB; ours has 63 and the diffuse tail.
    [Fact]
    public void Trace_OrderThreeAndTail_GiveTheFullReverberantEnergyWithinATenthOfADecibel()
    {
        var lattice = new ImageLattice(Room(0.3), 3);
        Arrival[] arrivals = Omni(Room(0.3), 3);
        double reverberant = arrivals.Skip(1).Sum(a => a.Energy[3]) + lattice.Tail[3];
        Assert.Equal(-4.573, 10 * Math.Log10(arrivals[0].Energy[3] / reverberant), 0.1);
    }

    // Arrival direction of a first reflection, closed form: mirror the source in the wall by hand.
    [Fact]
    public void Trace_FirstReflections_ArriveFromTheMirroredSource()
    {
        Vector3D[] mirrored =
        [
            s_source with { X = -s_source.X }, s_source with { X = (2 * 2.4) - s_source.X }, s_source with { Y = -s_source.Y },
            s_source with { Y = (2 * 1.45) - s_source.Y }, s_source with { Z = -s_source.Z }, s_source with { Z = (2 * 1.15) - s_source.Z },
        ];
        Arrival[] firsts = [.. Omni(Room(0.3), 1).Where(a => a.Order == 1)];
        foreach (Vector3D image in mirrored)
        {
            Vector3D expected = (image - s_microphone).Normalized();
            Assert.Contains(firsts, a => (a.Direction - expected).Length < 1e-9);
        }
    }

    // The box may stand anywhere in the car's frame.
    [Fact]
    public void Trace_MovedRoom_ChangesNothing() => Gen.Double[-3, 3].Array[3].Sample(d =>
    {
        var shift = new Vector3D(d[0], d[1], d[2]);
        var moved = new ShoeboxRoom(new Box3D(s_box.Min + shift, s_box.Max + shift), Faces(0.3));
        Arrival[] a = Omni(Room(0.3), 2), b = Trace(moved, 2, s_source + shift, s_microphone + shift);
        for (int i = 0; i < a.Length; i++)
        {
            Assert.Equal(a[i].DistanceM, b[i].DistanceM, 1e-9);
            Assert.True((a[i].Direction - b[i].Direction).Length < 1e-9);
        }
    }, iter: 50);

    // The definition, summed directly, is the outside check: both paths agree to 1e-9.
    [Fact]
    public void Received_TenSums_EqualTheDirectSum() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[-3.14, 3.14], Gen.Double[-1.57, 1.57], Gen.Double[0.1, 2.3], Gen.Double[0.1, 1.35]).Sample((a, azimuth, elevation, x, y) =>
        {
            Vector3D aim = Vector3D.FromAngles(azimuth, elevation);
            var receiver = new Vector3D(x, y, 0.9);
            var lattice = new ImageLattice(Room(0.3), 3);
            var tracer = new SoundTracer(lattice, []);
            var source = new SoundSource(s_source, Vector3D.Forward, true, 0.03, 0);
            var sums = new double[TenSums.Length];
            tracer.Accumulate(source, receiver, 0, sums, sums);
            var arrivals = new Arrival[lattice.Count];
            tracer.Trace(source, receiver, arrivals);
            BandVector fast = TenSums.Received(sums, new AimCoefficients(a, 1 - a, aim));
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                double direct = arrivals.Sum(r => r.Energy[b] * Math.Pow(a + ((1 - a) * aim.Dot(r.Direction)), 2))
                    + (tracer.TailOf(source)[b] * ((a * a) + ((1 - a) * (1 - a) / 3)));
                Assert.True(Math.Abs(fast[b] - direct) <= 1e-9 * direct, $"{fast[b]} {direct}");
            }
        }, iter: 300);

    // A voice turned away is quieter by its published directivity (Monson 2012): direct sound at 2 kHz, 180 degrees, -13.1 dB.
    [Fact]
    public void Trace_VoiceTurnedAway_FallsByItsPublishedDirectivity()
    {
        var tracer = new SoundTracer(new ImageLattice(Room(0.3), 0), []);
        var arrivals = new Arrival[1];
        Vector3D toMicrophone = (s_microphone - s_source).Normalized();
        tracer.Trace(new SoundSource(s_source, toMicrophone, true, 0, 0), s_microphone, arrivals);
        double facing = arrivals[0].Energy[4];
        tracer.Trace(new SoundSource(s_source, -toMicrophone, true, 0, 0), s_microphone, arrivals);
        Assert.Equal(-13.1, 10 * Math.Log10(arrivals[0].Energy[4] / facing), 0.05);
    }

    // A wall reflection leaves the mouth toward the wall: a talker facing the wall feeds it fully.
    [Fact]
    public void Trace_VoiceFacingAWall_FeedsThatReflectionMost()
    {
        Arrival[] toward = Trace(Room(0.3), 1, s_source, s_microphone, Vector3D.Left), away = Trace(Room(0.3), 1, s_source, s_microphone, -Vector3D.Left);
        int leftWall = Array.FindIndex(toward, a => a.Order == 1 && Math.Abs(a.Direction.Y - ((2.9 - 0.4 - 0.72) / a.DistanceM)) < 1e-9);
        Assert.True(toward[leftWall].Energy[5] > 5 * away[leftWall].Energy[5]);
    }

    private static Arrival[] Omni(ShoeboxRoom room, int order) => Trace(room, order, s_source, s_microphone);

    private static Arrival[] Trace(ShoeboxRoom room, int order, Vector3D source, Vector3D microphone, Vector3D? axis = null)
    {
        var lattice = new ImageLattice(room, order);
        var arrivals = new Arrival[lattice.Count];
        new SoundTracer(lattice, []).Trace(new SoundSource(source, axis ?? Vector3D.Forward, axis is not null, 0, -1), microphone, arrivals);
        return arrivals;
    }

    private static ShoeboxRoom Room(double absorption) => new(s_box, Faces(absorption));

    private static FaceAbsorption[] Faces(double absorption) => [.. Enumerable.Repeat(new FaceAbsorption([.. Enumerable.Repeat(absorption, 7)]), 6)];
}
