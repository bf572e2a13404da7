namespace Quarterlight.Endurance.Heat;

/// <summary>What shade and covers leave of the sun.</summary>
/// <remarks>All judgement, from the look of the thing: nothing measured was found. Broken shade lets half the beam through; a canopy takes the beam and
/// half the sky; deep shade leaves a quarter of the sky. A screen behind the windscreen sends back a bit more than half of what came through it; a cover
/// outside keeps all but a seventh out.</remarks>
public static class ShadeFactors
{
    /// <summary>Shares of direct and diffuse light left by shade.</summary>
    public static (double Direct, double Diffuse) Of(CarShade shade) => shade switch
    {
        CarShade.Broken => (0.5, 0.7),
        CarShade.PopUp => (0, 0.5),
        CarShade.Full => (0, 0.25),
        _ => (1, 1),
    };

    /// <summary>Shares left through the windscreen and through all other glass by a cover.</summary>
    public static (double Windscreen, double Other) Of(SunCover cover) => cover switch
    {
        SunCover.Windscreen => (0.45, 1),
        SunCover.AllGlass => (0.15, 0.15),
        _ => (1, 1),
    };
}
