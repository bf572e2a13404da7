using System.Text.Json;
using System.Text.Json.Serialization;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>An answer that was put off and not given when the process ended.</summary>
/// <param name="Ticket">What it takes to answer.</param>
/// <param name="Private">True when it was put off privately.</param>
/// <param name="Sending">True when the answer was on its way, so that it may have arrived.</param>
internal sealed record PendingAnswer(InteractionTicket Ticket, bool Private, bool Sending);

/// <summary>
/// Which answers were put off and are not given yet, in one small file each, so that a process that is killed can say so when it starts again. A file holds
/// what it takes to answer, which is as good as a password for 15 minutes: only its owner may read it. One folder serves one process.
/// </summary>
internal sealed class PendingLedger
{
    private const string Extension = ".pending";
    private const string SendingExtension = ".sending";
    private const string PartExtension = ".part";

    private readonly string folder;
    private readonly TimeProvider time;

    /// <summary>A ledger in that folder, which is made.</summary>
    /// <exception cref="IOException">The folder cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be made.</exception>
    public PendingLedger(string folder, TimeProvider time)
    {
        (this.folder, this.time) = (folder, time);
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    /// <summary>Notes an answer that is about to be put off. The note is on the disk, whole, when this returns.</summary>
    /// <exception cref="IOException">It could not be noted.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may no longer be written.</exception>
    public void Take(InteractionTicket ticket, bool isPrivate)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        string path = PathOf(ticket, Extension), part = path + PartExtension;
        var note = new Note(ticket.ApplicationId, ticket.InteractionId, ticket.Token, time.GetUtcNow().ToUnixTimeMilliseconds(), isPrivate);
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using (var file = new FileStream(part, options))
        {
            JsonSerializer.Serialize(file, note, LedgerJson.Default.Note);
            file.Flush(flushToDisk: true);
        }

        File.Move(part, path, overwrite: true);
    }

    /// <summary>Notes that the answer is on its way: from now on nobody may put anything in its place.</summary>
    public void Sending(InteractionTicket ticket) => Try(() => File.Move(PathOf(ticket, Extension), PathOf(ticket, SendingExtension), overwrite: true));

    /// <summary>Forgets an answer that was given, or can be given no more.</summary>
    public void Done(InteractionTicket ticket)
    {
        Try(() => File.Delete(PathOf(ticket, Extension)));
        Try(() => File.Delete(PathOf(ticket, SendingExtension)));
    }

    /// <summary>What the last process left open and can still be answered; anything else in the folder is cleared away. To be called before anything is taken.</summary>
    public IReadOnlyList<PendingAnswer> Recover()
    {
        var open = new List<PendingAnswer>();
        foreach (string path in Directory.GetFiles(folder))
        {
            bool sending = path.EndsWith(SendingExtension, StringComparison.Ordinal);
            if ((sending || path.EndsWith(Extension, StringComparison.Ordinal)) && Read(path) is { } note
                && time.GetUtcNow() - DateTimeOffset.FromUnixTimeMilliseconds(note.TakenUnixMilliseconds) < DiscordLimits.TokenLife)
            {
                open.Add(new PendingAnswer(new InteractionTicket(note.ApplicationId, note.InteractionId, note.Token), note.Private, sending));
            }
            else if (sending || path.EndsWith(Extension, StringComparison.Ordinal) || path.EndsWith(PartExtension, StringComparison.Ordinal))
            {
                Try(() => File.Delete(path));
            }
        }

        return open;
    }

    private static Note? Read(string path)
    {
        try
        {
            using FileStream file = File.OpenRead(path);
            return JsonSerializer.Deserialize(file, LedgerJson.Default.Note) is { Token.Length: > 0 } note ? note : null;
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    // A file that cannot be moved or removed costs one needless "I was restarted" later, never an answer.
    private static void Try(Action action)
    {
        try
        {
            action();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
        }
    }

    private string PathOf(InteractionTicket ticket, string extension) => Path.Combine(folder, ticket.InteractionId + extension);

    internal sealed record Note(ulong ApplicationId, ulong InteractionId, string Token, long TakenUnixMilliseconds, bool Private);
}

[JsonSerializable(typeof(PendingLedger.Note))]
internal sealed partial class LedgerJson : JsonSerializerContext;
