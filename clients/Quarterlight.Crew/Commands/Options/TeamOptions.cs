using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using static Quarterlight.Crew.Commands.ReadableOption;

namespace Quarterlight.Crew.Commands.Options;

/// <summary>What the team keeps: scenes, cars, kits, and what is in them.</summary>
internal static class TeamOptions
{
    private const int MostNamed = 4;

    private static readonly HashSet<string> Fillers = Lexicon.Words("the a an of in on at by to for our my with and scene car kit camera cam shot");
    private static readonly HashSet<string> Microphones = Lexicon.Words("mic mics microphone microphones mike mikes all any kit kits");

    public static readonly ReadableOption Scene = new(new CrewOption("scene", "Scene it is about; the one talked about last when left out", CrewOptionKind.Scene), "", (text, said) =>
        Find(text, said.Vocabulary.Scenes, s => s.Name, s => s.DisplayName, said.Vocabulary.SceneNames) is { } found ? said with { SceneNamed = found } : OptionReading.NotUnderstood)
    {
        Order = 0,
        RightFor = said => Choose("scene", said.Vocabulary.Scenes.Select(s => Wordings.Name(s.DisplayName, s.Name))),
    };

    public static readonly ReadableOption Car = new(new CrewOption("car", "Another car than the scene's", CrewOptionKind.Cabin), "", (text, said) =>
        Find(text, said.Vocabulary.Cabins, c => c.Name, c => c.DisplayName, said.Vocabulary.CabinNames) is { } found ? said with { CabinNamed = found } : OptionReading.NotUnderstood)
    {
        Order = 0,
        RightFor = said => Choose("car", said.Vocabulary.Cabins.Select(c => Wordings.Name(c.DisplayName, c.Name))),
    };

    public static readonly ReadableOption Kit = new(new CrewOption("kit", "Another kit than the scene's", CrewOptionKind.Kit), "", (text, said) =>
        Find(text, said.Vocabulary.Kits, k => k.Name, k => k.DisplayName, said.Vocabulary.KitNames) is { } found ? said with { KitNamed = found } : OptionReading.NotUnderstood)
    {
        Order = 0,
        RightFor = said => Choose("kit", said.Vocabulary.Kits.Select(k => Wordings.Name(k.DisplayName, k.Name))),
    };

    public static readonly ReadableOption Talker = new(new CrewOption("talker", "Who talks, by role or seat: \"driver\", \"rear left\"", CrewOptionKind.Talker), "", (text, said) => ReadTalker(text, said))
    {
        RightFor = said => Choose("talker", (said.Scene?.Talkers ?? []).Select(t => Wordings.Name(t.DisplayName, t.Id))),
    };

    public static readonly ReadableOption Site = new(new CrewOption("site", "Place in the car: \"driver's visor\", \"centre console\"", CrewOptionKind.Site), "name a place in the car, such as \"driver's visor\" or \"centre console\"", (text, said) =>
        ReadSite(text, said) is { } site ? WhoseOf(text, said, site) with { Site = site } : OptionReading.NotUnderstood)
    { Order = 2 };

    public static readonly ReadableOption WithoutSite = new(new CrewOption("without-site", "Place that must stay free: \"driver's visor\"", CrewOptionKind.Site), Site.Right, (text, said) =>
        ReadSite(text, said) is { } site ? WhoseOf(text, said, site) with { SiteLeftOut = site } : OptionReading.NotUnderstood)
    { Order = 2 };

    public static readonly ReadableOption WithoutMic = Text("without-mic", "Kind of microphone left out: \"lavs\", \"the short tube\"", "", (text, said) =>
        ReadMicrophones(text, said) is { Count: > 0 } ids ? said with { MicrophonesLeftOut = ids } : OptionReading.NotUnderstood) with
    { RightFor = KindsOf };

    public static readonly ReadableOption OnlyMic = Text("only-mic", "Only this kind of microphone: \"lavs\"", "", (text, said) =>
        ReadMicrophones(text, said) is { Count: > 0 } ids ? said with { OnlyMicrophones = ids } : OptionReading.NotUnderstood) with
    { RightFor = KindsOf };

    public static readonly ReadableOption WithoutShot = Text("without-shot", "Camera left out, by its name: \"A\"", "", (text, said) =>
        ReadShots(text, said) is { Count: > 0 } ids ? said with { ShotsLeftOut = ids } : OptionReading.NotUnderstood) with
    {
        RightFor = said => Choose("camera", (said.Scene?.Shots ?? []).Select(s => Wordings.Name(s.Id))),
    };

    // By id or whole name first; else by words, all of which must be the name's own.
    private static T? Find<T>(OptionText text, IReadOnlyList<T> all, Func<T, string> name, Func<T, string> displayName, NameMatcher matcher)
        where T : class
    {
        if (text.Text.Length == 0 || text.IsTooLong)
        {
            return null;
        }

        T? whole = all.FirstOrDefault(t => name(t) == text.Text || ResourceName.IdOf(name(t)) == text.Text) ?? all.FirstOrDefault(t => string.Equals(CrewText.Clean(displayName(t), OptionText.Longest), text.Text, StringComparison.OrdinalIgnoreCase));
        if (whole is not null || !text.IsPlain)
        {
            return whole;
        }

        IReadOnlyList<Named> found = matcher.Find(text.Tokens);
        T[] fitting = [.. all.Where(t => found.Any(f => f.Id == name(t)) && text.Tokens.All(w => Fillers.Contains(w.Word) || Calls(displayName(t), name(t), w.Word)))];
        return fitting.Length == 1 ? fitting[0] : null;
    }

