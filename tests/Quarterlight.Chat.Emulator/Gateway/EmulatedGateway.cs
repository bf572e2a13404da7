using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Recording;

namespace Quarterlight.Chat.Emulator.Gateway;

/// <summary>The gateway (Gateway and Gateway Events references): sessions, and what tests can make it do.</summary>
public sealed partial class EmulatedGateway
{
    private readonly EmulatedPlatform platform;
    private readonly Dictionary<string, GatewaySession> sessions = [];
    private readonly HashSet<GatewayConnection> connections = [];
    private readonly Queue<long> identifies = [];
    private Func<RecordedFrame, bool>? dropOn;
    private int opened;

    internal EmulatedGateway(EmulatedPlatform platform)
    {
        this.platform = platform;
        SessionStartsLeft = platform.Options.SessionStarts;
    }

    /// <summary>Heartbeats are answered. False makes a client see a dead connection.</summary>
    public bool AcknowledgesHeartbeats { get; set; } = true;

    /// <summary>A connection gets HELLO. False leaves it waiting.</summary>
    public bool SaysHello { get; set; } = true;

    /// <summary>IDENTIFY and RESUME are answered. False leaves them waiting.</summary>
    public bool AnswersIdentify { get; set; } = true;

    /// <summary>New connections are taken. False answers the handshake with 503.</summary>
    public bool TakesConnections { get; set; } = true;

    /// <summary>Identifies left today (session_start_limit.remaining).</summary>
    public int SessionStartsLeft { get; set; }

    /// <summary>True once identifies were used up: the platform ends all sessions and resets the token (Gateway, Identifying).</summary>
    public bool TokenWasReset { get; private set; }

    /// <summary>Sessions started so far.</summary>
    public int Identified { get; private set; }

    /// <summary>Sessions taken up again so far.</summary>
    public int Resumed { get; private set; }

    /// <summary>Sessions that can still be used or resumed.</summary>
    public int LiveSessions => platform.Locked(() => sessions.Values.Count(s => s.Alive));

    /// <summary>Connections with a session on them.</summary>
    public int Connected => platform.Locked(() => connections.Count(c => c.Session is not null));

    /// <summary>Sends op 7: the client is to reconnect and resume.</summary>
    public void RequestReconnect() => Each(c => c.Send(Opcodes.Reconnect, null));

    /// <summary>Sends op 1: the client is to send a heartbeat at once.</summary>
    public void RequestHeartbeat() => Each(c => c.Send(Opcodes.Heartbeat, null));

    /// <summary>Sends op 9. When it is not resumable the sessions are gone.</summary>
    /// <param name="resumable">Value of d.</param>
    public void Invalidate(bool resumable) => Each(c =>
    {
        if (!resumable && c.Session is { } session)
        {
            session.Alive = false;
        }

        c.Send(Opcodes.InvalidSession, JsonValue.Create(resumable));
    });

    /// <summary>Closes all connections with a code.</summary>
    /// <param name="code">The code; 1000 and 1001 from here leave the session alive.</param>
    public void CloseClients(int code) => Each(c => c.Close(code, "emulated"));

    /// <summary>Cuts all connections, as a lost network does.</summary>
    public void DropClients() => Each(c => c.Abort());

    /// <summary>Cuts the connection on the first frame that fits, once: before it is sent, or before what was received is acted on.</summary>
    /// <param name="moment">Which frame.</param>
    public void DropOnceOn(Func<RecordedFrame, bool> moment) => dropOn = moment;

    /// <summary>Sends a text as it is, be it unreadable.</summary>
    /// <param name="text">The frame.</param>
    public void SendRaw(string text) => Each(c => c.Send(text));

    /// <summary>Sends an event to all sessions.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="json">Its data.</param>
    public void SendEvent(string name, string json) => Dispatch(null, name, JsonNode.Parse(json)!, null, everywhere: true);

    /// <summary>Forgets all sessions: the next RESUME gets op 9 with false.</summary>
    public void ForgetSessions() => platform.Locked(() =>
    {
        foreach (GatewaySession session in sessions.Values)
        {
            session.Alive = false;
        }

        return 0;
    });

    /// <summary>Waits until a number of clients are connected with a session.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="count">How many.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">There were not as many.</exception>
    public Task ConnectedAsync(CancellationToken cancellation, int count = 1, TimeSpan? within = null) =>
        platform.UntilAsync(() => Connected >= count, $"{count} connected clients (there are {Connected})", cancellation, within);

    /// <summary>Waits until sessions were resumed a number of times in all.</summary>
    /// <param name="times">How often.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">They were not.</exception>
    public Task ResumedAsync(int times, CancellationToken cancellation, TimeSpan? within = null) =>
        platform.UntilAsync(() => Resumed >= times, $"{times} resumes (there were {Resumed})", cancellation, within);

    /// <summary>Waits until sessions were started a number of times in all.</summary>
    /// <param name="times">How often.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">They were not.</exception>
    public Task IdentifiedAsync(int times, CancellationToken cancellation, TimeSpan? within = null) =>
        platform.UntilAsync(() => Identified >= times, $"{times} identifies (there were {Identified})", cancellation, within);

    private void Each(Action<GatewayConnection> act)
    {
        foreach (GatewayConnection connection in platform.Locked(() => connections.ToArray()))
        {
            platform.Locked(() =>
            {
                act(connection);
                return 0;
            });
        }
    }
}
