using Quarterlight.Placement.Noise;

namespace Quarterlight.Drawing;

/// <summary>Words for a noise picture.</summary>
internal static class NoiseWords
{
    private const int MostKinds = 3, LongestKind = 20;

    public static string Of(SceneVerdict verdict) => verdict switch
    {
        SceneVerdict.Works => "works",
        SceneVerdict.WithCare => "with care",
        _ => "unusable",
    };

    /// <summary>The answer in one line.</summary>
    public static string Headline(NoiseView view)
    {
        string speed = view.SpeedKmPerHour > 0 ? $"at {SpeedWords.Of(view.SpeedKmPerHour, view.Unit)}" : "standing";
        if (view.Report.Verdict is not { } verdict)
        {
            return Level(view, $", {speed}");
        }

        string now = verdict switch { SceneVerdict.Works => "Works", SceneVerdict.WithCare => "With care", _ => "Unusable" };
        string works = view.Report.FastestWorksKmPerHour is { } fastest && double.IsFinite(fastest) ? $"works up to {SpeedWords.Of(fastest, view.Unit)}" : "works at no speed";
        string care = view.Report.FastestWithCareKmPerHour is { } careful && double.IsFinite(careful) ? $", with care up to {SpeedWords.Of(careful, view.Unit)}" : "";
        return $"{now} {speed}; {works}{care}";
    }

    /// <summary>Level at the driver's ear.</summary>
    public static string Level(NoiseView view, string end = "")
    {
        string spread = view.Report.Noise.UncertaintyDb > 0 ? $", give or take {FigureWords.Number(view.Report.Noise.UncertaintyDb)} dB" : "";
        return $"{FigureWords.Number(view.Report.Noise.LevelDba)} dB(A) at the driver's ear{end}{spread}";
    }

    /// <summary>How long a person may sit in it; empty when it is a day or more.</summary>
    public static string DailyLimit(NoiseView view) => HeatView.Finite(view.Report.Noise.DailyLimitMin) is { } minutes ? $"At most {DayTime.Length(minutes)} a day in it without ear protection (NIOSH)" : "";

    /// <summary>What is loudest.</summary>
    public static string Loudest(NoiseView view) => view.Kinds.Count == 0 ? ""
        : $"Loudest: {string.Join(", ", view.Kinds.Take(MostKinds).Select(k => $"{UserText.Cut(k.Words, LongestKind)} {FigureWords.Number(k.LevelDba)}"))} dB(A)";

    /// <summary>The talker with the least speech over noise.</summary>
    public static string Worst(NoiseView view) => view.Worst is { } worst ? $"Worst talker, {Over(worst.SnrDba)}: {view.WorstName}" : "";

    /// <summary>Speech against noise, such as speech 4 dB(A) over noise.</summary>
    public static string Over(double snrDba) => $"speech {FigureWords.Number(Math.Abs(snrDba))} dB(A) {(Math.Round(snrDba) < 0 ? "under" : "over")} noise";

    /// <summary>Why speech well over the noise may still not do; empty when the fan is off or nobody talks.</summary>
    public static string Fan(NoiseView view) => view.Report.Verdict is not (null or SceneVerdict.Works) && view.Report.Noise.Drive.FanStep > 0 ? "The fan is on: off for every take" : "";

    /// <summary>Up to where a row of the table works.</summary>
    public static string Row(NoiseView view, NoiseRow row) => !view.Judged ? ""
        : HeatView.Finite(row.FastestWorksKmPerHour) is { } fastest ? $"works to {SpeedWords.Of(fastest, view.Unit)}" : "works at no speed";
}
