namespace Quarterlight.Drawing;

/// <summary>Says in words what a picture of batteries and media shows.</summary>
internal static class RunTimeText
{
    private const int ChangeMax = 110, RemarkMax = 160, NameMax = 40, MostChanges = 4;

    /// <summary>The picture in complete sentences, at most <see cref="PlanText.MaxLength"/> characters.</summary>
    public static string Of(RunTimeView view) => SentenceFit.Join(
        [
            (30, SentenceFit.Stopped(RunTimeWords.Headline(view))),
            (29, SentenceFit.Stopped(RunTimeWords.First(view))),
            (28, SentenceFit.Stopped(RunTimeWords.Broken(view))),
            .. view.Rows.Select(r => (r.Item.Enough ? 10 : 20, Item(r))),
            .. view.Swaps.Take(MostChanges).Select(s => (15, SentenceFit.Stopped(SentenceFit.Cut(RunTimeWords.Change(view, s), ChangeMax)))),
            (14, view.Swaps.Count > MostChanges ? $"There are {view.Swaps.Count} changes in all." : ""),
            (8, SentenceFit.Stopped(RunTimeWords.Basis(view))),
            (6, view.Report.Advisories is [{ } first, ..] ? SentenceFit.Stopped(SentenceFit.Cut(UserText.Clean(first.Message), RemarkMax)) : ""),
            (4, $"The picture shows a bar for each of {view.Rows.Count} from {view.Day.Tick(0)} to the end of the day at {view.Day.Tick(view.EndMin)}, under {Takes(view)}."),
        ]);

    private static string Item(RunTimeRow row) => $"{UserText.Cut(row.Name, NameMax)}: {RunTimeWords.Lasting(row.Item)}{(row.Item.Enough ? "" : ", not enough")}.";

    private static string Takes(RunTimeView view) => view.Takes.Count switch { 0 => "no call sheet", 1 => "one take", _ => $"{view.Takes.Count} takes" };
}
