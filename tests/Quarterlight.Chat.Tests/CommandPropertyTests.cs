using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Keeping;

namespace Quarterlight.Chat.Tests;

/// <summary>Whatever is sent as a command comes back as an answer that can be shown.</summary>
public sealed class CommandPropertyTests
{
    private const int Calls = 400;

    private static readonly string[] Texts =
    [
        "", " ", "300 m", "1/4 mile", "60 mph", "95 F", "14:00", "shut", "down", "heavy", "roof", "demo-school-run", "school run", "visor", "driver", "lavs", "Germany", "98.1 MHz", "50 mW", "470-494 MHz", "true", "7", "-7", "1e308", "NaN", "Infinity",
        "@everyone `rm` <@123> **x** [a](b) \\ |", "\u202eevil\u202c", "\u0000\u0001\u001b[31m", "\ud800", "🎬🎤", "%s%n{0}", "../../etc/passwd", "a\r\nb", "\"'\"'", "300 m 300 m 300 m", "٣٠٠ m", "１２ m", "½ mile", "between 470 and", "until", "12:", ":", "scene:", "' OR 1=1", "\u0301\u0301",
    ];

    [Theory]
    [InlineData(1)]
    [InlineData(20261129)]
    public async Task Run_AnyCall_ComesBackAsAnAnswerThatCanBeShown(int seed)
    {
        var random = new Random(seed);
        await using CommandDesk desk = await CommandDesk.StartAsync();
        CrewCommand[] commands = [.. CrewCommands.All.Where(c => !Keeps(c.Name))];
        for (int i = 0; i < Calls; i++)
        {
            CrewCommandCall call = Any(random, commands);
            CrewOutput output = await desk.Desk.RunAsync($"c{random.Next(5)}", call, TestContext.Current.CancellationToken);

            Assert.True(output.Answer is null != output.Form is null);
            CrewAnswer answer = output.Answer!;
            Assert.NotEmpty(answer.Headline);
            Assert.All(answer.Lines.Select(l => l.Text).Append(answer.Headline).Append(answer.Understood).Concat(answer.FollowUps), t => Assert.False(t.Any(IsUnfit), t));
            Assert.All(answer.Lines.Select(l => l.Text).Append(answer.Headline), t => Assert.DoesNotContain("Exception", t, StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void Read_AnyLine_IsACallOrARefusal(int seed)
    {
        var random = new Random(seed);
        for (int i = 0; i < 3000; i++)
        {
            string line = string.Join(random.Next(2) == 0 ? " " : ": ", Enumerable.Range(0, random.Next(6)).Select(_ => random.Next(3) == 0 ? CrewCommands.All[random.Next(CrewCommands.All.Count)].Name : Texts[random.Next(Texts.Length)]));
            TypedCommand typed = CommandLine.Read(line);

            Assert.True(typed.Call is null != typed.Wrong is null, line);
            Assert.False((typed.Wrong ?? "").Any(IsUnfit), line);
        }
    }

    private static CrewCommandCall Any(Random random, CrewCommand[] commands)
    {
        CrewCommand command = commands[random.Next(commands.Length)];
        var values = new Dictionary<string, string>();
        foreach (CrewOption option in command.Options.Where(o => o.Kind != CrewOptionKind.File && random.Next(OneIn(o)) == 0))
        {
            values[option.Name] = option.Choices.Count > 0 && random.Next(2) == 0 ? option.Choices[random.Next(option.Choices.Count)].Value : Texts[random.Next(Texts.Length)];
        }

        if (random.Next(15) == 0)
        {
            values[Texts[random.Next(Texts.Length)]] = Texts[random.Next(Texts.Length)];
        }

        string name = random.Next(20) == 0 ? Texts[random.Next(Texts.Length)] : command.Name;
        return new CrewCommandCall(name, values) { File = command.Options.Any(o => o.Kind == CrewOptionKind.File) && random.Next(4) > 0 ? new CrewAttachment(Texts[random.Next(Texts.Length)], 5, _ => Task.FromResult<Stream>(new MemoryStream([1, 2, 3, 4, 5]))) : null };
    }

    private static int OneIn(CrewOption option) => option.Required ? 1 : 4;

    private static bool Keeps(string name) => KeepingCommands.All.Any(c => c.Name == name);

    // Control characters, changes of direction, lone halves of characters, and the sign that mentions people.
    private static bool IsUnfit(char c) => char.IsControl(c) || c is '@' or '\u202a' or '\u202b' or '\u202c' or '\u202d' or '\u202e' or '\u2066' or '\u2067' or '\u2068' or '\u2069';
}
