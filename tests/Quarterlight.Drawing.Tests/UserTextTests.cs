using CsCheck;

namespace Quarterlight.Drawing.Tests;

public class UserTextTests
{
    [Theory]
    [InlineData("  Boom\r\n\t 2 ", "Boom 2")]
    [InlineData("\u202Evaw.1\u202C", "vaw.1")]
    [InlineData("a\u0000b\u200Bc", "a bc")]
    [InlineData("x\uD800y", "xy")]
    [InlineData("", "")]
    public void Clean_MarksThatSteerOrHide_AreGone(string text, string expected) => Assert.Equal(expected, UserText.Clean(text));

    [Fact]
    public void Cut_LettersWithMarks_StayWhole()
    {
        Assert.Equal("A\u0301A\u0301…", UserText.Cut("A\u0301A\u0301A\u0301A\u0301", 3));
        Assert.Equal("😀…", UserText.Cut("😀😀😀", 2));
        Assert.Equal("abc", UserText.Cut("abc", 3));
    }

    [Fact]
    public void Fit_AnyText_KeepsToTheWidth() =>
        Gen.String[Gen.Char["abc MWé"], 0, 80].Sample(text =>
        {
            string clean = UserText.Clean(text), fit = UserText.Fit(clean, 300);
            Assert.True(DrawingFonts.Width(fit, PictureSheet.TextPx, false) <= 300);
            Assert.StartsWith(fit.TrimEnd('…'), clean, StringComparison.Ordinal);
        });
}
