namespace Quarterlight.Cabin;

/// <summary>What the parts of a cabin are made of, as far as fixing matters (judgement: typical trim).</summary>
internal static class SiteMaterials
{
    public static SurfaceMaterial Seat(CabinSpec spec) =>
        spec.Upholstery == Upholstery.Leather ? SurfaceMaterial.Leather : SurfaceMaterial.Cloth;

    public static SurfaceMaterial DashTop(CabinSpec spec) => Classic(spec) ? SurfaceMaterial.PaintedMetal : SurfaceMaterial.SoftPlastic;

    public static SurfaceMaterial DashFace(CabinSpec spec) => Classic(spec) ? SurfaceMaterial.PaintedMetal : SurfaceMaterial.HardPlastic;

    public static SurfaceMaterial Pillar(CabinSpec spec) => Classic(spec) ? SurfaceMaterial.PaintedMetal : SurfaceMaterial.HardPlastic;

    private static bool Classic(CabinSpec spec) => spec.Body == BodyStyle.BenchSeatClassic;
}
