using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Works out a cabin in space from its description. The model is in docs/models/cabin.md.</summary>
public static class CabinBuilder
{
    /// <summary>Builds the cabin.</summary>
    /// <exception cref="InvalidInputException"><see cref="CabinRules.Validate"/> finds something; callers validate first.</exception>
    public static CabinGeometry Build(CabinSpec spec)
    {
        ArgumentNullException.ThrowIfNull(spec);
        IReadOnlyList<Violation> violations = CabinRules.Validate(spec, "");
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }

        // Built with the driver on the left, then turned over: so both hands are mirror images by construction.
        CabinGeometry leftHandDrive = BuildLeftHandDrive(spec);
        return spec.DriveSide == DriveSide.Left ? leftHandDrive : LeftRight.Mirrored(leftHandDrive);
    }

    private static CabinGeometry BuildLeftHandDrive(CabinSpec spec)
    {
        CabinMeasurements measurements = spec.Measurements ?? CabinTemplates.MeasurementsFor(spec.Body);
        var cabin = new CabinLayout(spec, measurements);
        InteriorMirror? mirror = MirrorLayout.Mirror(cabin);
        IReadOnlyList<WindowPane> windows = WindowLayout.Windows(cabin);
        IReadOnlyList<NoisePort> ports = NoisePortLayout.Ports(cabin, windows);
        IReadOnlyList<AirbagZone> airbags = AirbagLayout.Zones(cabin);
        List<Occluder> occluders = OccluderLayout.Occluders(cabin, mirror);
        DriverView view = DriverView.Of(cabin, mirror);

        var sites = new SiteCollector(cabin, occluders, airbags, ports, view);
        FrontSites.AddTo(sites);
        SideSites.AddTo(sites, windows);
        RoofAndSeatSites.AddTo(sites);

        return new CabinGeometry
        {
            Spec = spec,
            Measurements = measurements,
            Interior = cabin.Interior,
            Seats = cabin.Seats,
            Sites = sites.Sites,
            Occluders = occluders.ToArray(),
            Windows = windows,
            Glazing = GlazingLayout.Panes(cabin, windows),
            Trim = TrimLayout.Trim(cabin, windows),
            NoisePorts = ports,
            AirbagZones = airbags,
            Mirror = mirror,
            DriverEye = cabin.DriverEye,
            DriverView = view,
            Outline = CabinOutline.Strokes(cabin),
            AirVolumeM3 = InteriorVolume.AirM3(cabin),
        };
    }
}
