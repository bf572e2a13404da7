using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads shade, covers, clouds and the way the car faces.</summary>
public static class SunReader
{
    private static readonly string[] Winds = ["north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest"];
    private static readonly string[] Letters = ["n", "ne", "e", "se", "s", "sw", "w", "nw"];

    private static readonly HashSet<string> Facing = Lexicon.Words("facing face faces heading headed pointing points pointed nose bonnet turned");
    private static readonly HashSet<string> Canopies = Lexicon.Words("popup canopy gazebo tent awning marquee");
    private static readonly HashSet<string> Deep = Lexicon.Words("deep full building garage hall hangar barn studio indoors total complete");
    private static readonly HashSet<string> Leafy = Lexicon.Words("tree trees broken dappled partial part half leaves");
    private static readonly HashSet<string> Covers = Lexicon.Words("cover covers covered blanket blankets reflector foil sunscreen screens");

    /// <summary>Shade over the car, or null. "In the shade" alone is shade with much of the sky.</summary>
    public static CarShade? Shade(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        bool shade = tokens.Any(t => t.Word is "shade" or "shaded"), none = Denied(tokens, "shade") || Denied(tokens, "popup");
        bool sun = tokens.Where((t, i) => t.Is("sun") && i > 0 && tokens[i - 1].Word is "the" or "open" or "in").Any() && !tokens.Any(t => t.Word is "since" or "for" or "hours" or "out");
        sun |= tokens.Where((t, i) => t.Is("sun") && i > 0 && tokens[i - 1].Word is "full" or "direct" or "blazing").Any();
        if (none || (sun && !shade))
        {
            return CarShade.None;
        }

        // "85 in the shade" is how warm it is.
        bool measured = tokens.Where((t, i) => t.Is("shade") && i > 2 && tokens[i - 1].Is("the") && tokens[i - 2].Is("in") && (tokens[i - 3].Number is not null || tokens[i - 3].Word is "c" or "f" or "degrees")).Any();
        bool under = tokens.Any(t => t.Word is "under" or "beneath" or "below" or "in" or "inside" or "behind" or "parking");
        return tokens.Any(t => t.IsAny(Canopies)) ? CarShade.PopUp
            : tokens.Any(t => t.Word is "tree" or "trees") && (under || shade) ? CarShade.Broken
            : (shade && !measured && tokens.Any(t => t.IsAny(Leafy))) ? CarShade.Broken
            : (shade && !measured && tokens.Any(t => t.IsAny(Deep))) || (under && tokens.Any(t => t.Word is "garage" or "hangar" or "barn" or "hall" or "studio")) ? CarShade.Full
            : shade && !measured ? CarShade.PopUp : null;
    }

    /// <summary>Cover between takes, or null.</summary>
    public static SunCover? Cover(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        bool windscreen = tokens.Any(t => t.Is("windscreen"));
        bool cover = tokens.Any(t => t.IsAny(Covers)) || (windscreen && tokens.Any(t => t.Word is "screen" or "visor" or "reflective"));
        if (!cover)
        {
            return null;
        }

        return tokens.Any(t => t.Word is "no" or "without" or "off" or "not") ? SunCover.None
            : !windscreen && tokens.Any(t => t.Word is "all" or "every" or "whole" or "glass" or "windows" or "everything" or "blankets") ? SunCover.AllGlass
            : SunCover.Windscreen;
    }

    /// <summary>Share of the sky under cloud, or null.</summary>
    public static double? Clouds(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        bool half = tokens.Any(t => t.Word is "half" or "partly" or "scattered" or "broken" or "some");
        return tokens.Any(t => t.Word is "cloudy" or "clouds" or "cloud" or "overcast") ? tokens.Any(t => t.Word is "no" or "without" or "not") ? 0 : half ? 0.5 : 1
            : tokens.Where((t, i) => t.Is("sky") && i > 0 && tokens[i - 1].Word is "clear" or "blue" or "open").Any() ? 0 : null;
    }

    /// <summary>Compass heading of the car in degrees, or null.</summary>
    public static double? Heading(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        for (int i = 0; i < tokens.Count; i++)
        {
            if (!tokens[i].IsAny(Facing))
            {
                continue;
            }

            // "South facing" as well as "facing south".
            int before = i > 0 ? Array.IndexOf(Winds, tokens[i - 1].Word) : -1;
            if (before >= 0)
            {
                return before * 45;
            }

            IReadOnlyList<Token> after = [.. tokens.Skip(i + 1).Take(4)];
            if (after.Count > 0 && after[0].Number is >= 0 and <= 360)
            {
                return after[0].Number;
            }

            for (int k = 0; k < after.Count; k++)
            {
                string word = after[k].Word + (k + 1 < after.Count && after[k + 1].Word is "east" or "west" ? after[k + 1].Word : "");
                int at = Math.Max(Array.IndexOf(Winds, word), Array.IndexOf(Letters, after[k].Word));
                if (at >= 0)
                {
                    return at * 45;
                }
            }
        }

        return null;
    }

    private static bool Denied(IReadOnlyList<Token> tokens, string word)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Is(word) && tokens.Take(i).TakeLast(3).Any(t => t.Word is "no" or "without" or "not"))
            {
                return true;
            }
        }

        return tokens.Any(t => t.Is(word)) && tokens.Where((t, i) => t.Is("out") && i + 1 < tokens.Count && tokens[i + 1].Is("of")).Any();
    }
}