    private static bool Calls(string displayName, string name, string word) =>
        Tokenizer.Split(displayName).Concat(Tokenizer.Split(ResourceName.IdOf(name))).Any(t => t.Word == word || t.Word + "s" == word || t.Word == word + "s");

    private static OptionReading ReadTalker(OptionText text, CommandSaid said)
    {
        if (said.Scene is not { } scene)
        {
            return OptionReading.Refused("cannot be looked for, as there is no scene yet");
        }

        string? id = scene.Talkers.FirstOrDefault(t => t.Id == text.Text || string.Equals(t.DisplayName, text.Text, StringComparison.OrdinalIgnoreCase))?.Id;
        if (id is null && text.IsPlain && text.Numbers.Count == 0)
        {
            IReadOnlyList<TalkerMention> found = TalkerReader.Find(text.Tokens, scene, said.DriverOnLeft);
            bool known = text.Tokens.All(t => Fillers.Contains(t.Word) || SeatWords.All.Contains(t.Word) || t.Word is "middle" or "centre" or "center" or "side" || scene.Talkers.Any(k => Calls(k.DisplayName, k.Id, t.Word)));
            id = known && found.Select(f => f.TalkerId).Distinct().Count() == 1 ? found[0].TalkerId : null;
        }

        return id is null ? OptionReading.NotUnderstood : said with { TalkerId = id, Forecast = said.Forecast with { Levels = said.Forecast.Levels with { TalkerId = id } } };
    }

    private static SiteMention? ReadSite(OptionText text, CommandSaid said)
    {
        if (said.Sites.FirstOrDefault(s => s.Id == text.Text) is { } chosen)
        {
            return new SiteMention { Families = [chosen.Family], Word = SiteWords.Say(chosen.Family), SiteId = chosen.Id };
        }

        bool known = text.IsPlain && text.Numbers.Count == 0 && text.Tokens.All(t => Fillers.Contains(t.Word) || SiteWords.FamiliesOf(t).Count > 0 || SiteWords.Qualifiers.Contains(t.Word) || SeatWords.All.Contains(t.Word) || t.Word is "side" or "middle" or "end" or "part" or "bodyworn" || said.Scene?.Talkers.Any(k => Calls(k.DisplayName, k.Id, t.Word)) == true);
        return known ? SiteReader.Read(text.Tokens, windowsAreConditions: false) : null;
    }

    // "The driver's visor" says whose microphone it is for, unless that was said.
    private static CommandSaid WhoseOf(OptionText text, CommandSaid said, SiteMention site) => said.TalkerId is not null || site.SiteId is not null || said.Scene is not { } scene ? said
        : said with { TalkerId = TalkerReader.For(text.Tokens, TalkerReader.Find(text.Tokens, scene, said.DriverOnLeft), site) };

    private static IReadOnlyList<string> ReadMicrophones(OptionText text, CommandSaid said)
    {
        if (said.Kit is not { } kit)
        {
            return [];
        }

        string? id = kit.Microphones.FirstOrDefault(m => m.Id == text.Text || string.Equals(m.DisplayName, text.Text, StringComparison.OrdinalIgnoreCase))?.Id;
        bool known = text.IsPlain && text.Tokens.All(t => Fillers.Contains(t.Word) || Microphones.Contains(t.Word) || KitReader.Calls(t.Word, kit));
        return id is not null ? [id] : known ? KitReader.Microphones(text.Tokens, kit) : [];
    }

    private static IReadOnlyList<string> ReadShots(OptionText text, CommandSaid said)
    {
        if (said.Scene is not { } scene)
        {
            return [];
        }

        string? id = scene.Shots.FirstOrDefault(s => string.Equals(s.Id, text.Text, StringComparison.OrdinalIgnoreCase))?.Id;
        bool known = text.IsPlain && text.Tokens.All(t => Fillers.Contains(t.Word) || Lexicon.Cameras.Contains(t.Word) || scene.Shots.Any(s => Tokenizer.Split(s.Id).Any(w => w.Word == t.Word)));
        return id is not null ? [id] : known ? KitReader.Shots([new Token("camera"), .. text.Tokens.Where(t => !t.Is("camera"))], scene) : [];
    }

    private static string KindsOf(CommandSaid said) => Choose("kind", (said.Kit?.Microphones ?? []).Select(m => Wordings.Name(m.DisplayName, m.Id)));

    private static string Choose(string what, IEnumerable<string> names)
    {
        string[] all = [.. names];
        return all.Length == 0 ? $"there is no {what} yet" : $"choose {string.Join(", ", all.Take(MostNamed).Select(n => $"\"{n}\""))}{(all.Length > MostNamed ? " or another" : "")}";
    }
}
