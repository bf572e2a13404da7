namespace Quarterlight.Chat.Emulator.Gateway;

/// <summary>Opcodes of the gateway (Opcodes and Status Codes).</summary>
internal static class Opcodes
{
    public const int Dispatch = 0;
    public const int Heartbeat = 1;
    public const int Identify = 2;
    public const int Presence = 3;
    public const int VoiceState = 4;
    public const int Resume = 6;
    public const int Reconnect = 7;
    public const int RequestMembers = 8;
    public const int InvalidSession = 9;
    public const int Hello = 10;
    public const int HeartbeatAck = 11;
    public const int RequestSounds = 31;
    public const int RequestChannelInfo = 43;
}
