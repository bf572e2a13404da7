using System.Text;
using CsCheck;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>Frames nobody can read are passed over; too many in a row and the connection is replaced.</summary>
public sealed class UnreadableFrameTests
{
    private static readonly string[] Bad =
        ["", "{", "nonsense", "[]", "7", "{}", """{"op":"0"}""", """{"op":0} {"op":0}""", """{"op":0,"d":{}""", """{"op":1e99}""", "{\"op\":0,\"d\":\"\u0001\"}"];

    public static TheoryData<string> BadFrames => [.. Bad];

    [Theory]
    [MemberData(nameof(BadFrames))]
    public void Read_NoFrame_IsFalse(string text) => Assert.False(GatewayFrame.TryRead(Encoding.UTF8.GetBytes(text), out _));

    [Theory]
    [InlineData("""{"op":0,"t":"READY","s":7,"d":{"a":[1,{"op":3}]}}""", 0, 7L, "Ready", """{"a":[1,{"op":3}]}""")]
    [InlineData(""" { "d" : "x" , "s" : null , "op" : 9 , "more" : { "op" : 1 } } """, 9, null, "Other", "\"x\"")]
    [InlineData("""{"op":11}""", 11, null, "Other", "")]
    [InlineData("""{"op":0,"t":"INTERACTION_CREATE","s":9007199254740993,"d":null}""", 0, 9007199254740993L, "InteractionCreate", "null")]
    [InlineData("""{"\u006fp":0,"t":"RESUME\u0044","s":1,"d":false}""", 0, 1L, "Resumed", "false")]
    public void Read_Frame_FindsItsParts(string text, int opcode, long? sequence, string name, string data)
    {
        Assert.True(GatewayFrame.TryRead(Encoding.UTF8.GetBytes(text), out GatewayFrame frame));
        Assert.Equal((opcode, sequence, name, data), (frame.Opcode, frame.Sequence, frame.Event.ToString(), Encoding.UTF8.GetString(frame.Data.Span)));
    }

    [Fact]
    public void Read_AnyBytes_NeverThrows()
    {
        byte[] good = Encoding.UTF8.GetBytes("""{"op":0,"t":"INTERACTION_CREATE","s":4,"d":{"id":"1","options":[{"name":"a","value":1.5}]}}""");
        Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte, Gen.Int[0, good.Length]).Sample(
            (at, value, length) =>
            {
                byte[] bytes = [.. good];
                bytes[at] = value;
                GatewayFrame.TryRead(bytes.AsMemory(0, length), out _);
            },
            seed: "0000KzGxbuhA", iter: 20_000);
        Gen.Byte.Array[0, 60].Sample(
            bytes =>
            {
                GatewayFrame.TryRead(bytes, out _);
            },
            seed: "0000KzGxbuhA", iter: 20_000);
    }

    [Fact]
    public async Task FiveInARow_ArePassedOver()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        for (int round = 0; round < 3; round++)
        {
            for (int i = 0; i < 5; i++)
            {
                socket.Say(Bad[i]);
            }

            socket.Acknowledge();
        }

        socket.Interaction(2);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        Assert.Equal(1, rig.Connections);
        Assert.Equal(15, rig.Logged.Count(l => l.Text.StartsWith("A gateway frame could not be read", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task SixInARow_ConnectionIsReplacedAndTheSessionKept()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        for (int i = 0; i < 6; i++)
        {
            socket.Say(Bad[i]);
        }

        await rig.PassBackOffAsync(0.5);
        Assert.Equal(4000, socket.CloseSent);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(6);
    }

    [Fact]
    public async Task TooLargeOrBinary_IsPassedOver()
    {
        await using SourceRig rig = new SourceRig(() => new GatewayOptions { Token = SourceRig.Token, MostFrameBytes = 100_000 }) { Prepare = s => s.MostReadBytes = 30_000 };
        rig.Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Say($$$"""{"op":7,"d":"{{{new string('x', 100_000)}}}"}""");
        socket.SayBinary(70_000);
        socket.Interaction(2);
        await Eventually.TrueAsync(() => !rig.Received.IsEmpty);
        Assert.Equal(1, rig.Connections);
        Assert.Equal(2, rig.Logged.Count(l => l.Text.StartsWith("A gateway frame could not be read", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Hello_WithoutInterval_IsNoHello()
    {
        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Say("""{"op":10,"d":{"heartbeat_interval":"soon"}}""");
        socket.Say("""{"op":10,"d":{"heartbeat_interval":0}}""");
        socket.Say("""{"op":10,"d":null}""");
        socket.Hello();
        await socket.NextSentAsync(2);
    }
}
