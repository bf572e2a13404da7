using Quarterlight.Acoustics;

namespace Quarterlight.Placement.Noise;

/// <summary>Turns speech over noise into a verdict on a take, with the rules of the trade that no level shows.</summary>
internal static class TakeVerdict
{
    /// <summary>From this speed up wind through an open window moves the capsule: never better than with care (judgement).</summary>
    public const double WindOnCapsuleKmPerHour = 30;

    /// <summary>Windows down at 40 mph is unusable (common practice, no source).</summary>
    public const double WindowsDownUnusableKmPerHour = 64;

    // "Windows down" is read as one whole window or as much shared out (judgement).
    private const double WindowsDown = 1;

    /// <summary>The verdict on a ratio under some conditions.</summary>
    public static SceneVerdict Of(double snrDba, DriveConditions drive)
    {
        double open = OpenPanes(drive);
        SceneVerdict levels = snrDba < DialogueUsability.UnusableBelowDb ? SceneVerdict.Unusable
            : snrDba < DialogueUsability.ThinBelowDb ? SceneVerdict.WithCare
            : SceneVerdict.Works;
        SceneVerdict trade = drive.FanStep > 0 || (open >= WindowsDown && drive.SpeedKmPerHour >= WindowsDownUnusableKmPerHour) ? SceneVerdict.Unusable
            : open > 0 && drive.SpeedKmPerHour >= WindOnCapsuleKmPerHour ? SceneVerdict.WithCare
            : SceneVerdict.Works;
        return Worse(levels, trade);
    }

    /// <summary>The worse of two.</summary>
    public static SceneVerdict Worse(SceneVerdict a, SceneVerdict b) => a > b ? a : b;

    /// <summary>How much glass is down, in whole windows.</summary>
    public static double OpenPanes(DriveConditions drive)
    {
        double open = 0;
        foreach (WindowOpening window in drive.OpenWindows)
        {
            open += window.OpenFraction;
        }

        return open;
    }
}
