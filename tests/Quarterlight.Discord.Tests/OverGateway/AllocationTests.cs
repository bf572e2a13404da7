using System.Text;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>The receive path leaves little behind: what is ignored costs nothing, an interaction about its own size.</summary>
public sealed class AllocationTests
{
    private const int Rounds = 1000;

    [Fact]
    public void Frame_Read_AllocatesNothing()
    {
        byte[] ack = """{"op":11,"s":null,"t":null,"d":null}"""u8.ToArray();
        byte[] guild = Encoding.UTF8.GetBytes($$$"""{"op":0,"t":"GUILD_CREATE","s":2,"d":{"members":["{{{new string('x', 50_000)}}}"]}}""");
        Assert.Equal(0, PerRound(() => GatewayFrame.TryRead(ack, out _) && GatewayFrame.TryRead(guild, out _)));
    }

    [Fact]
    public void Interaction_Read_AllocatesAFewTimesItsSize()
    {
        byte[] json = Encoding.UTF8.GetBytes(InteractionJson.Button());
        Assert.InRange(PerRound(() => InteractionReader.TryRead(json, 0, out _, out _)), 1, 4 * json.Length);
    }

    private static double PerRound(Func<bool> work)
    {
        for (int i = 0; i < Rounds; i++)
        {
            Assert.True(work());
        }

        long before = GC.GetAllocatedBytesForCurrentThread();
        bool all = true;
        for (int i = 0; i < Rounds; i++)
        {
            all &= work();
        }

        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.True(all);
        return bytes / (double)Rounds;
    }
}
