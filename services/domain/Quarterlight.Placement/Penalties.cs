using Quarterlight.Acoustics;
using Quarterlight.Cabin;

namespace Quarterlight.Placement;

/// <summary>The deductions of a place, each named and visible. All costs are judgement unless said otherwise.</summary>
internal static class Penalties
{
    private const double ToneFreeDb = 1.0; // Tone change below this is not heard as a change of microphone.

    private const double TonePerDb = 0.5;

    /// <summary>Lead in dB below which two open microphones comb: the 3:1 rule's 20 lg 3.</summary>
    public static double FullSeparationDb { get; } = 20 * Math.Log10(3);

    private const double CombPerDb = 0.3;

    private const double StrayPerDb = 0.7;

    private const double MostCombDb = 15;

    /// <summary>Deductions that depend on the place, its fixing and whether talkers share it, summed in dB.</summary>
    public static double PlaceCostDb(MountSite site, Fixings fixing, DriveConditions drive, bool shared, List<Penalty>? named = null)
    {
        double sum = 0;
        bool shaken = drive.SpeedKmPerHour > 0 || drive.Engine == EngineState.Running;
        double vibration = !shaken ? 0 : site.Vibration switch { VibrationGrade.High => 1.5, VibrationGrade.Medium => 0.5, _ => 0 };
        Take("vibration", "the car shakes this place", vibration, ref sum, named);
        Take("fixing-risk", "this fixing may let go or be heard", FixingRiskDb(fixing), ref sum, named);
        Take("wardrobe", "cloth rustle and seat belt (common practice, no source)", site.Family == MountFamily.BodyWorn ? 3 : 0, ref sum, named);
        Take("vent", "air from the vent blows on it", site.NearVent && drive.FanStep > 0 ? 3 : 0, ref sum, named);
        Take("shared-microphone", "talkers on one microphone cannot be balanced apart in the mix", shared ? 6 : 0, ref sum, named);
        return sum;
    }

    /// <summary>Deduction in dB for a change of tone between head poses.</summary>
    public static double ToneCostDb(double toneChangeDb) => Math.Max(0, toneChangeDb - ToneFreeDb) * TonePerDb;

    /// <summary>
    /// Deduction in dB when the talker's own microphone leads another open one by too little: 0 from the 3:1 rule's 9.54 dB up,
    /// and steeper where the other one hears the talker better than the own one does.
    /// </summary>
    public static double CombCostDb(double leadDb) =>
        Math.Min(MostCombDb, (Math.Max(0, FullSeparationDb - leadDb) * CombPerDb) + (Math.Max(0, -leadDb) * StrayPerDb));

    private static double FixingRiskDb(Fixings fixing) => fixing switch
    {
        Fixings.SpringClip => 0,
        Fixings.ElasticTie => 0.2,
        Fixings.ArticulatedArm => 0.3,
        Fixings.SuctionCup => 0.5,
        Fixings.PaperTape => 0.8,
        Fixings.WeightedBase => 1.0,
        _ => 0,
    };

    private static void Take(string code, string words, double costDb, ref double sum, List<Penalty>? named)
    {
        sum += costDb;
        if (costDb > 0)
        {
            named?.Add(new Penalty(code, words, costDb));
        }
    }
}
