using Quarterlight.Crew.Commands;

namespace Quarterlight.Chat.Tests;

/// <summary>Commands typed on one line.</summary>
public sealed class CommandLineTests
{
    [Theory]
    [InlineData("/link distance: 300 m country: US", "link", "distance=300 m;country=US")]
    [InlineData("/link 300 m", "link", "distance=300 m")]
    [InlineData("link 300 m country:US", "link", "distance=300 m;country=US")]
    [InlineData("/LINK Distance: 300 m", "link", "distance=300 m")]
    [InlineData("/why driver's visor talker: parent", "why", "site=driver's visor;talker=parent")]
    [InlineData("/heat start: 14:00 outside: 35 C", "heat", "start=14:00;outside=35 C")]
    [InlineData("/scene use school run", "scene use", "scene=school run")]
    [InlineData("/scene   list", "scene list", "")]
    [InlineData("/plan", "plan", "")]
    [InlineData("/plan scene: \"the run: part two\"", "plan", "scene=the run: part two")]
    [InlineData("/ask what about this: windows: down?", "ask", "question=what about this: windows: down?")]
    [InlineData("/ask \"how far?\" scene: lay-by", "ask", "question=how far?;scene=lay-by")]
    [InlineData("/clip ./take 3.wav talker: parent", "clip", "file=./take 3.wav;talker=parent")]
    [InlineData("/clip C:\\sound\\take.wav", "clip", "file=C:\\sound\\take.wav")]
    [InlineData("/clip file: file:///tmp/take.wav", "clip", "file=file:///tmp/take.wav")]
    [InlineData("/link stereo: No details: yes", "link", "stereo=false;details=true")]
    [InlineData("/link stereo: perhaps", "link", "stereo=perhaps")]
    [InlineData("/settings units imperial", "settings units", "units=imperial")]
    public void Read_Line_GivesTheCall(string line, string name, string values)
    {
        TypedCommand typed = CommandLine.Read(line);

        Assert.Null(typed.Wrong);
        Assert.Equal(name, typed.Call!.Name);
        Assert.Equal(values, string.Join(';', typed.Call.Values.Select(v => $"{v.Key}={v.Value}")));
    }

    [Theory]
    [InlineData("/plan scene: \"school run", "scene: the quotation is not closed; end it with \".")]
    [InlineData("/link distance: 3 m distance: 4 m", "distance is there twice: give it once.")]
    [InlineData("/link 3 m distance: 4 m", "distance is there twice: give it once.")]
    [InlineData("/scene list please", "scene list takes nothing more.")]
    public void Read_LineThatIsWrong_SaysHow(string line, string wrong) => Assert.Equal(wrong, CommandLine.Read(line).Wrong);

    [Theory]
    [InlineData("/link 300 m", true)]
    [InlineData("  /what-if windows: down", true)]
    [InlineData("/help", true)]
    [InlineData("/media/crew/take.wav", false)]
    [InlineData("/tmp is this usable", true)]
    [InlineData("link 300 m", false)]
    [InlineData("/", false)]
    [InlineData("./take.wav", false)]
    public void IsCommand_Line_TellsCommandsFromPaths(string line, bool command) => Assert.Equal(command, CommandLine.IsCommand(line));
}
