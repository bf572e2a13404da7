namespace Quarterlight.Chat.Emulator.Gateway;

/// <summary>Close codes of the gateway (Opcodes and Status Codes) and of the protocol below it.</summary>
internal static class CloseCodes
{
    public const int Normal = 1000;
    public const int GoingAway = 1001;

    /// <summary>Unknown error. Also what we close a client with that sends no heartbeats, for which no code is documented.</summary>
    public const int UnknownError = 4000;

    public const int UnknownOpcode = 4001;
    public const int DecodeError = 4002;
    public const int NotAuthenticated = 4003;
    public const int AuthenticationFailed = 4004;
    public const int AlreadyAuthenticated = 4005;
    public const int InvalidSeq = 4007;
    public const int RateLimited = 4008;
    public const int InvalidShard = 4010;
    public const int InvalidApiVersion = 4012;
    public const int InvalidIntents = 4013;
    public const int DisallowedIntents = 4014;
}
