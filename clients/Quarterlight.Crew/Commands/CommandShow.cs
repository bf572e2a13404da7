using static Quarterlight.Crew.Commands.ReadableOption;

namespace Quarterlight.Crew.Commands;

/// <summary>The option "show": which of several answers a command gives.</summary>
internal static class CommandShow
{
    public static readonly ReadableOption Plan = Of("the plan", ("best plan", "plan"), ("the plan in full", "full"), ("next best plan", "next-best"), ("third best plan", "third-best"));

    public static readonly ReadableOption Heat = Of("how long a take may run", ("how long a take may run", "take"), ("how long to cool before the first take", "cool-first"), ("how long to cool between takes", "between"), ("how hot it gets", "how-hot"), ("rhythm of rolling and cooling", "rhythm"), ("what shade would buy", "shade"));

    public static readonly ReadableOption Levels = Of("the gain sheet", ("gain sheet", "gain"), ("whether a pad is needed", "pad"), ("what clips", "clips"), ("safety track", "safety"));

    public static readonly ReadableOption RunTime = Of("what runs out first", ("what runs out first", "first"), ("when to swap", "swaps"), ("batteries", "batteries"), ("cards", "cards"));

    public static readonly ReadableOption Noise = Of("how loud it is", ("how loud it is", "loud"), ("how fast the scene still works", "fastest"), ("what is loudest", "loudest"), ("table of speeds for the AD", "table"));

    private static ReadableOption Of(string usual, params (string Name, string Value)[] choices) =>
        Choice("show", $"What you want to know; {usual} when left out", [.. choices.Select(c => (c.Name, c.Value, c.Value))], (text, said) => said with { Show = text.Text });
}
