using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>
/// Shares out the trim. Seats stand inside the air space, but image sources know only faces: what cushions absorb is
/// given to the floor, what backrests absorb to the rear face. Shares are worked out from areas; caps are judgement.
/// </summary>
internal static class TrimLayout
{
    private const double MostSeatOnFloor = 0.75;
    private const double MostSeatOnRear = 0.80;

    public static IReadOnlyList<TrimShare> Trim(CabinLayout cabin, IReadOnlyList<WindowPane> windows)
    {
        TrimMaterial seat = cabin.Spec.Upholstery == Upholstery.Leather ? TrimMaterial.LeatherSeat : TrimMaterial.ClothSeat;
        Vector3D size = cabin.Interior.Size;
        var shares = new List<TrimShare>();

        double screen = Math.Clamp((cabin.M.FrontHeightM - cabin.M.DashHeightM) / size.Z, 0, 1);
        Add(CabinFace.Front, (TrimMaterial.Glazing, screen), (TrimMaterial.PlasticTrim, 1 - screen));

        double backs = cabin.Seats.Sum(s => s.Backrest.Size.Y * s.Backrest.Size.Z) / (size.Y * size.Z);
        double rearSeat = Math.Min(MostSeatOnRear, backs / cabin.Traits.Rows);
        double rearGlass = cabin.Traits.Bulkhead ? 0 : Math.Min(1 - rearSeat, CabinLayout.RearGlassWidthFraction * (cabin.RoofZ(cabin.RearHeaderX) - cabin.ShelfZ) / size.Z);
        Add(CabinFace.Rear, (seat, rearSeat), (TrimMaterial.Glazing, rearGlass), (TrimMaterial.PlasticTrim, 1 - rearSeat - rearGlass));

        foreach (CabinFace face in new[] { CabinFace.Left, CabinFace.Right })
        {
            double panes = windows.Where(p => p.Face == face).Sum(p => p.Glass.Size.X * p.Glass.Size.Z) / (size.X * size.Z);
            double glass = Math.Clamp(panes, 0, 0.9);
            // About a third of a door card is padded; the rest is hard (judgement).
            double padded = (1 - glass) / 3;
            Add(face, (TrimMaterial.Glazing, glass), (seat, padded), (TrimMaterial.PlasticTrim, 1 - glass - padded));
        }

        double roofGlass = cabin.Spec.GlassRoof ? Math.Clamp((cabin.HeaderX - cabin.GlassRoofRearX) / size.X, 0, 0.9) : 0;
        Add(CabinFace.Roof, (TrimMaterial.Headliner, 1 - roofGlass), (TrimMaterial.Glazing, roofGlass));

        double cushions = cabin.Seats.Sum(s => s.Cushion.Size.X * s.Cushion.Size.Y) / (size.X * size.Y);
        double onFloor = Math.Min(MostSeatOnFloor, cushions);
        Add(CabinFace.Floor, (seat, onFloor), (TrimMaterial.Carpet, 1 - onFloor));
        return shares;

        void Add(CabinFace face, params ReadOnlySpan<(TrimMaterial Material, double Share)> parts)
        {
            foreach ((TrimMaterial material, double share) in parts)
            {
                if (share > 1e-9)
                {
                    shares.Add(new TrimShare(face, material, share));
                }
            }
        }
    }
}
