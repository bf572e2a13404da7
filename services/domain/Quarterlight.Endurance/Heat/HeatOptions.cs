namespace Quarterlight.Endurance.Heat;

/// <summary>Works out what one change would buy.</summary>
internal static class HeatOptions
{
    // A change that moves less than this is not worth a line (judgement).
    private const double LeastMin = 0.2, LeastShare = 0.01;

    private const int HeadingStep = 30;

    private static readonly int[] s_earlierH = [1, 2, 3];

    /// <summary>Longest that an option starts earlier, minutes.</summary>
    public const int EarliestMin = 180;

    /// <summary>Options that change something, best first.</summary>
    public static IReadOnlyList<HeatOption> Of(HeatTask task, SunTable table)
    {
        var options = new List<HeatOption>();
        // Like is held against like: an option's rhythm is of the coarse steps only.
        HeatAnswer now = HeatAnswer.Of(task, table, refine: false);
        void Add(string code, string words, HeatTask changed, SunTable sun, double shiftMin = 0)
        {
            HeatAnswer then = HeatAnswer.Of(changed, sun, shiftMin, refine: false);
            if (Differs(now, then))
            {
                options.Add(new HeatOption(code, words, then.LimitMin, then.PrecoolMin, then.RollingShare));
            }
        }

        if (task.Shade < CarShade.Full)
        {
            Add("full-shade", "in full shade", task with { Shade = CarShade.Full }, table);
        }

        if (task.Shade < CarShade.PopUp)
        {
            Add("pop-up", "under a pop-up canopy", task with { Shade = CarShade.PopUp }, table);
        }

        if (task.Cover == SunCover.None)
        {
            Add("windscreen-screen", "with a reflective screen in the windscreen between takes", task with { Cover = SunCover.Windscreen }, table);
        }

        if (task.Cover != SunCover.AllGlass)
        {
            Add("glass-cover", "with a reflective cover over all glass between takes", task with { Cover = SunCover.AllGlass }, table);
        }

        foreach (int hours in s_earlierH)
        {
            Add($"earlier-{hours}h", $"starting {hours} h earlier, with the same air outside", task, table, -60 * hours);
        }

        if (task.HeadingDeg is not null && task.Shade < CarShade.PopUp && BestHeading(task) is { } heading)
        {
            HeatTask turned = task with { HeadingDeg = heading };
            Add("best-heading", $"with the nose to {heading:0} degrees", turned, new SunTable(turned, heading, -task.SoakMin, task.DurationMin));
        }

        if (task.Glass != GlassKind.SolarControl)
        {
            Add("solar-glass", "in a car with solar-control glass", task with { Glass = GlassKind.SolarControl }, table);
        }

        if (task.Cooling.Recirculated)
        {
            Add("fresh-air", "with the flap on fresh air", task with { Cooling = task.Cooling with { Recirculated = false } }, table);
        }

        options.Sort((a, b) => Compare(b, a));
        return options;
    }

    private static bool Differs(HeatAnswer now, HeatAnswer then) =>
        (now.LimitMin is null) != (then.LimitMin is null)
        || Math.Abs((now.LimitMin ?? 0) - (then.LimitMin ?? 0)) >= LeastMin
        || Math.Abs(now.RollingShare - then.RollingShare) >= LeastShare
        || (now.PrecoolMin is null) != (then.PrecoolMin is null)
        || Math.Abs((now.PrecoolMin ?? 0) - (then.PrecoolMin ?? 0)) >= 0.5;

    private static int Compare(HeatOption a, HeatOption b)
    {
        int byMinutes = (a.Minutes ?? double.PositiveInfinity).CompareTo(b.Minutes ?? double.PositiveInfinity);
        return byMinutes != 0 ? byMinutes : a.RollingFraction.CompareTo(b.RollingFraction);
    }

    // Least direct light over the day, looked at every half hour.
    private static double? BestHeading(HeatTask task)
    {
        double? best = null;
        double least = double.PositiveInfinity;
        for (int heading = 0; heading < 360; heading += HeadingStep)
        {
            double sum = 0;
            for (double minute = 0; minute <= task.DurationMin; minute += 30)
            {
                PaneLight light = SunTable.At(task, heading, minute);
                sum += light.WindscreenDirectW + light.OtherDirectW;
            }

            if (sum < least - 1)
            {
                (least, best) = (sum, heading);
            }
        }

        return least > 0 ? best : null;
    }
}
