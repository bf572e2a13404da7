using CsCheck;
using Quarterlight.Crew;
using Quarterlight.Crew.Language;

namespace Quarterlight.Chat.Tests;

/// <summary>Text nobody should send: it must do no harm and never come back as it was.</summary>
public sealed class HostileTextTests(SharedPlanner planner)
{
    [Theory]
    [InlineData("\u001b[31mred\u0007", " 31mred")]
    [InlineData("@everyone look", "everyone look")]
    [InlineData("<@123456> **bold** `code`", "123456 bold code")]
    [InlineData("left\u202eright", "leftright")]
    [InlineData("zero\u200bwidth", "zerowidth")]
    [InlineData("two\nlines\r\nhere", "two lines here")]
    [InlineData("   ", "")]
    public void Clean_HostileText_IsPlain(string hostile, string plain) => Assert.Equal(plain.TrimStart(), CrewText.Clean(hostile));

    [Fact]
    public void Clean_AnyText_IsOneShortLineWithoutMarkup() => Gen.String.Array[0, 40].Sample(parts =>
    {
        string clean = CrewText.Clean(string.Concat(parts), 50);
        Assert.True(clean.Length <= 50);
        Assert.DoesNotContain(clean, c => char.IsControl(c) || "*_`~|<>[]{}\\@".Contains(c, StringComparison.Ordinal));
        Assert.Equal(clean, CrewText.Clean(clean, 50).TrimEnd() + clean[clean.TrimEnd().Length..]);
    });

    [Fact]
    public void Read_AnyText_NeverThrows()
    {
        var vocabulary = new CrewVocabulary(Crew.Demo.DemoData.Scenes, Crew.Demo.DemoData.Cabins, Crew.Demo.DemoData.Kits);
        Gen.String.Sample(text => Assert.NotNull(RequestReader.Read(CrewText.Clean(text), vocabulary, CrewMemory.Empty, UnitPreference.Metric)));
        string[] known = ["why", "not", "the", "visor", "for", "window", "down", "rear", "left", "40", "mph", "without", "lav", "fan", "step", "9", "behind", "and", "camera", "scene", "%", "'s", "n't"];
        Gen.Int[0, known.Length - 1].Select(i => known[i]).Array[0, 12].Sample(words => Assert.NotNull(RequestReader.Read(string.Join(' ', words), vocabulary, CrewMemory.Empty, UnitPreference.Imperial)));
    }

    [Theory]
    [InlineData("@everyone <script>alert(1)</script> where are my keys")]
    [InlineData("\u001b]0;title\u0007 ``` $(reboot) ```")]
    [InlineData("мікрофони 🎤🎤🎤")]
    public async Task Ask_HostileText_NotEchoedRaw(string hostile)
    {
        BotRun run = await planner.AskAsync(hostile);

        Assert.Equal(1, run.Exit);
        Assert.DoesNotContain(run.Output, c => c is '@' or '<' or '>' or '`' or '\u001b' or '\u0007');
    }

    [Fact]
    public async Task Ask_VeryLongText_IsCappedAndAnswered()
    {
        BotRun run = await planner.AskAsync(string.Concat(Enumerable.Repeat("blah ", 40_000)));

        Assert.Equal(1, run.Exit);
        Assert.InRange(run.Output.Length, 20, 1000);
    }
}
